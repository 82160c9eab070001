/**
 * A backup in place of the workshop's file. It is looked at from end to end before anything is touched, and what
 * stood there before is kept as a backup of its own. At any instant the file is wholly the old or wholly the new.
 */
import { randomUUID } from 'node:crypto';
import { closeSync, copyFileSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { found, type Outcome, type Problem, refused } from '../../shared-core/measure/problem.ts';
import { backupFolder, listBackups, makeBackup } from './backup-folder.ts';
import type { OpenWorkshop } from './connection.ts';
import { databaseProblem } from './failure.ts';
import { checkDataFile } from './file-check.ts';
import { schemaVersion } from './migrate.ts';
import { migrations } from './migrations.ts';

/** What the maker is told where the file itself could not be opened again. */
export interface BroughtBack {
  /** The workshop that is open now: the one brought back, or the old one where that failed; null where neither opens. */
  readonly open: OpenWorkshop | null;
  readonly problems: readonly Problem[];
}

/**
 * Closes the open workshop, puts the backup of that name in its place and opens it with `reopen`. Nothing else may
 * use the connection meanwhile. Never throws for what the disk or the files refuse.
 */
export function bringBack(
  open: OpenWorkshop,
  name: string,
  now: () => Date,
  reopen: (file: string) => Outcome<OpenWorkshop>,
): BroughtBack {
  const { file } = open;
  const chosen = listBackups(file).find((backup) => backup.name === name);
  if (!chosen) {
    const mend = 'Open the settings again and choose one from the list.';
    return { open, problems: [{ where: `The backup ${name}`, what: 'is no longer there', mend }] };
  }
  const fresh = `${file}.${randomUUID()}.new`;
  try {
    const source = join(backupFolder(file), chosen.name);
    const copied = soundCopy(source, fresh);
    if (!copied.ok) return { open, problems: copied.problems };
    const kept = join(backupFolder(file), makeBackup(open.connection, file, 'before bringing back', now()));
    open.close();
    return inPlaceOf(file, fresh, kept, reopen);
  } catch (error) {
    const problem = databaseProblem(error, file);
    if (!problem) throw error;
    return { open: open.connection.open ? open : reopened(reopen, file), problems: [problem] };
  } finally {
    removeAll(fresh);
  }
}

/** Copies the backup under another name and looks at the copy whole: its kind, its schema, each page and reference. */
function soundCopy(source: string, fresh: string): Outcome<null> {
  const looked = checkDataFile(source);
  if (!looked.ok) return looked;
  try {
    copyFileSync(source, fresh);
    const database = new SqliteDatabase(fresh, { fileMustExist: true });
    try {
      const version = schemaVersion(database);
      if (version > migrations.length) {
        return refused({
          where: source,
          what: `was written by a newer version (its schema is ${version}, this version knows ${migrations.length})`,
          mend: 'Bring it back with the newer version, or choose another backup.',
        });
      }
      const mend = 'Choose another backup; this one was left as it is.';
      if (database.pragma('integrity_check', { simple: true }) !== 'ok') {
        return refused({ where: source, what: 'is damaged', mend });
      }
      if ((database.pragma('foreign_key_check') as readonly unknown[]).length > 0) {
        return refused({ where: source, what: 'refers to what is not in it', mend });
      }
      // One file with no log beside it, whatever the backup was made by.
      database.pragma('journal_mode = DELETE');
    } finally {
      database.close();
    }
    flush(fresh);
    return found(null);
  } catch (error) {
    const problem = databaseProblem(error, source);
    if (!problem) throw error;
    return refused(problem);
  }
}

function inPlaceOf(
  file: string,
  fresh: string,
  kept: string,
  reopen: (file: string) => Outcome<OpenWorkshop>,
): BroughtBack {
  // The last to close takes the log away. One that is still there belongs to another program, and to the old file.
  if (existsSync(`${file}-wal`)) {
    const mend = 'Close the other program that uses it, then try again; nothing was changed.';
    return {
      open: reopened(reopen, file),
      problems: [{ where: file, what: 'is held by another program', mend }],
    };
  }
  renameSync(fresh, file);
  const opened = reopen(file);
  if (opened.ok) return { open: opened.value, problems: [] };
  copyFileSync(kept, fresh);
  flush(fresh);
  renameSync(fresh, file);
  return { open: reopened(reopen, file), problems: opened.problems };
}

function reopened(reopen: (file: string) => Outcome<OpenWorkshop>, file: string): OpenWorkshop | null {
  const outcome = reopen(file);
  return outcome.ok ? outcome.value : null;
}

/** What is renamed into place must be on the disk first. */
function flush(path: string): void {
  const handle = openSync(path, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

function removeAll(path: string): void {
  for (const ending of ['', '-journal', '-wal', '-shm']) rmSync(path + ending, { force: true });
}
