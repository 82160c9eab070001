/**
 * What others on this machine may do with a workshop's files: nothing. Only a file that its group may write stays the
 * group's, since two people may share a workshop so. Windows knows no such marks, and there nothing happens.
 */
import { chmodSync, closeSync, openSync, statSync } from 'node:fs';

const own = 0o600;
const ownAndGroup = 0o660;

/** The mode of whatever is made for a workshop's file: its own alone, or its group's too. */
export function modeBeside(file: string): number {
  const facts = statSync(file, { throwIfNoEntry: false });
  return facts && (facts.mode & 0o020) !== 0 ? ownAndGroup : own;
}

/** As above, for a folder. */
export function folderModeBeside(file: string): number {
  return modeBeside(file) === own ? 0o700 : 0o770;
}

/** Takes from the file or folder what others might do with it. What belongs to another person is theirs to close. */
export function closeToOthers(path: string, mode: number): void {
  try {
    const facts = statSync(path, { throwIfNoEntry: false });
    if (facts && (facts.mode & 0o777 & ~mode) !== 0) chmodSync(path, facts.mode & mode);
  } catch (error) {
    if (!['EPERM', 'EROFS', 'ENOTSUP'].includes((error as NodeJS.ErrnoException).code ?? '')) throw error;
  }
}

/** An empty file that nobody else may read, for SQLite to fill. Throws where the name is taken. */
export function makeEmptyFile(path: string, mode: number): void {
  closeSync(openSync(path, 'wx', mode));
  chmodSync(path, mode);
}
