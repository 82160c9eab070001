/**
 * A backup in place of the workshop's file. It is looked at from end to end before anything is touched, and what
 * stood there before is kept: as a backup of its own, or as it is where SQLite cannot read it any more. At any instant
 * the file is wholly the old or wholly the new.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { randomUUID } from 'node:crypto';
import {
  chmodSync,
  closeSync,
  constants,
  copyFileSync,
  existsSync,
  fsyncSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { backupFolder, listBackups, makeBackup, thinBackups } from './backup-folder.ts';
import type { OpenWorkshop } from '../file/connection.ts';
import { anyDamage } from '../failures/damage.ts';
import { databaseProblem, isFaultOfFile } from '../failures/failure.ts';
import { checkDataFile } from '../file/file-check.ts';
import { copyApart, removeBesides } from '../file/kept-apart.ts';
import { schemaVersion } from '../schema/migrate.ts';
import { migrations } from '../schema/migrations.ts';
import { modeBeside } from '../file/private-file.ts';
import { shapeProblem } from '../schema/workshop-shape.ts';

/** What the maker is told where the file itself could not be opened again. */
export interface BroughtBack {
  /** The workshop that is open now: the one brought back, or the old one where that failed; null where neither opens. */
  readonly open: OpenWorkshop | null;
  readonly problems: readonly Problem[];
}

export interface BringBackOptions {
  /** Absolute. */
  readonly file: string;
  /** Null where the file cannot be opened. */
  readonly open: OpenWorkshop | null;
  readonly now: () => Date;
  readonly reopen: (file: string) => Result<OpenWorkshop>;
}

/**
 * Closes the workshop, puts the backup of that name in its place and opens it. Nothing else may use the connection
 * meanwhile. Never throws for what the disk or the files refuse.
 */
export function restoreBackup(name: string, { file, open, now, reopen }: BringBackOptions): BroughtBack {
  const chosen = listBackups(file).find((backup) => backup.name === name);
  if (!chosen) {
    const fix = say('bring-back.open-the-settings-again-and-choose');
    return {
      open,
      problems: [
        { where: say('bring-back.the-backup', { name }), what: say('common.is-no-longer-there'), fix },
      ],
    };
  }
  const fresh = `${file}.${randomUUID()}.new`;
  try {
    open?.checkInPlace();
    const copied = soundCopy(join(backupFolder(file), chosen.name), fresh, modeBeside(file));
    if (!copied.ok) return { open, problems: copied.problems };
    const backup = open ? backupOf(open, now()) : null;
    open?.close();
    // The last to close takes the log away. One that is still there belongs to another program, and to the old file.
    if (backup !== null && existsSync(`${file}-wal`)) {
      const fix = say('bring-back.close-the-other-program-that-uses');
      return {
        open: reopened(reopen, file),
        problems: [{ where: file, what: say('bring-back.is-held-by-another-program'), fix }],
      };
    }
    const kept = backup ?? copyApart(file, now());
    if (backup === null) removeBesides(file);
    renameSync(fresh, file);
    const opened = reopen(file);
    if (opened.ok) {
      thinBackups(file);
      return { open: opened.value, problems: [] };
    }
    putBack(kept, file, fresh);
    return { open: reopened(reopen, file), problems: opened.problems };
  } catch (error) {
    const problem = databaseProblem(error, file);
    if (!problem) throw error;
    return { open: open?.connection.open ? open : reopened(reopen, file), problems: [problem] };
  } finally {
    removeAll(fresh);
  }
}

/** Absolute; null where the open file is damaged, so that no whole copy can be made of it. */
function backupOf(open: OpenWorkshop, at: Date): string | null {
  try {
    const name = makeBackup(open.connection, open.file, 'before bringing back', at);
    return join(backupFolder(open.file), name);
  } catch (error) {
    const problem = databaseProblem(error, open.file);
    if (problem && isFaultOfFile(problem)) return null;
    throw error;
  }
}

/** kept: a backup, or the folder in which the file was kept apart. */
function putBack(kept: string, file: string, fresh: string): void {
  const folder = existsSync(join(kept, basename(file))) ? kept : null;
  copyFileSync(folder ? join(folder, basename(file)) : kept, fresh);
  flush(fresh);
  removeBesides(file);
  renameSync(fresh, file);
  if (folder === null) return;
  for (const name of readdirSync(folder)) {
    if (name !== basename(file)) copyFileSync(join(folder, name), file + name.slice(basename(file).length));
  }
}

/** Copies the backup under another name and looks at the copy whole: its kind, its schema, each page and reference. */
function soundCopy(source: string, fresh: string, mode: number): Result<null> {
  const looked = checkDataFile(source);
  if (!looked.ok) return looked;
  try {
    copyFileSync(source, fresh, constants.COPYFILE_EXCL);
    chmodSync(fresh, mode);
    const database = new SqliteDatabase(fresh, { fileMustExist: true });
    try {
      database.pragma('trusted_schema = OFF');
      const version = schemaVersion(database);
      if (version > migrations.length) {
        return err({
          where: source,
          what: say('bring-back.was-written-by-a-newer-version', {
            version,
            migrationsCount: migrations.length,
          }),
          fix: say('bring-back.bring-it-back-with-the-newer'),
        });
      }
      const fix = say('bring-back.choose-another-backup-this-one-was');
      const strange = shapeProblem(database, source, migrations, fix);
      if (strange) return err(strange);
      const damaged = anyDamage(database, source);
      if (damaged) return err({ ...damaged, fix });
      if ((database.pragma('foreign_key_check') as readonly unknown[]).length > 0) {
        return err({ where: source, what: say('bring-back.refers-to-what-is-not-in'), fix });
      }
      // One file with no log beside it, whatever the backup was made by.
      database.pragma('journal_mode = DELETE');
    } finally {
      database.close();
    }
    flush(fresh);
    return ok(null);
  } catch (error) {
    const problem = databaseProblem(error, source);
    if (!problem) throw error;
    return err(problem);
  }
}

function reopened(reopen: (file: string) => Result<OpenWorkshop>, file: string): OpenWorkshop | null {
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
