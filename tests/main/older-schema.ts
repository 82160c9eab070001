/** Makes an older file of one that was written by today's version, for what later migrations added to its tables. */
import type { Database } from 'better-sqlite3';

/** From which schema a column is there. */
const addedColumns = [{ since: 12, table: 'length', column: 'is_washed' }] as const;

/** Rows stay as they are: what an older version wrote otherwise is the test's to rewrite. version: from 8. */
export function asOfSchema(database: Database, version: number): void {
  for (const { since, table, column } of addedColumns) {
    if (version < since) database.exec(`ALTER TABLE ${table} DROP COLUMN ${column}`);
  }
  database.pragma(`user_version = ${version}`);
}
