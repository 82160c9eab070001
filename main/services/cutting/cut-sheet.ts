/** What a coat's cuttings cost by the ledger, and what its flow would have read before the first of them. */
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import { cutSheet } from '../../../shared-core/cost/cut-sheet.ts';
import { movementValues } from '../../../shared-core/cost/valuation.ts';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import { planOfCoats } from '../../../shared-core/plan/model/cut-plan.ts';
import { type Cutting, standing } from '../../../shared-core/stash/cutting.ts';
import { fromMilli, type ItemOnShelf } from '../../../shared-core/stash/stash.ts';
import type { Queries } from '../../database/store.ts';
import { readLedger } from '../stock/accounts.ts';
import type { CallContext, Calls } from '../calls/call.ts';
import { readCuttings } from './cutting-read.ts';
import { itemIdsFor } from '../plans/flow-input.ts';
import { noSuchPlan, readRevision } from '../plans/plans.ts';
import { readOffers, readShelves } from '../stock/shelf.ts';
import { readSuppliers } from '../purchasing/suppliers.ts';

export const cutSheetCalls = { readCutSheet } satisfies Calls<'readCutSheet'>;

async function readCutSheet(
  context: CallContext,
  { planId }: CallInput<'readCutSheet'>,
): Promise<Result<CallOutput<'readCutSheet'>>> {
  const { queries } = context;
  const plan = await queries.selectFrom('plan').select('id').where('id', '=', planId).executeTakeFirst();
  if (!plan) return err(noSuchPlan);
  const cuttings = [...standing(await readCuttings(queries, { planId }))].reverse();
  const lines = cuttings.flatMap(({ slots }) => slots.flatMap((slot) => slot.lines));
  const lotIds = [...new Set(lines.map(({ lotId }) => lotId))];
  const { lots, movements } = await readLedger(queries, lotIds);
  const values = movementValues(lots, movements);
  const byId = new Map(movements.map(({ id }, index) => [id, values[index] ?? 0]));
  const sheet = cutSheet(cuttings, lots, (movementId) => byId.get(movementId) ?? 0);
  return ok({ sheet, before: await beforeCutting(context, cuttings, sheet.coats) });
}

/** Plan, coats and shelf of the day before the first cutting; offers and suppliers as they are now. */
async function beforeCutting(
  context: CallContext,
  cuttings: readonly Cutting[],
  coats: Cutting['coats'],
): Promise<CallOutput<'readCutSheet'>['before']> {
  const { queries } = context;
  const [first] = cuttings;
  if (!first) return null;
  const revision = await readRevision(context, first.planId, first.revision);
  const plan = revision && planOfCoats(revision.plan, coats);
  if (!plan) return null;
  const { entry } = await queries
    .selectFrom('movement')
    .select(({ fn }) => fn.min<number>('entry').as('entry'))
    .where('cutting_id', '=', first.id)
    .executeTakeFirstOrThrow();
  const ids = await itemIdsFor(queries, [plan]);
  return {
    plan,
    shelf: await shelfBefore(queries, { itemIds: ids, entry, planId: first.planId }),
    offers: await readOffers(queries, ids),
    suppliers: await readSuppliers(queries),
  };
}

/**
 * The shelf by the movements before an entry, without cuttings that were taken back, then or since. What the plan
 * itself had set aside counts as free.
 */
async function shelfBefore(
  queries: Queries,
  { itemIds, entry, planId }: { itemIds: readonly string[]; entry: number; planId: string },
): Promise<ItemOnShelf[]> {
  const shelves = await readShelves(queries, itemIds, 'all');
  const undone = await queries
    .selectFrom('cutting')
    .select(['id', 'undoes'])
    .where('undoes', 'is not', null)
    .execute();
  const takenBack = undone.flatMap(({ id, undoes }) => [id, undoes as string]);
  const rows = await queries
    .selectFrom('movement')
    .select(['lot_id', 'length_id', 'plan_id'])
    .select(({ fn }) => [
      fn.sum<number>('on_hand_milli').as('onHand'),
      fn.sum<number>('reserved_milli').as('reserved'),
    ])
    .where('entry', '<', entry)
    .where(({ or, eb }) => or([eb('cutting_id', 'is', null), eb('cutting_id', 'not in', takenBack)]))
    .groupBy(['lot_id', 'length_id', 'plan_id'])
    .execute();
  const onHand = new Map<string, number>();
  const reserved = new Map<string, number>();
  for (const row of rows) {
    for (const key of [row.lot_id, ...(row.length_id === null ? [] : [row.length_id])]) {
      onHand.set(key, (onHand.get(key) ?? 0) + row.onHand);
      if (row.plan_id !== planId) reserved.set(key, (reserved.get(key) ?? 0) + row.reserved);
    }
  }
  const amount = (of: Map<string, number>, key: string) => fromMilli(of.get(key) ?? 0);
  return shelves.map(({ item, lots }) => ({
    item,
    lots: lots
      .filter((lot) => (onHand.get(lot.id) ?? 0) > 0)
      .map((lot) => ({
        ...lot,
        onHand: amount(onHand, lot.id),
        reserved: amount(reserved, lot.id),
        lengths: lot.lengths
          .filter((length) => (onHand.get(length.id) ?? 0) > 0)
          .map((length) => ({
            ...length,
            onHandMm: amount(onHand, length.id),
            reservedMm: amount(reserved, length.id),
          })),
      })),
  }));
}
