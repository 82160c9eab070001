/** A file and a database have the same tables: what one can hold, the other can. */
import SqliteDatabase from 'better-sqlite3';
import { expect, test } from 'vitest';
import { carriedTables } from '../../../main/database/carry/carried-tables.ts';
import { sharedMigrations, sharedSchema } from '../../../main/database/postgres/shared-migrations.ts';
import { applySteps } from '../../../main/database/schema/migrate.ts';
import { migrations } from '../../../main/database/schema/migrations.ts';
import { createDatabase, dropDatabase, freshAddress, queryAt } from './test-database.ts';

/** Of the database alone: turns, steps and what Kysely writes down. */
const ofDesks = ['kept_step', 'kysely_migration', 'kysely_migration_lock'];

function tablesOfFile(): string[] {
  const database = new SqliteDatabase(':memory:');
  for (const migration of migrations) applySteps(database, migration);
  const rows = database
    .prepare(
      `SELECT m.name || '.' || c.name || CASE WHEN c."notnull" OR c.pk THEN '' ELSE ' or nothing' END AS line
       FROM sqlite_schema AS m JOIN pragma_table_info(m.name) AS c WHERE m.type = 'table'`,
    )
    .pluck()
    .all() as string[];
  database.close();
  return rows.sort();
}

test('table by table and column by column, and which may hold nothing', async () => {
  const address = freshAddress();
  await createDatabase(address);
  const rows = await queryAt(
    address,
    `select table_name || '.' || column_name || case is_nullable when 'YES' then ' or nothing' else '' end as line,
       table_name as table from information_schema.columns where table_schema = 'public'`,
  );
  const own = rows.filter(({ table }) => !ofDesks.includes(String(table))).map(({ line }) => String(line));
  expect(own.sort()).toEqual(tablesOfFile());
  await dropDatabase(address);
});

test('every table is carried, and the numbers of the migrations are the same', () => {
  const names = new Set(tablesOfFile().map((line) => line.split('.')[0]));
  expect(carriedTables.map(({ name }) => name).sort()).toEqual([...names].sort());
  expect(sharedSchema).toBe(migrations.length);
  const numbers = Object.keys(sharedMigrations).map((name) => Number(name.slice(0, 4)));
  expect(numbers).toEqual(numbers.map((_, at) => 13 + at));
});
