/** What SQLite or the disk refused, in the maker's words. */
import { say } from '../../../shared-core/wording/say.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';

/** Whoever puts a copy in place by hand must not leave the log of the old file beside it. */
const byHand = () => say('failure.to-put-a-copy-in-its');
export const restoreOrName = () => say('failure.bring-a-backup-back-or-name', { byHand: byHand() });

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
    get what() {
      return say('failure.was-removed-or-replaced-while-it');
    },
    get fix() {
      return say('failure.this-step-was-not-kept-close');
    },
  },
  {
    codes: /^SQLITE_(BUSY|LOCKED)/,
    get what() {
      return say('failure.is-held-by-another-program');
    },
    get fix() {
      return say('failure.close-the-other-program-that-uses');
    },
  },
  {
    codes: /^SQLITE_FULL|^ENOSPC|^EDQUOT/,
    get what() {
      return say('failure.does-not-fit-the-disk-is');
    },
    get fix() {
      return say('failure.make-room-on-the-disk-then');
    },
  },
  {
    codes: /^SQLITE_NOTADB/,
    get what() {
      return say('failure.is-not-a-database');
    },
    fix: restoreOrName(),
    isOfFile: true,
  },
  {
    codes: /^SQLITE_CORRUPT/,
    get what() {
      return say('failure.is-damaged');
    },
    get fix() {
      return say('failure.bring-a-backup-back-the-damaged', { byHand: byHand() });
    },
    isOfFile: true,
  },
  {
    codes: /^SQLITE_READONLY|^EACCES|^EPERM|^EROFS/,
    get what() {
      return say('failure.cannot-be-written');
    },
    get fix() {
      return say('failure.allow-writing-to-the-file-and');
    },
  },
  {
    codes: /^ELOOP/,
    get what() {
      return say('failure.is-a-link-that-leads-back');
    },
    get fix() {
      return say('failure.name-the-file-that-the-link');
    },
  },
  {
    codes: /^ENAMETOOLONG/,
    get what() {
      return say('failure.has-too-long-a-name');
    },
    get fix() {
      return say('failure.name-a-file-with-a-shorter');
    },
  },
  {
    codes: /^SQLITE_CANTOPEN|^ENOENT|^ENOTDIR/,
    get what() {
      return say('failure.cannot-be-opened');
    },
    get fix() {
      return say('failure.see-that-its-folder-is-there');
    },
  },
  {
    codes: /^SQLITE_IOERR|^EIO/,
    get what() {
      return say('failure.cannot-be-read-or-written-the');
    },
    get fix() {
      return say('failure.check-the-disk-then-try-again');
    },
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
