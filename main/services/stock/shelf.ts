/** Rows of items, lots and lengths as the shelf that shared-core reads. */
import type { Offer } from '../../../shared-core/stash/offer.ts';
import {
  fromMilli,
  type Item,
  type ItemOnShelf,
  type LengthOnShelf,
  type LotOnShelf,
} from '../../../shared-core/stash/stash.ts';
import type { Schema } from '../../database/schema/schema.ts';
import type { Queries } from '../../database/store.ts';
import { inParts } from '../calls/in-parts.ts';
import { slices } from '../calls/in-slices.ts';
import { supplierSpelling } from '../purchasing/suppliers.ts';
import { lotStands } from '../../database/schema/query-parts.ts';

/**
 * The shelf of each item, in the order of the ids; ids that are no item are left out.
 *
 * 'all' gives every lot and length there ever was but those whose receipt was undone, 'on hand' only those with something on hand or reserved.
 * Lots stand oldest first, lengths in the order they came in.
 */
export async function readShelves(
  queries: Queries,
  itemIds: readonly string[],
  which: 'all' | 'on hand',
): Promise<ItemOnShelf[]> {
  const items: Item[] = [];
  const lots = new Map<string, LotOnShelf[]>();
  const pause = slices();
  for (const ids of inParts(itemIds)) {
    await pause();
    const rows = await queries
      .selectFrom('item')
      .select(['id', 'kind', 'name', 'colour', 'place', 'notes', 'facts', 'typed'])
      .where('id', 'in', ids)
      .execute();
    items.push(...rows.map(itemFromRow));
    const lengths = await readLengths(queries, ids, which);
    let lotRows = queries
      .selectFrom('lot')
      .innerJoin('lot_balance', 'lot_balance.lot_id', 'lot.id')
      .selectAll(['lot', 'lot_balance'])
      .where('lot.item_id', 'in', ids)
      .where(lotStands())
      .orderBy('lot.item_id')
      .orderBy('lot.received_on')
      .orderBy('lot.entry');
    if (which === 'on hand')
      lotRows = lotRows.where(({ or, eb }) =>
        or([eb('on_hand_milli', '>', 0), eb('reserved_milli', '>', 0)]),
      );
    for (const row of await lotRows.execute()) {
      append(lots, row.item_id, {
        id: row.id,
        itemId: row.item_id,
        receivedOn: row.received_on,
        supplier: row.supplier,
        dyeLot: row.dye_lot,
        receivedMilli: row.received_milli,
        priceMinor: row.price_minor,
        onHand: fromMilli(row.on_hand_milli),
        reserved: fromMilli(row.reserved_milli),
        lengths: lengths.get(row.id) ?? [],
      });
    }
  }
  const byId = new Map(items.map((item) => [item.id, item]));
  return itemIds.flatMap((id) => {
    const item = byId.get(id);
    return item ? [{ item, lots: lots.get(id) ?? [] }] : [];
  });
}

async function readLengths(
  queries: Queries,
  itemIds: readonly string[],
  which: 'all' | 'on hand',
): Promise<Map<string, LengthOnShelf[]>> {
  let query = queries
    .selectFrom('lot')
    .innerJoin('length', 'length.lot_id', 'lot.id')
    .innerJoin('length_balance', 'length_balance.length_id', 'length.id')
    .selectAll(['length', 'length_balance'])
    .where('lot.item_id', 'in', itemIds)
    .orderBy('length.lot_id')
    .orderBy('length.entry');
  if (which === 'on hand')
    query = query.where(({ or, eb }) => or([eb('on_hand_milli', '>', 0), eb('reserved_milli', '>', 0)]));
  const lengths = new Map<string, LengthOnShelf[]>();
  for (const row of await query.execute()) {
    append(lengths, row.lot_id, {
      id: row.id,
      lotId: row.lot_id,
      widthMm: row.width_mm,
      flaws: JSON.parse(row.flaws),
      form: row.form,
      ...(row.worth_ratio === 1 ? {} : { worthRatio: row.worth_ratio }),
      ...(row.is_washed === 1 && { isWashed: true }),
      onHandMm: fromMilli(row.on_hand_milli),
      reservedMm: fromMilli(row.reserved_milli),
    });
  }
  return lengths;
}

/** Offers of the items, by item and supplier; one supplier is written one way in all of them. */
export async function readOffers(queries: Queries, itemIds: readonly string[]): Promise<Offer[]> {
  const offers: Offer[] = [];
  const spelling = await supplierSpelling(queries);
  const pause = slices();
  for (const ids of inParts(itemIds)) {
    await pause();
    const rows = await queries
      .selectFrom('offer')
      .selectAll()
      .where('item_id', 'in', ids)
      .orderBy('item_id')
      .orderBy('supplier')
      .orderBy('id')
      .execute();
    for (const row of rows) {
      offers.push({
        id: row.id,
        itemId: row.item_id,
        supplier: spelling(row.supplier),
        unit: JSON.parse(row.unit),
        priceMinor: row.price_minor,
        pricedOn: row.priced_on,
        ...(row.breaks !== '[]' && { breaks: JSON.parse(row.breaks) }),
        ...(row.least_count > 1 && { leastCount: row.least_count }),
      });
    }
  }
  return offers;
}

type ItemRow = Omit<Schema['item'], 'archived' | 'name_key' | 'place_key' | 'search_text'>;

/** Facts were validated by kind when they were saved. */
function itemFromRow(row: ItemRow): Item {
  const { id, kind, name, colour, place, notes } = row;
  return {
    id,
    kind,
    name,
    colour,
    place,
    notes,
    facts: JSON.parse(row.facts),
    typed: JSON.parse(row.typed),
  } as Item;
}

function append<Value>(map: Map<string, Value[]>, key: string, value: Value): void {
  const values = map.get(key);
  if (values) values.push(value);
  else map.set(key, [value]);
}
