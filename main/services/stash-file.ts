/** The stash as a file: saved, looked at before anything is written, and brought in whole or not at all. */
import type { CallInput } from '../../shared-core/contract/contract.ts';
import type { StashFileChanges } from '../../shared-core/contract/stash-file-calls.ts';
import type { StashChange } from '../../shared-core/exchange/stash-change.ts';
import { stashChangeText } from '../../shared-core/exchange/stash-change-words.ts';
import { readStash } from '../../shared-core/exchange/stash-read.ts';
import { writeStash } from '../../shared-core/exchange/stash-write.ts';
import type { MeasureSystem } from '../../shared-core/measure/quantity.ts';
import { found, type Outcome, type Problem, refused } from '../../shared-core/measure/problem.ts';
import { fromMilli, type Item } from '../../shared-core/stash/stash.ts';
import { sortKey } from '../database/search-text.ts';
import { type CallContext, type Calls, newId } from './call.ts';
import { refreshSearchText } from './item-search.ts';
import { bookCount } from './counting.ts';
import { addMovement, amountProblem } from './ledger.ts';
import { readSettings } from './settings.ts';
import { readShelves } from './shelf.ts';

export const stashFileCalls = { stashFile, lookAtStashFile, bringInStashFile } satisfies Calls<
  'stashFile' | 'lookAtStashFile' | 'bringInStashFile'
>;

/** More than a maker reads before saying yes; the rest is counted. */
const mostShown = 300;

async function stashFile(context: CallContext): Promise<Outcome<{ text: string }>> {
  const { currency } = await readSettings(context.queries);
  return found({ text: writeStash(await liveShelves(context), currency) });
}

async function lookAtStashFile(
  context: CallContext,
  input: CallInput<'lookAtStashFile'>,
): Promise<Outcome<StashFileChanges>> {
  const read = await changesOf(context, input.text);
  return read.ok ? found(read.value.shown) : read;
}

async function bringInStashFile(
  context: CallContext,
  input: CallInput<'bringInStashFile'>,
): Promise<Outcome<StashFileChanges>> {
  const read = await changesOf(context, input.text);
  if (!read.ok) return read;
  const touched = new Set<string>();
  for (const change of read.value.changes) touched.add(await write(context, change));
  for (const itemId of touched) if (itemId !== '') await refreshSearchText(context.queries, itemId);
  return found(read.value.shown);
}

async function liveShelves({ queries }: CallContext) {
  const rows = await queries
    .selectFrom('item')
    .select('id')
    .where('archived', '=', 0)
    .orderBy('name_key')
    .orderBy('id')
    .execute();
  return readShelves(
    queries,
    rows.map((row) => row.id),
    'all',
  );
}

async function changesOf(
  context: CallContext,
  text: string,
): Promise<Outcome<{ changes: readonly StashChange[]; shown: StashFileChanges }>> {
  const { currency, system } = await readSettings(context.queries);
  const shelves = await liveShelves(context);
  const read = readStash(text, {
    shelves,
    archivedIds: await archivedIds(context),
    currency,
    newId,
  });
  if (!read.ok) return read;
  const { changes, lineCount } = read.value;
  const items = new Map<string, Item>(shelves.map(({ item }) => [item.id, item]));
  const owners = new Map(
    shelves.flatMap(({ item, lots }) => lots.map((lot) => [lot.id as string, item.id] as const)),
  );
  for (const change of changes) if ('item' in change) items.set(change.item.id, change.item);
  const problems = changes.flatMap((change) => {
    const itemId =
      change.kind === 'new lot' ? change.lot.itemId : 'lotId' in change ? owners.get(change.lotId) : '';
    const item = items.get(itemId ?? '');
    return item ? countProblems(change, item) : [];
  });
  if (problems.length > 0) return refused(...problems.slice(0, 40));
  return found({ changes, shown: shownChanges(changes, lineCount, system) });
}

/** Of archived items, of their lots and of their lengths. */
async function archivedIds({ queries }: CallContext): Promise<ReadonlySet<string>> {
  const archived = queries.selectFrom('item').where('archived', '=', 1);
  const lots = archived.innerJoin('lot', 'lot.item_id', 'item.id');
  const rows = [
    ...(await archived.select('id').execute()),
    ...(await lots.select('lot.id').execute()),
    ...(await lots.innerJoin('length', 'length.lot_id', 'lot.id').select('length.id').execute()),
  ];
  return new Set(rows.map((row) => row.id));
}

/** Things that come one by one are counted whole, as everywhere. */
function countProblems(change: StashChange, item: Item): Problem[] {
  const counted = { kind: item.kind, name: item.name, facts: JSON.stringify(item.facts) };
  const amountMilli =
    change.kind === 'new lot' ? change.lot.amountMilli : change.kind === 'correction' ? change.toMilli : 0;
  const problem = amountMilli === 0 ? null : amountProblem(counted, fromMilli(amountMilli), 'the amount');
  return problem ? [{ ...problem, where: `Line ${change.line}, ${problem.where}` }] : [];
}

function shownChanges(
  changes: readonly StashChange[],
  lineCount: number,
  system: MeasureSystem,
): StashFileChanges {
  const count = (kind: StashChange['kind']) => changes.filter((change) => change.kind === kind).length;
  return {
    lineCount,
    newItemCount: count('new item'),
    changedItemCount: count('changed item'),
    newLotCount: count('new lot'),
    correctionCount: count('correction'),
    changes: changes.slice(0, mostShown).map((change) => ({
      line: change.line,
      kind: change.kind,
      itemName: change.itemName,
      text: stashChangeText(change, system),
    })),
  };
}

/** Gives the item that must be found by new words, '' where there is none. */
async function write(context: CallContext, change: StashChange): Promise<string> {
  const { queries } = context;
  switch (change.kind) {
    case 'new item':
      await queries
        .insertInto('item')
        .values({ ...itemColumns(change.item), id: change.item.id, search_text: '' })
        .execute();
      return change.item.id;
    case 'changed item':
      await queries
        .updateTable('item')
        .set(itemColumns(change.item))
        .where('id', '=', change.item.id)
        .execute();
      return change.item.id;
    case 'new lot':
      await writeLot(context, change.lot);
      return change.lot.itemId;
    case 'correction': {
      const { lotId, lengthId, fromMilli, toMilli, reason } = change;
      await bookCount(context, { lotId, lengthId, onHandMilli: fromMilli, countedMilli: toMilli, reason });
      return '';
    }
    default:
      return change satisfies never;
  }
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

async function writeLot(
  context: CallContext,
  lot: Extract<StashChange, { kind: 'new lot' }>['lot'],
): Promise<void> {
  const { queries } = context;
  await queries
    .insertInto('lot')
    .values({
      id: lot.id,
      item_id: lot.itemId,
      received_on: lot.receivedOn,
      supplier: lot.supplier,
      dye_lot: lot.dyeLot,
      received_milli: lot.receivedMilli,
      price_minor: lot.priceMinor,
    })
    .execute();
  // What was used before it came into this file is in no ledger here.
  const reason = lot.receivedMilli > lot.amountMilli ? 'what was left of it in the file' : '';
  let openMilli = lot.receivedMilli;
  const enter = async (lengthId: string | null, amountMilli: number) => {
    const entry = { lotId: lot.id, lengthId };
    const receivedMilli = Math.min(amountMilli, openMilli);
    openMilli -= receivedMilli;
    if (receivedMilli > 0)
      await addMovement(context, { ...entry, kind: 'received', onHandMilli: receivedMilli, reason });
    const moreMilli = amountMilli - receivedMilli;
    if (moreMilli > 0)
      await addMovement(context, { ...entry, kind: 'corrected', onHandMilli: moreMilli, reason: lot.reason });
  };
  if (lot.lengths.length === 0) await enter(null, lot.amountMilli);
  for (const { id, widthMm, form, flaws, worthRatio = 1, amountMilli } of lot.lengths) {
    const row = { id, lot_id: lot.id, width_mm: widthMm, form, flaws: JSON.stringify(flaws) };
    await queries
      .insertInto('length')
      .values({ ...row, worth_ratio: worthRatio })
      .execute();
    await enter(id, amountMilli);
  }
}
