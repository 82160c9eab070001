/** Opens a workshop's file: makes it where there is none, refuses what is not ours, brings the schema forward. */
import { say } from '../../../shared-core/wording/say.ts';
import { randomUUID } from 'node:crypto';
import { existsSync, linkSync, renameSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import SqliteDatabase, { type Database } from 'better-sqlite3';
import { Kysely } from 'kysely';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { restoreOrName, databaseProblem } from '../failures/failure.ts';
import { checkDataFile } from './file-check.ts';
import { placeWatch } from './in-place.ts';
import { takeLogApart } from './kept-apart.ts';
import { forgetLogBase, hasForeignLog, settleLog } from './log-base.ts';
import { applicationId, demoApplicationId, migrate, newerFile, schemaVersion } from '../schema/migrate.ts';
import type { Migration } from '../schema/migration.ts';
import { migrations as allMigrations } from '../schema/migrations.ts';
import { makeEmptyFile, modeBeside } from './private-file.ts';
import type { Schema } from '../schema/schema.ts';
import { dialectOver, type FileBehind } from '../schema/workshop-dialect.ts';
import { shapeProblem } from '../schema/workshop-shape.ts';

export interface OpenWorkshop {
  /** Absolute. */
  readonly file: string;
  readonly queries: Kysely<Schema>;
  /** The connection under the queries: only for work on the whole file, while no query is under way. */
  readonly connection: Database;
  /** What the maker must be told of the opening, though it went well. */
  readonly told: readonly Problem[];
  /** Throws a FileNotInPlace where the file was removed or replaced since. Transactions ask by themselves. */
  checkInPlace(): void;
  close(): void;
}

export interface OpenOptions {
  readonly now: () => Date;
  /** How long to wait for another program that holds the file. */
  readonly waitMs?: number;
  readonly migrations?: readonly Migration[];
  /** Opens, or makes, a demo's file in place of a maker's. */
  readonly isDemo?: boolean;
}

/** A refused file is left as it was, and nothing is made beside it. */
export function openWorkshop(dataFile: string, options: OpenOptions): Result<OpenWorkshop> {
  const file = resolve(dataFile);
  const migrations = options.migrations ?? allMigrations;
  const checked = checkDataFile(file, options.isDemo ? 'to be a demo' : 'to be written');
  if (!checked.ok) return checked;
  if (checked.value === 'to be made') {
    const made = makeFile(file, migrations, options);
    if (!made.ok) return made;
  }
  let connection: Database | undefined;
  try {
    const told = withoutForeignLog(file, options.now);
    connection = new SqliteDatabase(file, { fileMustExist: true, timeout: options.waitMs ?? 5000 });
    const problem = schemaProblem(connection, file, migrations);
    if (problem) {
      connection.close();
      return err(problem);
    }
    prepare(connection);
    const migrated = migrate(connection, file, migrations, options.now);
    if (!migrated.ok) {
      connection.close();
      return migrated;
    }
    settleLog(connection, file);
    return ok(workshopOver(connection, { file, checkInPlace: placeWatch(file) }, file, told));
  } catch (error) {
    connection?.close();
    const problem = databaseProblem(error, file);
    if (!problem) throw error;
    return err(problem);
  }
}

/** file: absolute. behind: null where the connection holds the file's content in memory alone. */
export function workshopOver(
  connection: Database,
  behind: FileBehind | null,
  file: string,
  told: readonly Problem[] = [],
): OpenWorkshop {
  return {
    file,
    queries: new Kysely<Schema>({ dialect: dialectOver(connection, behind) }),
    connection,
    told,
    checkInPlace: () => behind?.checkInPlace(),
    close: () => {
      if (!connection.open) return;
      connection.close();
      // The last to close takes the log with it.
      if (behind && !existsSync(`${file}-wal`)) forgetLogBase(file);
    },
  };
}

function withoutForeignLog(file: string, now: () => Date): Problem[] {
  if (!hasForeignLog(file)) return [];
  const folder = takeLogApart(file, now());
  return [
    {
      where: file,
      what: say('connection.lay-beside-the-log-of-another'),
      fix: say('connection.the-file-was-opened-as-it', { folder }),
    },
  ];
}

/** Before anything is written: a newer file, or one that is no workshop. */
function schemaProblem(database: Database, file: string, migrations: readonly Migration[]): Problem | null {
  const version = schemaVersion(database);
  return version > migrations.length
    ? newerFile(file, version, migrations.length)
    : shapeProblem(database, file, migrations, restoreOrName());
}

function prepare(connection: Database): void {
  connection.pragma('journal_mode = WAL');
  // What was answered with "done" must survive a power cut, so each commit reaches the disk.
  connection.pragma('synchronous = FULL');
  // Only where it is written down what the next log begins on: see log-base.ts.
  connection.pragma('wal_autocheckpoint = 0');
  connection.pragma('foreign_keys = ON');
  connection.pragma('trusted_schema = OFF');
  // Asks for the right to write without writing: a held or write-protected file is told of now, not at the first entry.
  connection.exec('BEGIN IMMEDIATE; ROLLBACK;');
}

/**
 * A new file is made whole under another name and then given its own, so that a crash leaves no half of one and
 * a file that another program makes at the same instant is not written over.
 */
function makeFile(
  file: string,
  migrations: readonly Migration[],
  { now, isDemo }: OpenOptions,
): Result<null> {
  const tempFile = `${file}.${randomUUID()}.new`;
  try {
    makeEmptyFile(tempFile, modeBeside(file));
    const connection = new SqliteDatabase(tempFile);
    try {
      connection.pragma(`application_id = ${isDemo ? demoApplicationId : applicationId}`);
      const migrated = migrate(connection, tempFile, migrations, now);
      if (!migrated.ok) return migrated;
    } finally {
      connection.close();
    }
    giveName(tempFile, file);
    return ok(null);
  } catch (error) {
    const problem = databaseProblem(error, file);
    if (!problem) throw error;
    return err(problem);
  } finally {
    for (const ending of ['', '-journal', '-wal', '-shm']) rmSync(tempFile + ending, { force: true });
  }
}

/** A link fails where the name is taken. Disks without links get a rename, which is as whole but not as exclusive. */
function giveName(tempFile: string, file: string): void {
  try {
    linkSync(tempFile, file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST' || existsSync(file)) return;
    renameSync(tempFile, file);
  }
}
