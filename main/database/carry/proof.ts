/** That two workshops hold the same, row by row, and that what one keeps as sums is what its rows add up to. */
import { say } from '../../../shared-core/wording/say.ts';
import type { Kysely } from 'kysely';
import type { Schema } from '../schema/schema.ts';
import { carriedTables, pagesOf, type Row } from './carried-tables.ts';

/** More than a maker reads. */
const maxTold = 5;

/** Rows by table. */
export type RowCounts = ReadonlyMap<string, number>;

export interface Proof {
  readonly counts: RowCounts;
  /** Where the two part, the first few of them; empty where they are the same. */
  readonly differences: readonly string[];
}

/** Reads both from end to end. */
export async function compareAll(one: Kysely<Schema>, other: Kysely<Schema>): Promise<Proof> {
  const counts = new Map<string, number>();
  const differences: string[] = [];
  for (const table of carriedTables) {
    const [left, right] = [rowsOf(pagesOf(one, table)), rowsOf(pagesOf(other, table))];
    let count = 0;
    for (;;) {
      const [a, b] = [await left.next(), await right.next()];
      if (a.done && b.done) break;
      count++;
      const [here, there] = [a.done ? undefined : rowText(a.value), b.done ? undefined : rowText(b.value)];
      if (here === there) continue;
      const key = table.key.map((column) => (a.done ? b.value : a.value)?.[column]).join(', ');
      differences.push(say('proof.is-not-the-same', { tableName: table.name, key }));
      if (differences.length >= maxTold) return { counts, differences };
      // The rest of this table would only be out of step.
      if (here === undefined || there === undefined) break;
    }
    counts.set(table.name, count);
  }
  return { counts, differences };
}

async function* rowsOf(pages: AsyncGenerator<readonly Row[]>): AsyncGenerator<Row> {
  for await (const page of pages) yield* page;
}

/** Columns by name; bytes as such, since two libraries give them as two things. */
function rowText(row: Row): string {
  const names = Object.keys(row).sort();
  return JSON.stringify(
    names.map((name) => {
      const value = row[name];
      return [name, value instanceof Uint8Array ? Buffer.from(value).toString('base64') : value];
    }),
  );
}

interface Sums {
  onHand: number;
  reserved: number;
}

/** Balances that are not what the movements add up to, the first few of them. */
export async function wrongBalances(queries: Kysely<Schema>): Promise<readonly string[]> {
  const lots = new Map<string, Sums>();
  const lengths = new Map<string, Sums>();
  const add = (to: Map<string, Sums>, id: string, onHand: number, reserved: number) => {
    const sums = to.get(id) ?? { onHand: 0, reserved: 0 };
    to.set(id, { onHand: sums.onHand + onHand, reserved: sums.reserved + reserved });
  };
  for await (const row of tableRows(queries, 'movement')) {
    const [onHand, reserved] = [Number(row.on_hand_milli), Number(row.reserved_milli)];
    add(lots, String(row.lot_id), onHand, reserved);
    if (row.length_id !== null) add(lengths, String(row.length_id), onHand, reserved);
  }
  const told: string[] = [];
  const check = async (table: 'lot_balance' | 'length_balance' | 'item_balance', sums: Map<string, Sums>) => {
    const key = carriedTables.find(({ name }) => name === table)!.key[0];
    const left = new Set(
      [...sums].filter(([, { onHand, reserved }]) => onHand !== 0 || reserved !== 0).map(([id]) => id),
    );
    for await (const row of tableRows(queries, table)) {
      const id = String(row[key]);
      const { onHand, reserved } = sums.get(id) ?? { onHand: 0, reserved: 0 };
      left.delete(id);
      if (row.on_hand_milli !== onHand || row.reserved_milli !== reserved) told.push(`${table} ${id}`);
    }
    told.push(...[...left].map((id) => `${table} ${id}`));
  };
  await check('lot_balance', lots);
  await check('length_balance', lengths);
  await check('item_balance', await byItem(queries, lots));
  told.push(...(await wrongValues(queries)));
  return told.slice(0, maxTold).map((each) => say('proof.is-not-what-its-movements-add', { each }));
}

async function byItem(queries: Kysely<Schema>, lots: ReadonlyMap<string, Sums>): Promise<Map<string, Sums>> {
  const items = new Map<string, Sums>();
  for await (const row of tableRows(queries, 'lot')) {
    const { onHand, reserved } = lots.get(String(row.id)) ?? { onHand: 0, reserved: 0 };
    const sums = items.get(String(row.item_id)) ?? { onHand: 0, reserved: 0 };
    items.set(String(row.item_id), { onHand: sums.onHand + onHand, reserved: sums.reserved + reserved });
  }
  return items;
}

/** An item is worth what is left of its lots: price x rest / received, each rounded. */
async function wrongValues(queries: Kysely<Schema>): Promise<string[]> {
  const worth = new Map<string, bigint>();
  for await (const row of tableRows(queries, 'lot_balance')) {
    worth.set(String(row.lot_id), BigInt(Number(row.worth_milli)));
  }
  const values = new Map<string, bigint>();
  for await (const row of tableRows(queries, 'lot')) {
    const received = BigInt(Number(row.received_milli));
    const left = worth.get(String(row.id)) ?? 0n;
    const value = (2n * BigInt(Number(row.price_minor)) * left + received) / (2n * received);
    values.set(String(row.item_id), (values.get(String(row.item_id)) ?? 0n) + value);
  }
  const told: string[] = [];
  for await (const row of tableRows(queries, 'item_balance')) {
    const value = values.get(String(row.item_id)) ?? 0n;
    if (BigInt(Number(row.value_minor)) !== value) told.push(`item_balance ${String(row.item_id)}`);
  }
  return told;
}

function tableRows(queries: Kysely<Schema>, name: keyof Schema): AsyncGenerator<Row> {
  return rowsOf(pagesOf(queries, carriedTables.find((table) => table.name === name)!));
}
