/** What SQLite or the disk refused, in the maker's words. */
import type { Problem } from '../../../shared-core/measure/problem.ts';

/** Whoever puts a copy in place by hand must not leave the log of the old file beside it. */
const byHand =
  'To put a copy in its place by hand, first move the old file away, together with those beside it that end in -wal and -shm.';
export const restoreOrName = `Bring a backup back, or name another file. ${byHand}`;

interface Failure {
  readonly codes: RegExp;
  readonly what: string;
  readonly fix: string;
  /** The file itself is at fault, and no longer what it was: a backup helps. */
  readonly isOfFile?: true;
}

const failures: readonly Failure[] = [
  {
    codes: /^FILE_NOT_IN_PLACE$/,
    what: 'was removed or replaced while it was open',
    fix: 'This step was not kept. Close the program, look at what lies there now, and start it again.',
  },
  {
    codes: /^SQLITE_(BUSY|LOCKED)/,
    what: 'is held by another program',
    fix: 'Close the other program that uses it, then try again.',
  },
  {
    codes: /^SQLITE_FULL|^ENOSPC|^EDQUOT/,
    what: 'does not fit: the disk is full',
    fix: 'Make room on the disk, then try again; nothing was changed.',
  },
  { codes: /^SQLITE_NOTADB/, what: 'is not a database', fix: restoreOrName, isOfFile: true },
  {
    codes: /^SQLITE_CORRUPT/,
    what: 'is damaged',
    fix: `Bring a backup back; the damaged file is kept beside the backups. ${byHand}`,
    isOfFile: true,
  },
  {
    codes: /^SQLITE_READONLY|^EACCES|^EPERM|^EROFS/,
    what: 'cannot be written',
    fix: 'Allow writing to the file and its folder, or name a file elsewhere.',
  },
  {
    codes: /^ELOOP/,
    what: 'is a link that leads back to itself',
    fix: 'Name the file that the link should lead to.',
  },
  { codes: /^ENAMETOOLONG/, what: 'has too long a name', fix: 'Name a file with a shorter name or path.' },
  {
    codes: /^SQLITE_CANTOPEN|^ENOENT|^ENOTDIR/,
    what: 'cannot be opened',
    fix: 'See that its folder is there and may be written to, or name a file elsewhere.',
  },
  {
    codes: /^SQLITE_IOERR|^EIO/,
    what: 'cannot be read or written: the disk reports a fault',
    fix: 'Check the disk, then try again.',
  },
];

/** A sentence for a failure that the maker can do something about; null for anything else. */
export function databaseProblem(error: unknown, file: string): Problem | null {
  const failure = failures.find(({ codes }) => codes.test(codeOf(error)));
  return failure ? { where: file, what: failure.what, fix: failure.fix } : null;
}

/** Whether the file itself is at fault, rather than its place, the disk or another program. */
export function isFaultOfFile(problem: Problem): boolean {
  return !failures.some(({ what, isOfFile }) => what === problem.what && !isOfFile);
}

export function codeOf(error: unknown): string {
  if (typeof error !== 'object' || error === null || !('code' in error)) return '';
  return typeof error.code === 'string' ? error.code : '';
}
