/** The calls about items, their lots and the ledger. */
import { nounInSentence } from '../../../shared-core/wording/in-sentence.ts';
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { emptyFacts, factProblems, kindRecords } from '../../../shared-core/stash/kinds.ts';
import type { ItemId } from '../../../shared-core/stash/stash.ts';
import { sortKey } from '../../database/schema/search-text.ts';
import { type CallContext, type Calls, newId } from '../calls/call.ts';
import { isNameTaken } from './item-names.ts';
import { refreshSearchText } from './item-search.ts';
import { atPlaceWords, putAwayWords, receivedWords, takenStockWords } from './change-words.ts';
import { correctCount, takeStock } from './counting.ts';
import { keepingChange } from './last-change.ts';
import { movementOf, noSuchItem, writeOff } from './ledger.ts';
import { receiveLot, receivingProblems } from './receiving.ts';
import { archiveItem, isPutAway } from './put-away.ts';
import { setAsideOfItem } from '../cutting/set-aside.ts';
import { readOffers, readShelves } from './shelf.ts';
import { listItems } from './stash-list.ts';

export const stashCalls = {
  listItems,
  readItem,
  saveItem: (context, input) =>
    keepingChange(
      context,
      { itemIds: input.itemId === null ? [] : [input.itemId] },
      () => saveItem(context, input),
      ({ itemId }) => ({
        itemIds: [itemId],
        said: `${input.itemId === null ? say('stash.added') : say('stash.changed')} ${input.name}`,
      }),
    ),
  receiveLot: (context, input) =>
    keepingChange(
      context,
      {},
      () => receiveLot(context, input),
      async () => ({ said: await receivedWords(context, input) }),
    ),
  writeOff: (context, input) =>
    keepingChange(
      context,
      {},
      () => writeOff(context, input),
      async () => ({ said: await atPlaceWords(context, 'wrote off', input) }),
    ),
  correctCount: (context, input) =>
    keepingChange(
      context,
      {},
      () => correctCount(context, input),
      async () => ({ said: await atPlaceWords(context, 'counted', { ...input, amount: input.counted }) }),
    ),
  takeStock: (context, input) =>
    keepingChange(
      context,
      {},
      () => takeStock(context, input),
      (taken) => ({ said: takenStockWords(taken) }),
    ),
  archiveItem: (context, input) =>
    keepingChange(
      context,
      { itemIds: [input.itemId] },
      () => archiveItem(context, input),
      async () => ({ said: await putAwayWords(context, input) }),
    ),
  readShelf: async ({ queries }, { itemIds }) =>
    ok({ shelves: await readShelves(queries, itemIds, 'on hand') }),
} satisfies Calls<
  | 'listItems'
  | 'readItem'
  | 'saveItem'
  | 'receiveLot'
  | 'writeOff'
  | 'correctCount'
  | 'takeStock'
  | 'archiveItem'
  | 'readShelf'
>;

/** The item with every lot it ever had, its ledger newest first, and its offers. */
async function readItem(
  context: CallContext,
  input: CallInput<'readItem'>,
): Promise<Result<CallOutput<'readItem'>>> {
  const { queries } = context;
  const [shelf] = await readShelves(queries, [input.itemId], 'all');
  if (!shelf) return err(noSuchItem);
  const rows = await queries
    .selectFrom('lot')
    .innerJoin('movement', 'movement.lot_id', 'lot.id')
    .selectAll('movement')
    .where('lot.item_id', '=', input.itemId)
    .orderBy('movement.entry', 'desc')
    .execute();
  return ok({
    shelf,
    movements: rows.map(movementOf),
    offers: await readOffers(queries, [input.itemId]),
    isPutAway: await isPutAway(queries, input.itemId),
    setAside: await setAsideOfItem(queries, input.itemId),
  });
}

async function saveItem(
  context: CallContext,
  input: CallInput<'saveItem'>,
): Promise<Result<{ itemId: ItemId }>> {
  const { queries } = context;
  const before =
    input.itemId === null
      ? null
      : await queries
          .selectFrom('item')
          .select(['id', 'kind', 'name'])
          .where('id', '=', input.itemId)
          .where('archived', '=', 0)
          .executeTakeFirst();
  if (before === undefined) return err(noSuchItem);
  const problems: Problem[] = factProblems(input.kind, input.facts, input.name);
  if (before && before.kind !== input.kind) {
    problems.push({
      where: say('stash.kind-of', { beforeName: before.name }),
      what: say('stash.is-and-cannot-be-changed', {
        kindRecordsLabel: nounInSentence(kindRecords[before.kind].label),
      }),
      fix: say('stash.make-a-new-item-of-the'),
    });
  }
  if (await isNameTaken(queries, input)) {
    const colour = input.colour.trim() === '' ? '' : ` ${say('stash.in', { colour: input.colour.trim() })}`;
    problems.push({
      where: say('stash.name', { inputName: input.name }),
      what: say('stash.is-already-that-of-another', {
        kindRecordsLabel: nounInSentence(kindRecords[input.kind].label),
        colour,
      }),
      fix: say('stash.give-it-another-name-or-colour'),
    });
  }
  const { firstLot } = input;
  if (firstLot && before) {
    problems.push({
      where: say('stash.first-purchase-of', { beforeName: before.name }),
      what: say('stash.is-given-though-the-item-is'),
      fix: say('stash.save-the-item-without-it-and'),
    });
  } else if (firstLot) {
    const item = { kind: input.kind, name: input.name, facts: JSON.stringify(input.facts) };
    problems.push(...receivingProblems(item, firstLot));
  }
  if (problems.length > 0) return err(...problems);
  const itemId: ItemId = input.itemId ?? newId();
  const row = {
    kind: input.kind,
    name: input.name,
    colour: input.colour,
    place: input.place,
    notes: input.notes,
    facts: JSON.stringify({ ...emptyFacts(input.kind), ...input.facts }),
    typed: JSON.stringify(input.typed),
    name_key: sortKey(input.name),
    place_key: sortKey(input.place),
  };
  if (before) await queries.updateTable('item').set(row).where('id', '=', itemId).execute();
  else
    await queries
      .insertInto('item')
      .values({ ...row, id: itemId, search_text: '' })
      .execute();
  await refreshSearchText(queries, itemId);
  if (firstLot) {
    const received = await receiveLot(context, { ...firstLot, itemId });
    if (!received.ok) return received;
  }
  return ok({ itemId });
}
