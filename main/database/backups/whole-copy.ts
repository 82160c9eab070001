/** A whole copy of an open file as it stands at this instant, written by SQLite itself. */
import { rmSync } from 'node:fs';
import type { Database } from 'better-sqlite3';
import { makeEmptyFile, modeBeside } from '../file/private-file.ts';

/** Copies `file`, which is open, to `target`, which must not be there yet. Throws on failure, and leaves no half of a copy. */
export function copyWhole(connection: Database, file: string, target: string): void {
  makeEmptyFile(target, modeBeside(file));
  try {
    connection.prepare('VACUUM INTO ?').run(target);
  } catch (error) {
    rmSync(target, { force: true });
    throw error;
  }
}
