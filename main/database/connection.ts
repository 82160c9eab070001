/** Opens a workshop's file: makes it where there is none, refuses what is not ours, brings the schema forward. */
import { randomUUID } from 'node:crypto';
import { existsSync, linkSync, renameSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import SqliteDatabase, { type Database } from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  Kysely,
  SqliteAdapter,
  SqliteDriver,
  SqliteIntrospector,
  SqliteQueryCompiler,
  type TransactionSettings,
} from 'kysely';
import { found, type Outcome, refused } from '../../shared-core/measure/problem.ts';
import { databaseProblem } from './failure.ts';
import { checkDataFile } from './file-check.ts';
import { type Migration, migrate, schemaVersion } from './migrate.ts';
import { migrations as allMigrations } from './migrations.ts';
import type { Schema } from './schema.ts';

export interface OpenWorkshop {
  /** Absolute. */
  readonly file: string;
  readonly queries: Kysely<Schema>;
  /** The connection under the queries: only for work on the whole file, while no query is under way. */
  readonly connection: Database;
  close(): void;
}

export interface OpenOptions {
  readonly now: () => Date;
  /** How long to wait for another program that holds the file. */
  readonly waitMs?: number;
  readonly migrations?: readonly Migration[];
}

/** A refused file is left as it was, and nothing is made beside it. */
export function openWorkshop(dataFile: string, options: OpenOptions): Outcome<OpenWorkshop> {
  const file = resolve(dataFile);
  const migrations = options.migrations ?? allMigrations;
  const checked = checkDataFile(file);
  if (!checked.ok) return checked;
  if (checked.value === 'to be made') {
    const made = makeFile(file, migrations, options.now);
    if (!made.ok) return made;
  }
  let connection: Database | undefined;
  try {
    connection = new SqliteDatabase(file, { fileMustExist: true, timeout: options.waitMs ?? 5000 });
    prepare(connection);
    const migrated = migrate(connection, file, migrations, options.now);
    if (!migrated.ok) {
      connection.close();
      return migrated;
    }
  } catch (error) {
    connection?.close();
    const problem = databaseProblem(error, file);
    if (!problem) throw error;
    return refused(problem);
  }
  return found(workshopOver(connection, file));
}

/** file: absolute. */
export function workshopOver(connection: Database, file: string): OpenWorkshop {
  return {
    file,
    queries: new Kysely<Schema>({ dialect: dialectOver(connection) }),
    connection,
    close: () => void connection.close(),
  };
}

function prepare(connection: Database): void {
  connection.pragma('journal_mode = WAL');
  // What was answered with "done" must survive a power cut, so each commit reaches the disk.
  connection.pragma('synchronous = FULL');
  connection.pragma('foreign_keys = ON');
  connection.pragma('trusted_schema = OFF');
  // Asks for the right to write without writing: a held or write-protected file is told of now, not at the first entry.
  connection.exec('BEGIN IMMEDIATE; ROLLBACK;');
  schemaVersion(connection);
}

/**
 * A new file is made whole under another name and then given its own, so that a crash leaves no half of one and
 * a file that another program makes at the same instant is not written over.
 */
function makeFile(file: string, migrations: readonly Migration[], now: () => Date): Outcome<null> {
  const unborn = `${file}.${randomUUID()}.new`;
  try {
    const connection = new SqliteDatabase(unborn);
    try {
      const migrated = migrate(connection, unborn, migrations, now);
      if (!migrated.ok) return migrated;
    } finally {
      connection.close();
    }
    giveName(unborn, file);
    return found(null);
  } catch (error) {
    const problem = databaseProblem(error, file);
    if (!problem) throw error;
    return refused(problem);
  } finally {
    for (const ending of ['', '-journal', '-wal', '-shm']) rmSync(unborn + ending, { force: true });
  }
}

/** A link fails where the name is taken. Disks without links get a rename, which is as whole but not as exclusive. */
function giveName(unborn: string, file: string): void {
  try {
    linkSync(unborn, file);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST' || existsSync(file)) return;
    renameSync(unborn, file);
  }
}

/** Writers ask for the right to write at once: a reader that turns writer halfway could be refused by another program. */
class WorkshopDriver extends SqliteDriver {
  readonly #connection: Database;

  constructor(connection: Database) {
    super({ database: connection });
    this.#connection = connection;
  }

  override async beginTransaction(
    connection: DatabaseConnection,
    settings?: TransactionSettings,
  ): Promise<void> {
    const begin = settings?.accessMode === 'read only' ? 'begin deferred' : 'begin immediate';
    await connection.executeQuery(CompiledQuery.raw(begin));
  }

  /** A full disk makes SQLite roll back by itself; then there is nothing left to roll back. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#connection.inTransaction) await super.rollbackTransaction(connection);
  }
}

function dialectOver(connection: Database): Dialect {
  return {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new WorkshopDriver(connection),
    createIntrospector: (queries) => new SqliteIntrospector(queries),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  };
}
