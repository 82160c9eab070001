/** Brings a file's schema forward, one numbered migration at a time; there is no way back but the backup. */
import type { Database } from 'better-sqlite3';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import { backupBeside } from '../backups/backup.ts';
import { databaseProblem } from '../failures/failure.ts';
import type { Migration } from './migration.ts';

/** "BoBa" as a number: in each file's header, it tells our files from everybody else's. */
export const applicationId = 0x426f4261;
/** "BoBd": the same for a demo, which may be written over at any time. */
export const demoApplicationId = 0x426f4264;

export function schemaVersion(database: Database): number {
  return database.pragma('user_version', { simple: true }) as number;
}

/**
 * Brings the open file up to the last of the migrations. A file with data is copied beside itself before each one.
 * A migration that fails leaves the file as it was before that one. A file newer than the list is refused.
 * Numbers that do not run 1, 2, 3, ... are a programmer's mistake and throw.
 */
export function migrate(
  database: Database,
  file: string,
  migrations: readonly Migration[],
  now: () => Date,
): Result<number> {
  migrations.forEach((migration, index) => {
    if (migration.number !== index + 1) {
      throw new RangeError(`migration ${migration.number} stands in place ${index + 1}`);
    }
  });
  const version = schemaVersion(database);
  if (version > migrations.length) return err(newerFile(file, version, migrations.length));
  for (const migration of migrations.slice(version)) {
    let backup = '';
    try {
      // A file that was made a moment ago holds nothing to keep.
      if (version > 0) backup = backupBeside(database, file, migration, now());
      runOne(database, migration);
    } catch (error) {
      const known = databaseProblem(error, file);
      if (known) return err(known);
      const what = `could not be brought up to schema ${migration.number} (${migration.what}): ${reasonOf(error)}`;
      const copy = backup === '' ? '' : ` A copy from before stands in ${backup}.`;
      return err({
        where: file,
        what,
        fix: `It was left as it was; go on with the version it comes from.${copy}`,
      });
    }
  }
  return ok(migrations.length);
}

/** known: the last schema that this version has. */
export function newerFile(file: string, version: number, known: number) {
  return {
    where: file,
    what: `was written by a newer version (its schema is ${version}, this version knows ${known})`,
    fix: 'Open it with the newer version, or bring back a backup from before.',
  };
}

/** Another program may have done it while this one waited for the file: then nothing is left to do. */
function runOne(database: Database, migration: Migration): void {
  // Tables can be rebuilt only while references are not enforced; they are checked before the commit instead.
  database.pragma('foreign_keys = OFF');
  try {
    database.exec('BEGIN IMMEDIATE');
    if (schemaVersion(database) < migration.number) {
      applySteps(database, migration);
      const broken = database.pragma('foreign_key_check') as readonly unknown[];
      if (broken.length > 0) throw new Error(`${broken.length} rows would refer to nothing`);
      markSchema(database, migration.number);
    }
    database.exec('COMMIT');
  } finally {
    if (database.inTransaction) database.exec('ROLLBACK');
    database.pragma('foreign_keys = ON');
  }
}

/** Its statements alone: the transaction around them, references and the mark in the file are the caller's. */
export function applySteps(database: Database, migration: Migration): void {
  database.exec(migration.sql);
  migration.finish?.(database);
}

export function markSchema(database: Database, version: number): void {
  database.pragma(`user_version = ${version}`);
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
