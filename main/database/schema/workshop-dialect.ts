/** How queries begin and end on a workshop's file. */
import { statSync } from 'node:fs';
import type { Database, Statement } from 'better-sqlite3';
import {
  CompiledQuery,
  type DatabaseConnection,
  type Dialect,
  type SqliteDatabase,
  SqliteAdapter,
  SqliteDriver,
  SqliteIntrospector,
  SqliteQueryCompiler,
  type TransactionSettings,
} from 'kysely';
import { longLogBytes, settleLog } from '../file/log-base.ts';

/** The file under the connection; null for one in memory. */
export interface FileBehind {
  readonly file: string;
  /** Throws where the file is no longer the one that was opened. */
  readonly checkInPlace: () => void;
}

/** Of the texts of queries there are about two hundred. */
const maxStatements = 400;

/** Preparing a statement takes longer than running most of them, so those asked for last stay prepared. */
function keepingStatements(connection: Database): SqliteDatabase {
  const kept = new Map<string, Statement>();
  return {
    close: () => void connection.close(),
    prepare(text) {
      const statement = kept.get(text) ?? connection.prepare(text);
      kept.delete(text);
      kept.set(text, statement);
      const [oldest] = kept.keys();
      if (kept.size > maxStatements && oldest !== undefined) kept.delete(oldest);
      return statement;
    },
  };
}

class WorkshopDriver extends SqliteDriver {
  readonly #connection: Database;
  readonly #behind: FileBehind | null;
  #isWriting = false;

  constructor(connection: Database, behind: FileBehind | null) {
    super({ database: keepingStatements(connection) });
    this.#connection = connection;
    this.#behind = behind;
  }

  /** Writers ask for the right to write at once: a reader that turns writer halfway could be refused by another program. */
  override async beginTransaction(
    connection: DatabaseConnection,
    settings?: TransactionSettings,
  ): Promise<void> {
    this.#isWriting = settings?.accessMode !== 'read only';
    if (this.#isWriting) this.#behind?.checkInPlace();
    const begin = this.#isWriting ? 'begin immediate' : 'begin deferred';
    await connection.executeQuery(CompiledQuery.raw(begin));
  }

  override async commitTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#isWriting) this.#behind?.checkInPlace();
    await super.commitTransaction(connection);
    if (this.#isWriting && this.#behind) this.#keepLogShort(this.#behind.file);
  }

  /** A full disk makes SQLite roll back by itself; then there is nothing left to roll back. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#connection.inTransaction) await super.rollbackTransaction(connection);
  }

  #keepLogShort(file: string): void {
    const log = statSync(`${file}-wal`, { throwIfNoEntry: false });
    if (log && log.size > longLogBytes) settleLog(this.#connection, file);
  }
}

/** Queries over an open connection. Only one transaction at a time is open on it. */
export function dialectOver(connection: Database, behind: FileBehind | null): Dialect {
  return {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new WorkshopDriver(connection, behind),
    createIntrospector: (queries) => new SqliteIntrospector(queries),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  };
}
