/** One step from a schema to the next. */
import type { Database } from 'better-sqlite3';

export interface Migration {
  /** From 1, without gaps. */
  readonly number: number;
  /** A word or two for the backup's name and for messages. */
  readonly what: string;
  readonly sql: string;
  /** What SQL alone cannot do, after it and in the same transaction. */
  readonly finish?: (database: Database) => void;
}
