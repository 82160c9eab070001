/** The rows of a workshop, table by table, read and written alike in every dialect. */
import type { Kysely } from 'kysely';
import type { Schema } from '../schema/schema.ts';

export type Row = Readonly<Record<string, unknown>>;

interface CarriedTable {
  readonly name: keyof Schema;
  /** What tells its rows apart, in the order in which they are read. */
  readonly key: readonly [string] | readonly [string, string];
  /** Rows of documents and photos are large, so fewer are held at once. */
  readonly atOnce: number;
}

/** Each after those that it refers to. */
export const carriedTables: readonly CarriedTable[] = [
  { name: 'workshop', key: ['only_row'], atOnce: 1 },
  { name: 'item', key: ['id'], atOnce: 500 },
  { name: 'item_photo', key: ['item_id'], atOnce: 20 },
  { name: 'lot', key: ['entry'], atOnce: 1000 },
  { name: 'length', key: ['entry'], atOnce: 1000 },
  { name: 'plan', key: ['id'], atOnce: 500 },
  { name: 'plan_revision', key: ['plan_id', 'revision'], atOnce: 20 },
  { name: 'cutting', key: ['entry'], atOnce: 50 },
  { name: 'movement', key: ['entry'], atOnce: 1000 },
  { name: 'item_balance', key: ['item_id'], atOnce: 1000 },
  { name: 'lot_balance', key: ['lot_id'], atOnce: 1000 },
  { name: 'length_balance', key: ['length_id'], atOnce: 1000 },
  { name: 'offer', key: ['id'], atOnce: 1000 },
  { name: 'supplier', key: ['key'], atOnce: 1000 },
  { name: 'shopping_tick', key: ['plan_id', 'offer_id'], atOnce: 1000 },
  { name: 'season_plan', key: ['plan_id'], atOnce: 1000 },
  { name: 'kept_lay', key: ['entry'], atOnce: 10 },
  { name: 'upgrade_note', key: ['entry'], atOnce: 1000 },
  { name: 'last_change', key: ['only_row'], atOnce: 1 },
];

/** The tables by name alone: which columns they have is the database's to say. */
type AnyTable = Kysely<Record<string, Record<string, unknown>>>;

/** All rows in the order of their keys, some at a time. */
export async function* pagesOf(queries: Kysely<Schema>, table: CarriedTable): AsyncGenerator<readonly Row[]> {
  const any = queries as unknown as AnyTable;
  const [first, second] = table.key;
  let last: Row | undefined;
  for (;;) {
    let query = any.selectFrom(table.name).selectAll().limit(table.atOnce);
    for (const column of table.key) query = query.orderBy(column);
    const after = last;
    if (after) {
      query = query.where(({ eb, or, and }) =>
        second === undefined
          ? eb(first, '>', after[first])
          : or([
              eb(first, '>', after[first]),
              and([eb(first, '=', after[first]), eb(second, '>', after[second])]),
            ]),
      );
    }
    const rows: readonly Row[] = await query.execute();
    if (rows.length > 0) yield rows;
    last = rows.at(-1);
    if (rows.length < table.atOnce) return;
  }
}

export async function addRows(
  queries: Kysely<Schema>,
  table: CarriedTable,
  rows: readonly Row[],
): Promise<void> {
  await (queries as unknown as AnyTable)
    .insertInto(table.name)
    .values(rows as never)
    .execute();
}
