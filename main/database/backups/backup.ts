/** A whole copy of the open file beside it, as it stands at this instant, before a migration. */
import { existsSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import type { Migration } from '../schema/migration.ts';
import { copyWhole } from './whole-copy.ts';

/** Copies the file before a migration and gives the copy's path. Never writes over an earlier copy. Throws on failure. */
export function backupBeside(database: Database, file: string, migration: Migration, at: Date): string {
  const ending = extname(file);
  const number = String(migration.number).padStart(4, '0');
  const stamp = at.toISOString().replaceAll(':', '-').replace(/\..*/, '');
  const stem = join(dirname(file), `${basename(file, ending)}-before-${number}-${stamp}`);
  let copy = `${stem}${ending}`;
  for (let next = 2; existsSync(copy); next++) copy = `${stem}-${next}${ending}`;
  copyWhole(database, file, copy);
  return copy;
}
