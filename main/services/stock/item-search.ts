/** The text that an item is found by: its own words and those of all its lots. */
import type { Queries } from '../../database/store.ts';
import { searchText } from '../../database/schema/search-text.ts';
import { lotStands } from '../../database/schema/query-parts.ts';

/** Writes it anew; to be called after each change of an item or of its lots, in the same transaction. */
export async function refreshSearchText(queries: Queries, itemId: string): Promise<void> {
  const item = await queries
    .selectFrom('item')
    .select(['name', 'colour', 'place'])
    .where('id', '=', itemId)
    .executeTakeFirstOrThrow();
  const lots = await queries
    .selectFrom('lot')
    .select(['supplier', 'dye_lot'])
    .where('item_id', '=', itemId)
    .where(lotStands())
    .distinct()
    .execute();
  const fields = [item.name, item.colour, item.place, ...lots.flatMap((lot) => [lot.supplier, lot.dye_lot])];
  await queries
    .updateTable('item')
    .set({ search_text: searchText(fields) })
    .where('id', '=', itemId)
    .execute();
}
