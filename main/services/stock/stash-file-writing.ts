/**
 * The changes of a stash file written down. What is new is written by the hundred, since SQLite takes longer to
 * understand a statement than to do it.
 */
import { say } from '../../../shared-core/wording/say.ts';
import type { Insertable } from 'kysely';
import type { NewLot, StashChange } from '../../../shared-core/exchange/stash-csv/stash-change.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';
import { searchText, sortKey } from '../../database/schema/search-text.ts';
import type { Schema } from '../../database/schema/schema.ts';
import type { CallContext } from '../calls/call.ts';
import { bookCount } from './counting.ts';
import { slices } from '../calls/in-slices.ts';
import { refreshSearchText } from './item-search.ts';
import { movementRow } from './ledger.ts';

const rowsAtOnce = 100;

/** Those that name booked things in their order; what is new in the order of the file, each thing before what is of it. */
export async function writeChanges(context: CallContext, changes: readonly StashChange[]): Promise<void> {
  const { queries } = context;
  const pause = slices();
  const newItems: Item[] = [];
  const newLots: NewLot[] = [];
  const touched = new Set<string>();
  for (const change of changes) {
    await pause();
    switch (change.kind) {
      case 'new item':
        newItems.push(change.item);
        break;
      case 'changed item':
        touched.add(change.item.id);
        await queries
          .updateTable('item')
          .set(itemColumns(change.item))
          .where('id', '=', change.item.id)
          .execute();
        break;
      case 'new lot':
        newLots.push(change.lot);
        break;
      case 'correction': {
        const { lotId, lengthId, fromMilli, toMilli, reason } = change;
        await bookCount(context, { lotId, lengthId, onHandMilli: fromMilli, countedMilli: toMilli, reason });
        break;
      }
      default:
        change satisfies never;
    }
  }
  const lotsOf = Map.groupBy(newLots, ({ itemId }) => itemId);
  await writeRows(context, 'item', newItems, (item) => [itemRow(item, lotsOf.get(item.id) ?? [])]);
  await writeRows(context, 'lot', newLots, (lot) => [lotRow(lot)]);
  await writeRows(context, 'length', newLots, lengthRows);
  await writeRows(context, 'movement', newLots, (lot) => movementRows(context, lot));
  const isNew = new Set<string>(newItems.map(({ id }) => id));
  for (const itemId of lotsOf.keys()) if (!isNew.has(itemId)) touched.add(itemId);
  for (const itemId of touched) {
    await pause();
    await refreshSearchText(queries, itemId);
  }
}

/** The rows of each source in turn. They are made as they are needed: thousands at once would hold others up. */
async function writeRows<Table extends 'item' | 'lot' | 'length' | 'movement', Source>(
  { queries }: CallContext,
  table: Table,
  sources: readonly Source[],
  rowsOf: (source: Source) => readonly Insertable<Schema[Table]>[],
): Promise<void> {
  const pause = slices();
  let rows: Insertable<Schema[Table]>[] = [];
  for (const [index, source] of sources.entries()) {
    rows = [...rows, ...rowsOf(source)];
    const isLast = index === sources.length - 1;
    while (rows.length >= rowsAtOnce || (isLast && rows.length > 0)) {
      await pause();
      await queries.insertInto(table).values(rows.slice(0, rowsAtOnce)).execute();
      rows = rows.slice(rowsAtOnce);
    }
  }
}

/** With the words that refreshSearchText would find it by. */
function itemRow(item: Item, lots: readonly NewLot[]) {
  const ofLots = new Map(lots.map(({ supplier, dyeLot }) => [`${supplier}\n${dyeLot}`, [supplier, dyeLot]]));
  const words = [item.name, item.colour, item.place, ...[...ofLots.values()].flat()];
  return { ...itemColumns(item), id: item.id, search_text: searchText(words) };
}

function itemColumns(item: Item) {
  const { kind, name, colour, place, notes } = item;
  return {
    kind,
    name,
    colour,
    place,
    notes,
    facts: JSON.stringify(item.facts),
    typed: JSON.stringify(item.typed),
    name_key: sortKey(name),
    place_key: sortKey(place),
  };
}

function lotRow(lot: NewLot) {
  return {
    id: lot.id,
    item_id: lot.itemId,
    received_on: lot.receivedOn,
    supplier: lot.supplier,
    dye_lot: lot.dyeLot,
    received_milli: lot.receivedMilli,
    price_minor: lot.priceMinor,
  };
}

function lengthRows(lot: NewLot) {
  return lot.lengths.map(({ id, widthMm, form, flaws, worthRatio = 1, isWashed }) => ({
    id,
    lot_id: lot.id,
    width_mm: widthMm,
    form,
    flaws: JSON.stringify(flaws),
    worth_ratio: worthRatio,
    is_washed: isWashed ? (1 as const) : (0 as const),
  }));
}

function movementRows(context: CallContext, lot: NewLot) {
  // What was used before it came into this file is in no ledger here.
  const reason = lot.receivedMilli > lot.amountMilli ? say('stash-file-writing.what-was-left-of-it-in') : '';
  let openMilli = lot.receivedMilli;
  const entered = (lengthId: string | null, amountMilli: number) => {
    const entry = { lotId: lot.id, lengthId };
    const receivedMilli = Math.min(amountMilli, openMilli);
    openMilli -= receivedMilli;
    const moreMilli = amountMilli - receivedMilli;
    return [
      ...(receivedMilli > 0
        ? [movementRow(context, { ...entry, kind: 'received', onHandMilli: receivedMilli, reason })]
        : []),
      ...(moreMilli > 0
        ? [movementRow(context, { ...entry, kind: 'corrected', onHandMilli: moreMilli, reason: lot.reason })]
        : []),
    ];
  };
  if (lot.lengths.length === 0) return entered(null, lot.amountMilli);
  return lot.lengths.flatMap(({ id, amountMilli }) => entered(id, amountMilli));
}
