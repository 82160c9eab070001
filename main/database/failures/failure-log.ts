/**
 * A text file beside the workshop's in which failures are written down, for a maker to read or send. It is kept short:
 * a full one makes room for the next, and of the earlier ones two are kept. It is made at the first failure.
 */
import { appendFileSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { stemOf } from '../backups/backup-name.ts';
import { closeToOthers, modeBeside } from '../file/private-file.ts';

/** Of each file; an entry that would make one larger goes into the next. */
export const largestLogBytes = 256 * 1024;
const earlierCount = 2;

/** "workshop.sqlite" has its log in "workshop-log.txt". file: absolute, here and below. */
export function failureLogFile(file: string): string {
  return logName(file, 0);
}

/** Adds whole lines. A log that cannot be written keeps nobody from working. */
export function appendToFailureLog(file: string, lines: string): void {
  try {
    const log = failureLogFile(file);
    const size = statSync(log, { throwIfNoEntry: false })?.size ?? 0;
    if (size > 0 && size + Buffer.byteLength(lines) > largestLogBytes) makeRoom(file);
    appendFileSync(log, lines, { mode: modeBeside(file) });
    closeToOthers(log, modeBeside(file));
  } catch {
    // There is nowhere to tell of it.
  }
}

/** All that is kept, oldest first; '' where nothing was written yet. */
export function readFailureLog(file: string): string {
  let text = '';
  for (let age = earlierCount; age >= 0; age--) {
    try {
      text += readFileSync(logName(file, age), 'utf8');
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    }
  }
  return text;
}

function makeRoom(file: string): void {
  rmSync(logName(file, earlierCount), { force: true });
  for (let age = earlierCount; age > 0; age--) {
    if (statSync(logName(file, age - 1), { throwIfNoEntry: false }))
      renameSync(logName(file, age - 1), logName(file, age));
  }
}

function logName(file: string, age: number): string {
  return join(dirname(file), `${stemOf(file)}-log${age === 0 ? '' : `-${age}`}.txt`);
}
