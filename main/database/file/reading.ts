/**
 * Opens a workshop's file for reading alone: as it stands at this instant, taken into memory whole. Nothing is made
 * beside the file, not even for a moment, and no window that has it open is kept waiting.
 *
 * SQLite cannot do that for a closed file by itself: to read one that keeps a log, it makes the log anew, and in a
 * folder that may not be written to it then refuses. So a file without a log is read as it lies; one with a log is
 * open elsewhere, or was left by a program that died, and is read through SQLite, which finds its log and the table
 * of it beside the file. Source: sqlite.org/wal.html, section 5.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { readFileSync, statSync } from 'node:fs';
import SqliteDatabase from 'better-sqlite3';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { type OpenWorkshop, workshopOver } from './connection.ts';
import { damage } from '../failures/damage.ts';
import { restoreOrName, databaseProblem } from '../failures/failure.ts';
import { checkDataFile, realFile } from './file-check.ts';
import { hasForeignLog } from './log-base.ts';
import { newerFile, schemaVersion } from '../schema/migrate.ts';
import { migrations } from '../schema/migrations.ts';
import { shapeProblem } from '../schema/workshop-shape.ts';

/** How often to look again at a file that is written to just now. */
const maxTries = 5;

/**
 * What stands in the file now; later changes are not seen, and every write fails. A file of another version is
 * refused, since bringing it up to date would change it.
 *
 * waitMs: how long to wait for a program that holds the file shut.
 */
export function readWorkshop(dataFile: string, waitMs: number): Result<OpenWorkshop> {
  const real = realFile(dataFile);
  if (!real.ok) return real;
  const file = real.value;
  const checked = checkDataFile(file, 'to be read');
  if (!checked.ok) return checked;
  try {
    const bytes = bytesNow(file, waitMs);
    if (bytes === null) return err(notClosed(file));
    const connection = new SqliteDatabase(withoutLog(bytes), { readonly: true });
    const version = schemaVersion(connection);
    if (version !== migrations.length) {
      connection.close();
      const isNewer = version > migrations.length;
      return err(isNewer ? newerFile(file, version, migrations.length) : olderFile(file, version));
    }
    connection.pragma('trusted_schema = OFF');
    const problem = shapeProblem(connection, file, migrations, restoreOrName()) ?? damage(connection, file);
    if (problem) {
      connection.close();
      return err(problem);
    }
    return ok(workshopOver(connection, null, file));
  } catch (error) {
    const problem = databaseProblem(error, file);
    if (!problem) throw error;
    return err(problem);
  }
}

/** The database as one whole, what stands in its log included; null where only a writer could put it together. */
function bytesNow(file: string, waitMs: number): Buffer | null {
  for (let tries = 1; tries <= maxTries; tries++) {
    if (sizeOf(`${file}-journal`) > 0) return null;
    if (sizeOf(`${file}-wal`) > 0) {
      if (sizeOf(`${file}-shm`) === 0) return null;
      // A writer that settles its log at this very instant looks like one whose log is another file's.
      if (hasForeignLog(file)) continue;
      return throughSqlite(file, waitMs);
    }
    const before = statSync(file, { bigint: true });
    const bytes = readFileSync(file);
    const after = statSync(file, { bigint: true });
    // Pages reach the file only from a log, so one that has none before and after has not changed in between.
    const isSame = before.ino === after.ino && before.mtimeNs === after.mtimeNs && before.size === after.size;
    if (isSame && sizeOf(`${file}-wal`) === 0) return bytes;
  }
  return hasForeignLog(file) ? null : throughSqlite(file, waitMs);
}

function throughSqlite(file: string, waitMs: number): Buffer {
  const connection = new SqliteDatabase(file, { readonly: true, fileMustExist: true, timeout: waitMs });
  try {
    // One transaction, so that all pages are of one instant.
    connection.exec('BEGIN');
    schemaVersion(connection);
    connection.prepare('SELECT count(*) FROM sqlite_schema').get();
    return connection.serialize();
  } finally {
    connection.close();
  }
}

/**
 * The header says that a log is kept; in memory there is none to keep.
 * Source: sqlite.org/c3ref/deserialize.html, on bytes 18 and 19.
 */
export function withoutLog(bytes: Buffer): Buffer {
  bytes[18] = 1;
  bytes[19] = 1;
  return bytes;
}

function sizeOf(file: string): number {
  return statSync(file, { throwIfNoEntry: false })?.size ?? 0;
}

function notClosed(file: string): Problem {
  return {
    where: file,
    what: say('reading.was-not-closed-properly'),
    fix: say('reading.open-it-once-in-the-window'),
  };
}

function olderFile(file: string, version: number): Problem {
  return {
    where: file,
    what: say('reading.was-written-by-an-older-version', { version, migrationsCount: migrations.length }),
    fix: say('reading.open-it-once-in-the-window-2'),
  };
}
