/** Backups of the maker's own file. They work on the file as a whole, outside any transaction. */
import { type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { backupFolder, makeChangedBackup, thinBackups } from '../../database/backups/backup-folder.ts';
import type { OpenWorkshop } from '../../database/file/connection.ts';
import { databaseProblem } from '../../database/failures/failure.ts';

export const demoHasNone: Result<never> = err({
  where: 'The demo workshop',
  what: 'keeps no backups: it can be made anew at any time',
  fix: 'Go back to your own workshop for them.',
});

/**
 * Makes a backup at the start where the file holds anything and is not the same as its newest backup. A backup that
 * cannot be made is told of and noted in the failure log, and keeps nobody from working.
 */
export function backUpAtStart(
  open: OpenWorkshop,
  now: Date,
  note: (what: string, error: unknown) => void,
): Problem | null {
  try {
    if (isEmpty(open)) return null;
    if (makeChangedBackup(open.connection, open.file, 'automatic', now) !== null) thinBackups(open.file);
    return null;
  } catch (error) {
    note('backup at the start', error);
    const where = backupFolder(open.file);
    const fix =
      'See that there is room and that the folder may be written to; the log under Settings says where in the program it failed.';
    return databaseProblem(error, where) ?? { where, what: 'could not take a backup', fix };
  }
}

export function isEmpty(open: OpenWorkshop): boolean {
  return (
    open.connection
      .prepare('SELECT NOT EXISTS (SELECT 1 FROM item) AND NOT EXISTS (SELECT 1 FROM plan)')
      .pluck()
      .get() === 1
  );
}
