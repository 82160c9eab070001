/** The stash as a list: searched, sorted and cut to a window. */
import { type Expression, type Kysely, type SqlBool, sql } from 'kysely';
import type { CallInput, ItemRow } from '../../shared-core/contract/contract.ts';
import { found, type Outcome } from '../../shared-core/measure/problem.ts';
import { itemKinds } from '../../shared-core/stash/kinds.ts';
import { fromMilli } from '../../shared-core/stash/stash.ts';
import type { Schema } from '../database/schema.ts';
import { searchWords } from '../database/search-text.ts';
import type { CallContext } from './call.ts';

type Asked = CallInput<'listItems'>;

/**
 * Every word of the search must stand in the item's name, colour or place, or in a supplier or dye lot of it.
 * An empty list of kinds is all kinds. Places come with the empty one last. Lots and lengths are counted where
 * something is on hand.
 */
export async function listItems(
  context: CallContext,
  input: Asked,
): Promise<Outcome<{ rows: readonly ItemRow[]; total: number }>> {
  const { queries } = context;
  const filter = filterOf(input);
  const { total } = await queries
    .selectFrom('item')
    .select(({ fn }) => fn.countAll<number>().as('total'))
    .where(filter)
    .executeTakeFirstOrThrow();
  const ids = await pageIds(queries, input, filter);
  return found({ rows: await rowsOf(queries, ids), total });
}

function filterOf(input: Asked): Expression<SqlBool> {
  const parts = [sql<SqlBool>`item.archived = 0`];
  if (input.kinds.length > 0) parts.push(sql<SqlBool>`item.kind in (${sql.join(input.kinds)})`);
  for (const word of searchWords(input.search))
    parts.push(sql<SqlBool>`instr(item.search_text, ${word}) > 0`);
  return sql<SqlBool>`${sql.join(parts, sql` and `)}`;
}

/** What a lot is worth: its price by the part on hand, rounded half up, as shareMinor does. */
const lotValue = sql<number>`cast(round(cast(price_minor as real) * on_hand_milli / received_milli) as integer)`;

async function pageIds(
  queries: Kysely<Schema>,
  input: Asked,
  filter: Expression<SqlBool>,
): Promise<string[]> {
  const way = input.isDescending ? 'desc' : 'asc';
  let page = queries
    .selectFrom('item')
    .select('item.id')
    .where(filter)
    .limit(input.limit)
    .offset(input.offset);
  switch (input.sortBy) {
    case 'name':
      page = page.orderBy('name_key', way);
      break;
    case 'kind':
      page = page.orderBy(kindOrder, way);
      break;
    case 'place':
      page = page.orderBy(sql`place_key = ''`).orderBy('place_key', way);
      break;
    case 'onHand':
    case 'value': {
      const amount = input.sortBy === 'onHand' ? sql<number>`on_hand_milli` : lotValue;
      const sums = queries
        .selectFrom('lot')
        .innerJoin('lot_balance', 'lot_balance.lot_id', 'lot.id')
        .select(['lot.item_id', sql<number>`sum(${amount})`.as('amount')])
        .where('on_hand_milli', '>', 0)
        .groupBy('lot.item_id')
        .as('sums');
      page = page.leftJoin(sums, 'sums.item_id', 'item.id').orderBy(sql`coalesce(sums.amount, 0)`, way);
      break;
    }
    default:
      input.sortBy satisfies never;
  }
  const rows = await page.orderBy('name_key').orderBy('item.id').execute();
  return rows.map((row) => row.id);
}

/** In the order in which the kinds are listed everywhere. */
const kindOrder = sql<number>`case item.kind ${sql.join(
  itemKinds.map((kind, index) => sql`when ${sql.lit(kind)} then ${sql.lit(index)}`),
  sql` `,
)} end`;

async function rowsOf(queries: Kysely<Schema>, ids: readonly string[]): Promise<ItemRow[]> {
  if (ids.length === 0) return [];
  const items = await queries
    .selectFrom('item')
    .select(['id', 'kind', 'name', 'colour', 'place'])
    .where('id', 'in', ids)
    .execute();
  const lots = await queries
    .selectFrom('lot')
    .innerJoin('lot_balance', 'lot_balance.lot_id', 'lot.id')
    .select([
      'lot.item_id',
      sql<number>`sum(on_hand_milli)`.as('on_hand_milli'),
      sql<number>`sum(reserved_milli)`.as('reserved_milli'),
      sql<number>`sum(on_hand_milli > 0)`.as('lot_count'),
      sql<number>`sum(${lotValue})`.as('value_minor'),
    ])
    .where('lot.item_id', 'in', ids)
    .groupBy('lot.item_id')
    .execute();
  const lengths = await queries
    .selectFrom('lot')
    .innerJoin('length', 'length.lot_id', 'lot.id')
    .innerJoin('length_balance', 'length_balance.length_id', 'length.id')
    .select(['lot.item_id', sql<number>`count(*)`.as('length_count')])
    .where('lot.item_id', 'in', ids)
    .where('length_balance.on_hand_milli', '>', 0)
    .groupBy('lot.item_id')
    .execute();
  const itemById = new Map(items.map((item) => [item.id, item]));
  const lotsById = new Map(lots.map((row) => [row.item_id, row]));
  const lengthsById = new Map(lengths.map((row) => [row.item_id, row.length_count]));
  return ids.map((id) => {
    const sums = lotsById.get(id);
    return {
      ...itemById.get(id)!,
      onHand: fromMilli(sums?.on_hand_milli ?? 0),
      reserved: fromMilli(sums?.reserved_milli ?? 0),
      lotCount: sums?.lot_count ?? 0,
      lengthCount: lengthsById.get(id) ?? 0,
      valueMinor: sums?.value_minor ?? 0,
    };
  });
}
