/** What coats keep others from using: reservations by plan, as sums over the ledger. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import type { SetAside } from '../../../shared-core/stash/cutting.ts';
import { fromMilli, toMilli } from '../../../shared-core/stash/stash.ts';
import type { Queries } from '../../database/store.ts';
import type { CallContext } from '../calls/call.ts';
import { addMovement, amountProblem, placeOnShelf } from '../stock/ledger.ts';
import { noSuchPlan } from '../plans/plans.ts';

/** What each plan has set aside of some lots, in the order it was set aside; places where nothing is are left out. */
export interface PlanReserved {
  readonly planId: string;
  readonly lotId: string;
  readonly lengthId: string | null;
  readonly reservedMilli: number;
}

export async function reservedBy(
  queries: Queries,
  where: { readonly planId: string } | { readonly lotIds: readonly string[] },
): Promise<PlanReserved[]> {
  if ('lotIds' in where && where.lotIds.length === 0) return [];
  const rows = await queries
    .selectFrom('movement')
    .select(['plan_id', 'lot_id', 'length_id'])
    .select(({ fn }) => fn.sum<number>('reserved_milli').as('reserved'))
    .where('plan_id', 'is not', null)
    .where(({ eb }) =>
      'planId' in where ? eb('plan_id', '=', where.planId) : eb('lot_id', 'in', where.lotIds),
    )
    .groupBy(['plan_id', 'lot_id', 'length_id'])
    .having(({ fn, eb }) => eb(fn.sum('reserved_milli'), '<>', 0))
    .orderBy(({ fn }) => fn.max('entry').filterWhere('kind', '=', 'reserved'))
    .execute();
  return rows.map((row) => ({
    planId: row.plan_id as string,
    lotId: row.lot_id,
    lengthId: row.length_id,
    reservedMilli: row.reserved,
  }));
}

export async function setAsideOfPlan(queries: Queries, planId: string): Promise<SetAside[]> {
  return (await reservedBy(queries, { planId })).map(amountOf);
}

function amountOf({ lotId, lengthId, reservedMilli }: PlanReserved): SetAside {
  return { lotId, lengthId, amount: fromMilli(reservedMilli) };
}

export async function setAsideOfItem(
  queries: Queries,
  itemId: string,
): Promise<CallOutput<'readItem'>['setAside']> {
  const lots = await queries.selectFrom('lot').select('id').where('item_id', '=', itemId).execute();
  const reserved = await reservedBy(queries, { lotIds: lots.map((lot) => lot.id) });
  if (reserved.length === 0) return [];
  const names = await planNames(
    queries,
    reserved.map((each) => each.planId),
  );
  return reserved.map((each) => ({
    ...amountOf(each),
    planId: each.planId,
    planName: names.get(each.planId) ?? '',
  }));
}

export async function planNames(
  queries: Queries,
  planIds: readonly string[],
): Promise<ReadonlyMap<string, string>> {
  if (planIds.length === 0) return new Map();
  const plans = await queries.selectFrom('plan').select(['id', 'name']).where('id', 'in', planIds).execute();
  return new Map(plans.map((plan) => [plan.id, plan.name]));
}

/**
 * Releases what is set aside at a place beyond what will be on hand there: the coat that set aside last gives way
 * first. Answers what each lost, in that order.
 */
export async function releaseBeyond(
  context: CallContext,
  place: { readonly lotId: string; readonly lengthId: string | null; readonly onHandMilli: number },
): Promise<{ readonly planId: string; readonly milli: number }[]> {
  const { lotId, lengthId, onHandMilli } = place;
  const here = (await reservedBy(context.queries, { lotIds: [lotId] })).filter(
    (each) => each.lengthId === lengthId,
  );
  let excessMilli = here.reduce((sum, each) => sum + each.reservedMilli, 0) - onHandMilli;
  const released: { planId: string; milli: number }[] = [];
  for (const { planId, reservedMilli } of here.reverse()) {
    if (excessMilli <= 0) break;
    const milli = Math.min(reservedMilli, excessMilli);
    excessMilli -= milli;
    const reason = say('set-aside.less-is-there-than-was-set');
    await addMovement(context, {
      lotId,
      lengthId,
      planId,
      kind: 'released',
      onHandMilli: 0,
      reservedMilli: -milli,
      reason,
    });
    released.push({ planId, milli });
  }
  return released;
}

/** Only the differences are booked, so that setting aside the same again adds nothing to the ledger. */
export async function setAside(
  context: CallContext,
  input: CallInput<'setAside'>,
): Promise<Result<CallOutput<'setAside'>>> {
  const { queries } = context;
  const { planId } = input;
  const plan = await queries.selectFrom('plan').select('id').where('id', '=', planId).executeTakeFirst();
  if (!plan) return err(noSuchPlan);
  const wanted = new Map<string, { lotId: string; lengthId: string | null; milli: number }>();
  for (const { lotId, lengthId, amount } of input.uses) {
    const key = keyOf(lotId, lengthId);
    wanted.set(key, { lotId, lengthId, milli: (wanted.get(key)?.milli ?? 0) + toMilli(amount) });
  }
  const problems: Problem[] = [];
  const before = new Map(
    (await reservedBy(queries, { planId })).map((each) => [keyOf(each.lotId, each.lengthId), each]),
  );
  for (const { lotId, lengthId, reservedMilli } of before.values()) {
    const kept = wanted.get(keyOf(lotId, lengthId))?.milli ?? 0;
    if (kept >= reservedMilli) continue;
    const movement = { lotId, lengthId, planId, kind: 'released', onHandMilli: 0, reason: '' } as const;
    await addMovement(context, { ...movement, reservedMilli: kept - reservedMilli });
  }
  for (const { lotId, lengthId, milli } of wanted.values()) {
    const moreMilli = milli - (before.get(keyOf(lotId, lengthId))?.reservedMilli ?? 0);
    if (moreMilli <= 0) continue;
    const place = await placeOnShelf(context, lotId, lengthId);
    if (!place.ok) return place;
    const { onHandMilli, reservedMilli, name, show } = place.value;
    const problem = amountProblem(place.value, fromMilli(milli), say('common.amount'));
    if (problem) problems.push(problem);
    else if (moreMilli > onHandMilli - reservedMilli) {
      problems.push({
        where: name,
        what: say('set-aside.is-no-longer-free-there-of', {
          show: show(Math.max(0, onHandMilli - reservedMilli)),
          show2: show(milli),
        }),
        fix: say('set-aside.look-at-the-cover-again-it'),
      });
    } else {
      const movement = { lotId, lengthId, planId, kind: 'reserved', onHandMilli: 0, reason: '' } as const;
      await addMovement(context, { ...movement, reservedMilli: moreMilli });
    }
  }
  if (problems.length > 0) return err(...problems);
  return ok({ setAside: await setAsideOfPlan(queries, planId) });
}

function keyOf(lotId: string, lengthId: string | null): string {
  return `${lotId} ${lengthId ?? ''}`;
}
