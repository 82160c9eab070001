/** Undoing the last change of the stash: all of it, or nothing where what followed forbids it. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import type { Updateable } from 'kysely';
import type { Schema } from '../../database/schema/schema.ts';
import type { CallContext, Calls } from '../calls/call.ts';
import { inParts } from '../calls/in-parts.ts';
import { slices } from '../calls/in-slices.ts';
import { refreshSearchText } from './item-search.ts';
import { forgetLastChange, itemTexts, offerTexts, readLastChange, type RowChange } from './last-change.ts';
import { undoMovements } from './movement-undo.ts';
import { archiveItem } from './put-away.ts';

export const changeCalls = { readLastChange, undoLastChange } satisfies Calls<
  'readLastChange' | 'undoLastChange'
>;

/** More than a maker mends before trying again. */
const maxProblems = 40;

async function undoLastChange(
  context: CallContext,
  { changeId }: CallInput<'undoLastChange'>,
): Promise<Result<CallOutput<'undoLastChange'>>> {
  const change = await context.queries.selectFrom('last_change').selectAll().executeTakeFirst();
  if (change?.id !== changeId) {
    return err({
      where: say('undo.the-change'),
      what: say('undo.is-no-longer-the-last-one'),
      fix: say('undo.look-at-the-stash-as-it'),
    });
  }
  const problems: Problem[] = [
    ...(await undoMovements(context, { from: change.first_entry, to: change.last_entry })),
    ...(await undoOffers(context, JSON.parse(change.offers))),
    ...(await undoItems(context, JSON.parse(change.items))),
  ];
  if (problems.length > 0) return err(...problems.slice(0, maxProblems));
  await refreshLots(context, change.first_entry, change.last_entry);
  await forgetLastChange(context);
  return ok({ said: change.said });
}

/** What came in new is put away: a ledger of it is there and stays. */
async function undoItems(context: CallContext, changes: readonly RowChange[]): Promise<Problem[]> {
  const problems: Problem[] = [];
  const newItems = new Map<string, string>();
  const now = await itemTexts(
    context,
    changes.map(({ id }) => id),
  );
  const pause = slices();
  for (const { id: itemId, before, after } of changes) {
    await pause();
    const wasAfter = JSON.parse(after ?? '{}');
    if (now.get(itemId) !== after) {
      problems.push(changedSince(String(wasAfter.name)));
    } else if (before === null) {
      newItems.set(itemId, String(wasAfter.name));
    } else {
      problems.push(...(await bringBefore(context, itemId, JSON.parse(before), wasAfter.archived)));
    }
  }
  return [...problems, ...(await putNewAway(context, newItems))];
}

/** Their names by id. */
async function putNewAway(context: CallContext, names: ReadonlyMap<string, string>): Promise<Problem[]> {
  const problems: Problem[] = [];
  for (const ids of inParts([...names.keys()])) {
    const inUse = await context.queries
      .selectFrom('item_balance')
      .select('item_id')
      .where('item_id', 'in', ids)
      .where('on_hand_milli', '>', 0)
      .execute();
    for (const { item_id: itemId } of inUse) {
      const fix = say('undo.put-it-away-by-hand-if');
      problems.push({ where: names.get(itemId) ?? '', what: say('undo.has-come-in-since'), fix });
    }
    await context.queries.updateTable('item').set({ archived: 1 }).where('id', 'in', ids).execute();
  }
  return problems;
}

async function bringBefore(
  context: CallContext,
  itemId: string,
  before: Omit<Updateable<Schema['item']>, 'archived'> & { readonly archived: 0 | 1 },
  archivedNow: 0 | 1,
): Promise<Problem[]> {
  if (before.archived !== archivedNow) {
    const done = await archiveItem(context, { itemId, isPutAway: before.archived === 1 });
    return done.ok ? [] : [...done.problems];
  }
  await context.queries.updateTable('item').set(before).where('id', '=', itemId).execute();
  await refreshSearchText(context.queries, itemId);
  return [];
}

async function undoOffers(context: CallContext, changes: readonly RowChange[]): Promise<Problem[]> {
  const { queries } = context;
  const problems: Problem[] = [];
  const now = await offerTexts(
    context,
    changes.map(({ id }) => id),
  );
  for (const { id, before, after } of changes) {
    const row = before === null ? null : JSON.parse(before);
    if ((now.get(id) ?? null) !== after) {
      problems.push(
        changedSince(say('undo.the-offer-of', { supplier: (row ?? JSON.parse(after ?? '{}')).supplier })),
      );
    } else if (row === null) await queries.deleteFrom('offer').where('id', '=', id).execute();
    else if (after === null)
      await queries
        .insertInto('offer')
        .values({ ...row, id })
        .execute();
    else await queries.updateTable('offer').set(row).where('id', '=', id).execute();
  }
  return problems;
}

function changedSince(where: string): Problem {
  return { where, what: say('undo.was-changed-since'), fix: say('undo.open-it-again-and-change-it') };
}

/** A lot that is gone is no longer found by its supplier and dye lot; what is put away with it may be. */
async function refreshLots({ queries }: CallContext, from: number, to: number): Promise<void> {
  const rows = await queries
    .selectFrom('movement')
    .innerJoin('lot', 'lot.id', 'movement.lot_id')
    .select('lot.item_id')
    .distinct()
    .where('movement.entry', '>=', from)
    .where('movement.entry', '<=', to)
    .innerJoin('item', 'item.id', 'lot.item_id')
    .where('movement.kind', '=', 'received')
    .where('item.archived', '=', 0)
    .execute();
  const pause = slices();
  for (const { item_id: itemId } of rows) {
    await pause();
    await refreshSearchText(queries, itemId);
  }
}
