/** The stash as a file: saved, looked at before anything is written, and brought in whole or not at all. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import type { StashFileChanges } from '../../../shared-core/contract/stash-file-calls.ts';
import type { StashChange } from '../../../shared-core/exchange/stash-csv/stash-change.ts';
import { stashChangeText } from '../../../shared-core/exchange/stash-csv/stash-change-words.ts';
import { stashSteps } from '../../../shared-core/exchange/stash-csv/stash-read.ts';
import { writeStash } from '../../../shared-core/exchange/stash-csv/stash-write.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { fromMilli, type Item } from '../../../shared-core/stash/stash.ts';
import { type CallContext, type Calls, newId } from '../calls/call.ts';
import { inSlices, slices } from '../calls/in-slices.ts';
import { fileWords } from './change-words.ts';
import { keepingChange } from './last-change.ts';
import { amountProblem } from './ledger.ts';
import { readSettings } from '../workshop/settings.ts';
import { readShelves } from './shelf.ts';
import { writeChanges } from './stash-file-writing.ts';

export const stashFileCalls = { stashFile, lookAtStashFile, bringInStashFile } satisfies Calls<
  'stashFile' | 'lookAtStashFile' | 'bringInStashFile'
>;

/** More than a maker reads before saying yes; the rest is counted. */
const maxShown = 300;

async function stashFile(context: CallContext): Promise<Result<{ text: string }>> {
  const { currency } = await readSettings(context.queries);
  return ok({ text: writeStash(await liveShelves(context), currency) });
}

async function lookAtStashFile(
  context: CallContext,
  input: CallInput<'lookAtStashFile'>,
): Promise<Result<StashFileChanges>> {
  const read = await changesOf(context, input.text);
  return read.ok ? ok(read.value.shown) : read;
}

async function bringInStashFile(
  context: CallContext,
  input: CallInput<'bringInStashFile'>,
): Promise<Result<StashFileChanges>> {
  const read = await changesOf(context, input.text);
  if (!read.ok) return read;
  const { changes, shown } = read.value;
  const ofKind = (kind: 'new item' | 'changed item') =>
    changes.flatMap((change) => (change.kind === kind && 'item' in change ? [change.item.id] : []));
  return keepingChange(
    context,
    { itemIds: ofKind('changed item') },
    async () => {
      await writeChanges(context, changes);
      return ok(shown);
    },
    () => ({ itemIds: ofKind('new item'), said: fileWords(shown) }),
  );
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
): Promise<Result<{ changes: readonly StashChange[]; shown: StashFileChanges }>> {
  const { currency, system } = await readSettings(context.queries);
  const shelves = await liveShelves(context);
  const read = await inSlices(
    stashSteps(text, { shelves, archivedIds: await archivedIds(context), currency, newId }),
  );
  if (!read.ok) return read;
  const { changes, lineCount } = read.value;
  const items = new Map<string, Item>(shelves.map(({ item }) => [item.id, item]));
  const owners = new Map(
    shelves.flatMap(({ item, lots }) => lots.map((lot) => [lot.id as string, item.id] as const)),
  );
  for (const change of changes) if ('item' in change) items.set(change.item.id, change.item);
  const problems: Problem[] = [];
  const pause = slices();
  for (const change of changes) {
    await pause();
    const itemId =
      change.kind === 'new lot' ? change.lot.itemId : 'lotId' in change ? owners.get(change.lotId) : '';
    const item = items.get(itemId ?? '');
    if (item) problems.push(...countProblems(change, item));
  }
  if (problems.length > 0) return err(...problems.slice(0, 40));
  return ok({ changes, shown: shownChanges(changes, lineCount, system) });
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
  const problem =
    amountMilli === 0 ? null : amountProblem(counted, fromMilli(amountMilli), say('stash-file.the-amount'));
  return problem
    ? [{ ...problem, where: say('stash-file.line', { line: change.line, where: problem.where }) }]
    : [];
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
    changes: changes.slice(0, maxShown).map((change) => ({
      line: change.line,
      kind: change.kind,
      itemName: change.itemName,
      text: stashChangeText(change, system),
    })),
  };
}
