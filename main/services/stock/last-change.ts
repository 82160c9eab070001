/**
 * The last change of the stash, kept with what it takes to undo it: the movements that it booked, and the items and
 * offers as they were before and after. A change that changed nothing leaves the one before it in place.
 */
import type { CallOutput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result } from '../../../shared-core/measure/problem.ts';
import { type CallContext, newId } from '../calls/call.ts';
import { inParts } from '../calls/in-parts.ts';

/** What a change is about. An id of what is not there yet, or no longer, may stand among them. */
export interface Touched {
  readonly itemIds?: readonly string[];
  readonly offerIds?: readonly string[];
}

export interface Told extends Touched {
  /** A sentence without its full stop. */
  readonly said: string;
}

/** A row as text, so that two can be compared; null: it was not there. */
export interface RowChange {
  readonly id: string;
  readonly before: string | null;
  readonly after: string | null;
}

/** All that a maker can change of an item, and whether it is put away. */
export const itemColumns = [
  'kind',
  'name',
  'colour',
  'place',
  'notes',
  'facts',
  'typed',
  'name_key',
  'place_key',
  'archived',
] as const;

export const offerColumns = [
  'item_id',
  'supplier',
  'unit',
  'price_minor',
  'priced_on',
  'breaks',
  'least_count',
] as const;

/** Rows by id, as text. */
export function itemTexts({ queries }: CallContext, ids: readonly string[]) {
  return rowTexts(ids, (part) =>
    queries
      .selectFrom('item')
      .select(['id', ...itemColumns])
      .where('id', 'in', part)
      .execute(),
  );
}

export function offerTexts({ queries }: CallContext, ids: readonly string[]) {
  return rowTexts(ids, (part) =>
    queries
      .selectFrom('offer')
      .select(['id', ...offerColumns])
      .where('id', 'in', part)
      .execute(),
  );
}

async function rowTexts(
  ids: readonly string[],
  read: (part: string[]) => Promise<readonly { readonly id: string }[]>,
): Promise<Map<string, string>> {
  const texts = new Map<string, string>();
  for (const part of inParts(ids)) {
    for (const { id, ...row } of await read(part)) texts.set(id, JSON.stringify(row));
  }
  return texts;
}

/**
 * Runs a change and keeps it as the last one. touches: what it may change of what is there; tell: what it did, with the
 * ids of what it made. Refused, it leaves everything as it was.
 */
export async function keepingChange<Value>(
  context: CallContext,
  touches: Touched,
  change: () => Promise<Result<Value>>,
  tell: (value: Value) => Told | Promise<Told>,
): Promise<Result<Value>> {
  const itemsBefore = await itemTexts(context, touches.itemIds ?? []);
  const offersBefore = await offerTexts(context, touches.offerIds ?? []);
  const firstEntry = (await lastEntryOf(context)) + 1;
  const outcome = await change();
  if (!outcome.ok) return outcome;
  const told = await tell(outcome.value);
  const itemIds = [...new Set([...(touches.itemIds ?? []), ...(told.itemIds ?? [])])];
  const offerIds = [...new Set([...(touches.offerIds ?? []), ...(told.offerIds ?? [])])];
  const items = rowChanges(itemIds, itemsBefore, await itemTexts(context, itemIds));
  const offers = rowChanges(offerIds, offersBefore, await offerTexts(context, offerIds));
  const lastEntry = await lastEntryOf(context);
  if (lastEntry < firstEntry && items.length === 0 && offers.length === 0) return outcome;
  await forgetLastChange(context);
  await context.queries
    .insertInto('last_change')
    .values({
      only_row: 1,
      id: newId(),
      said: told.said,
      first_entry: firstEntry,
      last_entry: lastEntry,
      items: JSON.stringify(items),
      offers: JSON.stringify(offers),
    })
    .execute();
  return outcome;
}

function rowChanges(
  ids: readonly string[],
  before: ReadonlyMap<string, string>,
  after: ReadonlyMap<string, string>,
): RowChange[] {
  return ids
    .map((id) => ({ id, before: before.get(id) ?? null, after: after.get(id) ?? null }))
    .filter((change) => change.before !== change.after);
}

async function lastEntryOf({ queries }: CallContext): Promise<number> {
  const row = await queries
    .selectFrom('movement')
    .select(({ fn }) => fn.max<number | null>('entry').as('entry'))
    .executeTakeFirst();
  return row?.entry ?? 0;
}

export async function forgetLastChange({ queries }: CallContext): Promise<void> {
  await queries.deleteFrom('last_change').execute();
}

export async function readLastChange({
  queries,
}: CallContext): Promise<Result<CallOutput<'readLastChange'>>> {
  const change = await queries.selectFrom('last_change').select(['id', 'said']).executeTakeFirst();
  return ok({ change: change ?? null });
}
