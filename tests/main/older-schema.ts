/** Makes an older file of one that was written by today's version, for what later migrations added to its tables. */
import SqliteDatabase, { type Database } from 'better-sqlite3';
import { applySteps } from '../../main/database/schema/migrate.ts';
import { migrations } from '../../main/database/schema/migrations.ts';

/** From which schema a column is there. */
const addedColumns = [{ since: 12, table: 'length', column: 'is_washed' }] as const;

/** From which schema a table is there. */
const addedTables = [{ since: 13, table: 'last_change' }] as const;

/** From which schema a trigger is worded as it is now. */
const changedTriggers = [{ since: 13, trigger: 'movement_reverses' }] as const;

/** Rows stay as they are: what an older version wrote otherwise is the test's to rewrite. version: from 8. */
export function asOfSchema(database: Database, version: number): void {
  for (const { since, table, column } of addedColumns) {
    if (version < since) database.exec(`ALTER TABLE ${table} DROP COLUMN ${column}`);
  }
  for (const { since, table } of addedTables) if (version < since) database.exec(`DROP TABLE ${table}`);
  for (const { since, trigger } of changedTriggers) {
    if (version >= since) continue;
    database.exec(`DROP TRIGGER ${trigger}`);
    database.exec(triggerOf(version, trigger));
  }
  database.pragma(`user_version = ${version}`);
}

/** As a file that was made by that version has it. */
function triggerOf(version: number, trigger: string): string {
  const old = new SqliteDatabase(':memory:');
  for (const migration of migrations.slice(0, version)) applySteps(old, migration);
  const sql = old.prepare("SELECT sql FROM sqlite_schema WHERE type = 'trigger' AND name = ?").pluck();
  const text = String(sql.get(trigger));
  old.close();
  return text;
}
