/** The stash as a list: searched, sorted and cut to a window. */
import type { Expression, ExpressionBuilder, SqlBool } from 'kysely';
import type { CallInput, ItemRow } from '../../../shared-core/contract/contract.ts';
import { ok, type Result } from '../../../shared-core/measure/problem.ts';
import { fromMilli } from '../../../shared-core/stash/stash.ts';
import type { Schema } from '../../database/schema/schema.ts';
import type { Queries } from '../../database/store.ts';
import { isFoundBy, kindOrder } from '../../database/schema/query-parts.ts';
import { searchWords } from '../../database/schema/search-text.ts';
import type { CallContext } from '../calls/call.ts';

type Asked = CallInput<'listItems'>;

/**
 * Every word of the search must stand in the item's name, colour or place, or in a supplier or dye lot of it.
 * An empty list of kinds is all kinds. Items without a place come last. Lots and lengths are counted where
 * something is on hand.
 */
export async function listItems(
  context: CallContext,
  input: Asked,
): Promise<Result<{ rows: readonly ItemRow[]; total: number }>> {
  const ids = await sortedIds(context.queries, input);
  const page = ids.slice(input.offset, input.offset + input.limit);
  return ok({ rows: await rowsOf(context.queries, page), total: ids.length });
}

/** All that is found: the count is needed in any case, and one pass gives both. */
async function sortedIds(queries: Queries, input: Asked): Promise<string[]> {
  const way = input.isDescending ? 'desc' : 'asc';
  let query = queries
    .selectFrom('item')
    .innerJoin('item_balance', 'item_balance.item_id', 'item.id')
    .select('item.id')
    .where((eb) => filterOf(eb, input));
  switch (input.sortBy) {
    case 'name':
      query = query.orderBy('name_key', way);
      break;
    case 'kind':
      query = query.orderBy(kindOrder(), way);
      break;
    case 'place':
      query = query.orderBy(({ eb }) => eb('place_key', '=', '')).orderBy('place_key', way);
      break;
    case 'onHand':
      query = query.orderBy('on_hand_milli', way);
      break;
    case 'value':
      query = query.orderBy('value_minor', way);
      break;
    default:
      input.sortBy satisfies never;
  }
  const rows = await query.orderBy('name_key').orderBy('item.id').execute();
  return rows.map((row) => row.id);
}

function filterOf(eb: ExpressionBuilder<Schema, 'item'>, input: Asked): Expression<SqlBool> {
  return eb.and([
    eb('item.archived', '=', input.isPutAway ? 1 : 0),
    ...(input.kinds.length > 0 ? [eb('item.kind', 'in', input.kinds)] : []),
    ...searchWords(input.search).map(isFoundBy),
  ]);
}

async function rowsOf(queries: Queries, ids: readonly string[]): Promise<ItemRow[]> {
  if (ids.length === 0) return [];
  const rows = await queries
    .selectFrom('item')
    .innerJoin('item_balance', 'item_balance.item_id', 'item.id')
    .select(['id', 'kind', 'name', 'colour', 'place'])
    .select(['on_hand_milli', 'reserved_milli', 'lot_count', 'length_count', 'value_minor'])
    .where('id', 'in', ids)
    .execute();
  const byId = new Map(rows.map((row) => [row.id, row]));
  return ids.map((id) => {
    const row = byId.get(id)!;
    return {
      id,
      kind: row.kind,
      name: row.name,
      colour: row.colour,
      place: row.place,
      onHand: fromMilli(row.on_hand_milli),
      reserved: fromMilli(row.reserved_milli),
      lotCount: row.lot_count,
      lengthCount: row.length_count,
      valueMinor: row.value_minor,
    };
  });
}
