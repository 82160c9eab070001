/** The calls about backups of the maker's own file. They work on the file as a whole, outside any transaction. */
import type { Backups } from '../../shared-core/contract/contract.ts';
import { found, type Outcome, type Problem, refused } from '../../shared-core/measure/problem.ts';
import {
  backupFolder,
  hasChangedSinceBackup,
  listBackups,
  makeBackup,
  thinBackups,
} from '../database/backup-folder.ts';
import type { OpenWorkshop } from '../database/connection.ts';
import { databaseProblem } from '../database/failure.ts';

export const demoHasNone: Outcome<never> = refused({
  where: 'The demo workshop',
  what: 'keeps no backups: it can be made anew at any time',
  mend: 'Go back to your own workshop for them.',
});

/** lastProblem: why the backup at the start could not be made, null where it was or none was due. */
export function readBackups(file: string, lastProblem: Problem | null): Backups {
  return { folder: backupFolder(file), rows: listBackups(file), lastProblem };
}

/** No transaction may be open on the connection. Throws where the disk refuses. */
export function backUp(open: OpenWorkshop, now: Date): Outcome<Backups> {
  makeBackup(open.connection, open.file, 'by hand', now);
  return found(readBackups(open.file, null));
}

/**
 * Makes a backup at the start where the file was changed since the last one and holds anything. A backup that
 * cannot be made is told of and keeps nobody from working.
 */
export function backUpAtStart(open: OpenWorkshop, isChanged: boolean, now: Date): Problem | null {
  try {
    if (!isChanged || isEmpty(open)) return null;
    makeBackup(open.connection, open.file, 'automatic', now);
    thinBackups(open.file);
    return null;
  } catch (error) {
    return (
      databaseProblem(error, backupFolder(open.file)) ?? {
        where: backupFolder(open.file),
        what: `could not take a backup (${error instanceof Error ? error.message : String(error)})`,
        mend: 'See that there is room and that the folder may be written to.',
      }
    );
  }
}

/** Whether a backup is due; to be asked before the file is opened, since opening may touch it. */
export function isBackupDue(file: string): boolean {
  try {
    return hasChangedSinceBackup(file);
  } catch {
    return true;
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
