/**
 * Whether a database is a workshop through and through: the very tables, indexes and triggers that its version has,
 * and nothing else. The mark in the header says what a file claims to be; a trigger that was dropped or brought along
 * would act in the ledger without a word.
 */
import SqliteDatabase, { type Database } from 'better-sqlite3';
import { remembered } from '../../../shared-core/geometry/remembered.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { applySteps, schemaVersion } from './migrate.ts';
import type { Migration } from './migration.ts';

/** Null where all is well. mend: what the maker can do instead. Reads nothing but the schema until that is known to be ours. */
export function shapeProblem(
  database: Database,
  file: string,
  migrations: readonly Migration[],
  fix: string,
): Problem | null {
  const wanted = partsOfVersion(migrations, schemaVersion(database));
  if (wanted.size === 0) return { where: file, what: 'holds no workshop', fix };
  const there = partsOf(database);
  for (const [part, sql] of there) {
    if (!wanted.has(part)) {
      return { where: file, what: `holds the ${shown(part)}, which belongs to no workshop`, fix };
    }
    if (wanted.get(part) !== sql) {
      return { where: file, what: `holds the ${shown(part)} in another form than a workshop has it`, fix };
    }
  }
  for (const part of wanted.keys()) {
    if (!there.has(part)) return { where: file, what: `lacks the ${shown(part)}`, fix };
  }
  const rows = database
    .prepare('SELECT count(*) FROM workshop WHERE json_valid(settings)')
    .pluck()
    .get() as number;
  return rows === 1 ? null : { where: file, what: 'holds no workshop', fix };
}

/** "trigger movement_stays" with its text, without what versions of SQLite write in several ways. */
function partsOf(database: Database): Map<string, string> {
  const rows = database
    .prepare(
      "SELECT type, name, tbl_name, coalesce(sql, '') AS sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite\\_%' ESCAPE '\\'",
    )
    .all() as { type: string; name: string; tbl_name: string; sql: string }[];
  return new Map(
    rows.map(({ type, name, tbl_name, sql }) => [
      `${type} ${name}`,
      `${tbl_name} ${sql.replace(/[\s"`[\]]+/g, '')}`,
    ]),
  );
}

/** What a version has stays the same while the program runs, and making it takes longer than the rest of an opening. */
const partsOfVersion = remembered((migrations: readonly Migration[], version: number) =>
  partsAfter(migrations.slice(0, version)),
);

function partsAfter(migrations: readonly Migration[]): Map<string, string> {
  const fresh = new SqliteDatabase(':memory:');
  try {
    fresh.pragma('foreign_keys = OFF');
    for (const migration of migrations) applySteps(fresh, migration);
    return partsOf(fresh);
  } finally {
    fresh.close();
  }
}

/** A name out of a strange file may be anything. */
function shown(part: string): string {
  const plain = part.replace(/[^\p{L}\p{N} _-]+/gu, ' ').trim();
  return plain.length > 60 ? `${plain.slice(0, 59)}…` : plain;
}
