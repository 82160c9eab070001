/**
 * Looks at a data file before SQLite may touch it: SQLite would make a missing file, roll back somebody else's
 * journal or leave its own files beside one that is then refused.
 * Source of the header's layout: sqlite.org/fileformat2.html, section 1.3.
 */
import { say } from '../../../shared-core/wording/say.ts';
import {
  accessSync,
  closeSync,
  constants,
  openSync,
  readSync,
  realpathSync,
  statSync,
  type Stats,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { restoreOrName, databaseProblem } from '../failures/failure.ts';
import { applicationId, demoApplicationId } from '../schema/migrate.ts';

/** Two windows that name one file in two ways must mean the same: links are followed. Absolute, whether or not it is there. */
export function realFile(dataFile: string): Result<string> {
  const file = resolve(dataFile);
  // SQLite's binding cuts blanks off a name, and would then make another file.
  if (file !== file.trim()) {
    return err({
      where: `"${file}"`,
      what: say('file-check.has-a-blank-at-the-end'),
      fix: say('file-check.rename-it-without-one'),
    });
  }
  return asked(file, () => {
    if (statSync(file, { throwIfNoEntry: false })) return ok(realpathSync(file));
    const folder = dirname(file);
    return ok(
      statSync(folder, { throwIfNoEntry: false }) ? join(realpathSync(folder), basename(file)) : file,
    );
  });
}

export type FileUse = 'to be written' | 'to be read' | 'to be a demo';

/** Whether a file is there that may be used so, or may be made; what is in it is not looked at. file: absolute. Changes nothing. */
export function checkPlace(file: string, use: FileUse = 'to be written'): Result<'there' | 'to be made'> {
  return asked(file, () => {
    const facts = statSync(file, { throwIfNoEntry: false });
    if (!facts) return checkFolder(file);
    const problem = placeProblem(file, facts, use);
    return problem ? err(problem) : ok('there');
  });
}

/** Whether the file is there and ours, or may be made. file: absolute. Changes nothing. */
export function checkDataFile(file: string, use: FileUse = 'to be written'): Result<'there' | 'to be made'> {
  const placed = checkPlace(file, use);
  if (!placed.ok || placed.value === 'to be made') return placed;
  return asked(file, () => {
    const problem = headerProblem(file, statSync(file).size, use);
    return problem ? err(problem) : placed;
  });
}

/** A file under two names has two logs: what one window writes, another that has it by the other name writes over. */
export function secondNameProblem(file: string): Problem | null {
  const facts = statSync(file, { throwIfNoEntry: false });
  if (!facts || facts.nlink < 2) return null;
  return {
    where: file,
    what: say('file-check.has-a-second-name-on-this'),
    fix: say('file-check.copy-the-file-remove-this-name'),
  };
}

function asked<Value>(file: string, look: () => Result<Value>): Result<Value> {
  try {
    return look();
  } catch (error) {
    const problem = databaseProblem(error, file);
    if (!problem) throw error;
    return err(problem);
  }
}

function checkFolder(file: string): Result<'to be made'> {
  const folder = dirname(file);
  const facts = statSync(folder, { throwIfNoEntry: false });
  if (!facts) {
    return err({
      where: folder,
      what: say('file-check.does-not-exist'),
      fix: say('file-check.make-the-folder-first-or-name'),
    });
  }
  if (!facts.isDirectory()) {
    return err({
      where: folder,
      what: say('file-check.is-not-a-folder'),
      fix: say('file-check.name-a-file-in-a-folder'),
    });
  }
  accessSync(folder, constants.W_OK | constants.X_OK);
  return ok('to be made');
}

function placeProblem(file: string, facts: Stats, use: FileUse): Problem | null {
  if (facts.isDirectory()) {
    return {
      where: file,
      what: say('file-check.is-a-folder'),
      fix: say('file-check.name-a-file-such-as-workshop'),
    };
  }
  if (!facts.isFile())
    return {
      where: file,
      what: say('file-check.is-not-a-file'),
      fix: say('file-check.name-a-file-on-a-disk'),
    };
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
    return {
      where: file,
      what: say('file-check.cannot-be-read'),
      fix: say('file-check.allow-reading-the-file-or-name'),
    };
  }
}

const headerBytes = 100;
/** Of the file and of its schema: higher ones come from a later SQLite than this. */
const highestFormat = 2;
const highestSchemaFormat = 4;

function headerProblem(file: string, sizeBytes: number, use: FileUse): Problem | null {
  const about = (what: string, fix = restoreOrName()): Problem => ({ where: file, what, fix });
  if (sizeBytes === 0)
    return about(
      say('common.is-empty'),
      say('file-check.remove-it-to-begin-anew', { restoreOrName: restoreOrName() }),
    );
  const header = Buffer.alloc(headerBytes);
  const handle = openSync(file, 'r');
  let readBytes: number;
  try {
    readBytes = readSync(handle, header, 0, headerBytes, 0);
  } finally {
    closeSync(handle);
  }
  if (header.toString('latin1', 0, 16) !== 'SQLite format 3\0')
    return about(say('file-check.is-not-a-database'));
  if (readBytes < headerBytes) return about(say('file-check.is-cut-short'));
  const mark = header.readUInt32BE(68);
  if (mark !== applicationId && mark !== demoApplicationId)
    return about(say('file-check.is-the-database-of-another-program'));
  if (mark === demoApplicationId && use === 'to be written') {
    return about(
      say('file-check.belongs-to-the-demo-which-is'),
      say('file-check.open-the-demo-from-the-first'),
    );
  }
  if (Math.max(header[18]!, header[19]!) > highestFormat || header.readUInt32BE(44) > highestSchemaFormat) {
    return about(say('file-check.is-in-a-form-of-sqlite'));
  }
  if (isCutShort(file, header, sizeBytes)) return about(say('file-check.is-cut-short'));
  return null;
}

/** Whether the file, which is there, bears the demo's mark. */
export function isMarkedDemo(file: string): boolean {
  const mark = Buffer.alloc(4);
  const handle = openSync(file, 'r');
  try {
    readSync(handle, mark, 0, 4, 68);
  } finally {
    closeSync(handle);
  }
  return mark.readUInt32BE(0) === demoApplicationId;
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
