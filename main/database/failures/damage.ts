/** Whether SQLite finds damage in a file, told at the start: much of it would otherwise show as entries that are missing. */
import type { Database } from 'better-sqlite3';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { databaseProblem, isFaultOfFile } from './failure.ts';

/** Up to this size a file is looked through with its indexes, which takes some 20 ms for each million bytes. */
const thoroughBytes = 16_000_000;

/** Null where every page and row is sound, and every index where the file is not large. It reads the whole file. */
export function damage(connection: Database, file: string): Problem | null {
  const pages = connection.pragma('page_count', { simple: true }) as number;
  const isLarge = pages * (connection.pragma('page_size', { simple: true }) as number) > thoroughBytes;
  return isSound(connection, isLarge ? 'quick_check(1)' : 'integrity_check(1)') ? null : damaged(file);
}

/** As above, with every index whatever the size. */
export function anyDamage(connection: Database, file: string): Problem | null {
  return isSound(connection, 'integrity_check(1)') ? null : damaged(file);
}

function isSound(connection: Database, check: string): boolean {
  try {
    return connection.pragma(check, { simple: true }) === 'ok';
  } catch (error) {
    const problem = databaseProblem(error, '');
    if (problem === null || !isFaultOfFile(problem)) throw error;
    return false;
  }
}

function damaged(file: string): Problem {
  return databaseProblem({ code: 'SQLITE_CORRUPT' }, file)!;
}
