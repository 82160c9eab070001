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

function take({ name }: FuzzFile, write: (name: string) => void, failures: unknown[]): boolean {
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
    case 'eats memory': {
      const eaten: number[][] = [];
      return forEver(() => eaten.push(Array.from({ length: 10_000 }, (_, i) => i)));
    }
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
