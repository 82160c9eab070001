/** What SQLite or the disk refused, in the maker's words. */
import type { Problem } from '../../shared-core/measure/problem.ts';

/** A sentence for a failure that the maker can do something about; null for anything else. */
export function databaseProblem(error: unknown, file: string): Problem | null {
  const code = codeOf(error);
  const about = (what: string, mend: string): Problem => ({ where: file, what, mend });
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) {
    return about('is held by another program', 'Close the other program that uses it, then try again.');
  }
  if (/^SQLITE_FULL|^ENOSPC|^EDQUOT/.test(code)) {
    return about(
      'does not fit: the disk is full',
      'Make room on the disk, then try again; nothing was changed.',
    );
  }
  if (/^SQLITE_NOTADB/.test(code)) {
    return about('is not a database', 'Name another file, or put a backup in its place.');
  }
  if (/^SQLITE_CORRUPT/.test(code)) {
    return about('is damaged', 'Put a backup in its place; keep the damaged file until all is well again.');
  }
  if (/^SQLITE_READONLY|^EACCES|^EPERM|^EROFS/.test(code)) {
    return about('cannot be written', 'Allow writing to the file and its folder, or name a file elsewhere.');
  }
  if (/^SQLITE_CANTOPEN|^ENOENT|^ENOTDIR/.test(code)) {
    return about(
      'cannot be opened',
      'See that its folder is there and may be written to, or name a file elsewhere.',
    );
  }
  if (/^SQLITE_IOERR|^EIO/.test(code)) {
    return about('cannot be read or written: the disk reports a fault', 'Check the disk, then try again.');
  }
  return null;
}

function codeOf(error: unknown): string {
  if (typeof error !== 'object' || error === null || !('code' in error)) return '';
  return typeof error.code === 'string' ? error.code : '';
}
