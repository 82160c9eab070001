/** Readers that do what none may do, each at the name of a file: so the counts of a run are seen to count. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { dump } from '../dump.ts';
import type { FuzzFile, Readers } from './fuzz-file.ts';

export async function openReaders(folder: string): Promise<Readers> {
  mkdirSync(folder, { recursive: true });
  const dataFile = join(folder, 'own.sqlite');
  const database = new SqliteDatabase(dataFile);
  database.exec('CREATE TABLE item (name TEXT)');
  const failures: unknown[] = [];
  const write = (name: string) => database.prepare('INSERT INTO item VALUES (?)').run(name);
  return {
    async look({ name }) {
      if (name === 'writes when it is looked at') write(name);
      return true;
    },
    take: async (file) => take(file, write, failures),
    contents: () => dump(dataFile),
    failures: () => failures.splice(0),
    close: () => database.close(),
  };
}

function take(
  { name }: FuzzFile,
  write: (name: string) => void,
  failures: unknown[],
): boolean | Promise<boolean> {
  switch (name) {
    case 'throws':
      throw new Error('a slip');
    case 'dies':
      return process.exit(3);
    case 'swallows a slip':
      failures.push(new Error('a slip'));
      return false;
    case 'never ends':
      return forEver(() => {});
    case 'eats memory':
      return new Promise(() => setImmediate(runOutOfMemory));
    case 'writes though it is refused':
      write(name);
      return false;
    case 'writes and is taken':
      write(name);
      return true;
    default:
      return false;
  }
}

function forEver(work: () => void): never {
  for (;;) work();
}

/** As Node tells of it. Where the memory is really full, V8 cannot always end the thread, and ends the process of the tests. */
function runOutOfMemory(): never {
  throw Object.assign(new Error('heap out of memory'), { code: 'ERR_WORKER_OUT_OF_MEMORY' });
}
