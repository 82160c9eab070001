/**
 * Looks at a data file before SQLite may touch it: SQLite would make a missing file, roll back somebody else's
 * journal or leave its own files beside one that is then refused.
 * Source of the header's layout: sqlite.org/fileformat2.html, section 1.3.
 */
import { accessSync, closeSync, constants, openSync, readSync, statSync, type Stats } from 'node:fs';
import { dirname } from 'node:path';
import { found, type Outcome, type Problem, refused } from '../../shared-core/measure/problem.ts';
import { databaseProblem } from './failure.ts';
import { applicationId } from './migrate.ts';

/** Whether the file is there and ours, or may be made. file: absolute. use: what for. Changes nothing. */
export function checkDataFile(
  file: string,
  use: 'to be written' | 'to be read' = 'to be written',
): Outcome<'there' | 'to be made'> {
  try {
    const facts = statSync(file, { throwIfNoEntry: false });
    if (!facts) return checkFolder(file);
    const problem = placeProblem(file, facts, use) ?? headerProblem(file, facts.size);
    return problem ? refused(problem) : found('there');
  } catch (error) {
    const problem = databaseProblem(error, file);
    if (!problem) throw error;
    return refused(problem);
  }
}

function checkFolder(file: string): Outcome<'to be made'> {
  const folder = dirname(file);
  const facts = statSync(folder, { throwIfNoEntry: false });
  if (!facts) {
    return refused({
      where: folder,
      what: 'does not exist',
      mend: 'Make the folder first, or name a file elsewhere.',
    });
  }
  if (!facts.isDirectory()) {
    return refused({ where: folder, what: 'is not a folder', mend: 'Name a file in a folder.' });
  }
  accessSync(folder, constants.W_OK | constants.X_OK);
  return found('to be made');
}

function placeProblem(file: string, facts: Stats, use: 'to be written' | 'to be read'): Problem | null {
  if (facts.isDirectory()) {
    return { where: file, what: 'is a folder', mend: 'Name a file, such as workshop.sqlite in that folder.' };
  }
  if (!facts.isFile()) return { where: file, what: 'is not a file', mend: 'Name a file on a disk.' };
  if (use === 'to be read') return readingProblem(file);
  // SQLite keeps its log beside the file, so both must be open to writing.
  accessSync(file, constants.R_OK | constants.W_OK);
  accessSync(dirname(file), constants.W_OK | constants.X_OK);
  return null;
}

function readingProblem(file: string): Problem | null {
  try {
    accessSync(file, constants.R_OK);
    return null;
  } catch {
    return { where: file, what: 'cannot be read', mend: 'Allow reading the file, or name another.' };
  }
}

const headerBytes = 100;

function headerProblem(file: string, sizeBytes: number): Problem | null {
  const mend = 'Name another file, or put a backup in its place.';
  if (sizeBytes === 0) {
    return { where: file, what: 'is empty', mend: 'Put a backup in its place, or remove it to begin anew.' };
  }
  const header = Buffer.alloc(headerBytes);
  const handle = openSync(file, 'r');
  let readBytes: number;
  try {
    readBytes = readSync(handle, header, 0, headerBytes, 0);
  } finally {
    closeSync(handle);
  }
  if (header.toString('latin1', 0, 16) !== 'SQLite format 3\0')
    return { where: file, what: 'is not a database', mend };
  if (readBytes < headerBytes) return { where: file, what: 'is cut short', mend };
  if (header.readUInt32BE(68) !== applicationId) {
    return { where: file, what: 'is the database of another program', mend };
  }
  if (isCutShort(file, header, sizeBytes)) return { where: file, what: 'is cut short', mend };
  return null;
}

/** With a log or a journal beside it a sound file may be shorter than its header says; SQLite mends that. */
function isCutShort(file: string, header: Buffer, sizeBytes: number): boolean {
  const besides = ['-wal', '-journal'].map(
    (ending) => statSync(file + ending, { throwIfNoEntry: false })?.size ?? 0,
  );
  if (besides.some((size) => size > 0)) return false;
  const pageBytes = header.readUInt16BE(16) === 1 ? 65_536 : header.readUInt16BE(16);
  const pageCount = header.readUInt32BE(28);
  const isCountSure = header.readUInt32BE(24) === header.readUInt32BE(92);
  return isCountSure && sizeBytes < pageBytes * pageCount;
}
