/** A workshop of its own on the server of the tests, for one test. */
import { randomUUID } from 'node:crypto';
import type { TestContext } from 'vitest';
import { carriedTables } from '../../../main/database/carry/carried-tables.ts';
import { type Beside, besideDatabase, type Row } from '../beside.ts';
import { addressVariable, templateName } from './server-for-tests.ts';
import { copyOf, noServer } from './temp-server.ts';

/** To be called before each test that needs the server; where it is missing, the test is skipped by its name. */
export function needServer({ skip }: Pick<TestContext, 'skip'>): void {
  if (process.env[addressVariable] === undefined) skip(noServer);
}

/** Of a database that is not there yet. */
export function freshAddress(): string {
  return addressOf(`workshop_${randomUUID().replaceAll('-', '').slice(0, 16)}`);
}

/** A fresh workshop, or a database with nothing in it. */
export async function createDatabase(
  address: string,
  kind: 'workshop' | 'empty' = 'workshop',
): Promise<void> {
  const content = kind === 'workshop' ? copyOf(templateName) : '';
  await serverQuery(`create database ${nameIn(address)} ${content}`);
}

export async function dropDatabase(address: string): Promise<void> {
  await serverQuery(`drop database if exists ${nameIn(address)} with (force)`);
}

/** Asks once, beside every desk. */
export async function queryAt(address: string, sql: string): Promise<readonly Row[]> {
  const beside = besideDatabase(address);
  try {
    return await beside.ask(sql);
  } finally {
    await beside.close();
  }
}

/** Asks for every row of every table that a file has as well, as one text in the column `text`. */
export const everyRow = `select json_build_array(${carriedTables
  .map(({ name, key }) => {
    const rows = `select json_agg(row_to_json(each) order by ${key.join(', ')}) from ${name} each`;
    return `json_build_array('${name}', coalesce((${rows}), '[]'))`;
  })
  .join(', ')})::text as text`;

export async function dumpDatabase(address: string): Promise<string> {
  const [row] = await queryAt(address, everyRow);
  return String(row?.text);
}

/** One connection for all tests of a process: to prove a password takes longer than most of what is asked. */
let server: Beside | undefined;

function serverQuery(sql: string) {
  server ??= besideDatabase(addressOf('postgres'));
  return server.ask(sql);
}

function nameIn(address: string): string {
  return new URL(address).pathname.slice(1);
}

function addressOf(database: string): string {
  const url = new URL(process.env[addressVariable] ?? '');
  url.pathname = `/${database}`;
  return url.href;
}
