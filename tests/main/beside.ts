/** Looks into a workshop past the services, in SQL that means the same in a file and in a database. */
import SqliteDatabase from 'better-sqlite3';
import pg from 'pg';
import { exactTypes } from '../../main/database/postgres/connecting.ts';

export type Row = Readonly<Record<string, unknown>>;
export type Value = string | number | null;

export interface Beside {
  /** sql: with ? for each value. Rows where it asks for some, else none. */
  ask(sql: string, ...values: readonly Value[]): Promise<readonly Row[]>;
  close(): Promise<void>;
}

export function besideFile(file: string): Beside {
  const database = new SqliteDatabase(file);
  return {
    async ask(sql, ...values) {
      const statement = database.prepare(sql);
      if (statement.reader) return statement.all(...values) as Row[];
      statement.run(...values);
      return [];
    },
    async close() {
      database.close();
    },
  };
}

/** Connects as it is first asked. */
export function besideDatabase(address: string): Beside {
  let connected: Promise<pg.Client> | null = null;
  const connect = async () => {
    const client = new pg.Client({ connectionString: address, types: exactTypes });
    client.on('error', () => {});
    await client.connect();
    return client;
  };
  return {
    async ask(sql, ...values) {
      connected ??= connect();
      let number = 0;
      const numbered = sql.replace(/\?/g, () => `$${++number}`);
      return (await (await connected).query(numbered, [...values])).rows as Row[];
    },
    async close() {
      await (await connected)?.end();
    },
  };
}
