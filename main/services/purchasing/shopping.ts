/** A shopping trip: what is ticked on a coat's list, and all that was bought coming onto the shelf in one step. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput, CallOutput } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import type { LotId, OfferId, PlanId } from '../../../shared-core/stash/stash.ts';
import type { CallContext, Calls } from '../calls/call.ts';
import { noSuchPlan } from '../plans/plans.ts';
import { receiveLot } from '../stock/receiving.ts';

export const shoppingCalls = { readTicks, setTick, setTicks, receiveLots } satisfies Calls<
  'readTicks' | 'setTick' | 'setTicks' | 'receiveLots'
>;

async function readTicks(
  context: CallContext,
  { planId }: CallInput<'readTicks'>,
): Promise<Result<CallOutput<'readTicks'>>> {
  return ok({ offerIds: await ticksOf(context, planId) });
}

async function setTick(
  context: CallContext,
  { planId, offerId, isTicked }: CallInput<'setTick'>,
): Promise<Result<CallOutput<'setTick'>>> {
  const { queries } = context;
  if (!isTicked) {
    await takeOff(context, planId, [offerId]);
    return ok({ offerIds: await ticksOf(context, planId) });
  }
  const plan = await queries.selectFrom('plan').select('id').where('id', '=', planId).executeTakeFirst();
  if (!plan) return err(noSuchPlan);
  const offer = await queries.selectFrom('offer').select('id').where('id', '=', offerId).executeTakeFirst();
  if (!offer) {
    return err({
      where: say('shopping.the-line'),
      what: say('shopping.is-from-an-offer-that-is'),
      fix: say('shopping.open-the-list-again-it-is'),
    });
  }
  await queries
    .insertInto('shopping_tick')
    .values({ plan_id: planId, offer_id: offerId, ticked_at: context.now().toISOString() })
    .onConflict((conflict) => conflict.doNothing())
    .execute();
  return ok({ offerIds: await ticksOf(context, planId) });
}

/** One offer that is not there any more, and nothing has changed. */
async function setTicks(
  context: CallContext,
  { planId, ticked, open }: CallInput<'setTicks'>,
): Promise<Result<CallOutput<'setTicks'>>> {
  await takeOff(context, planId, open);
  for (const offerId of ticked) {
    const set = await setTick(context, { planId, offerId, isTicked: true });
    if (!set.ok) return set;
  }
  return ok({ offerIds: await ticksOf(context, planId) });
}

/** Every problem of every lot is told at once; any of them, and nothing has come in. */
async function receiveLots(
  context: CallContext,
  { planId, lots }: CallInput<'receiveLots'>,
): Promise<Result<CallOutput<'receiveLots'>>> {
  const lotIds: LotId[] = [];
  const problems: Problem[] = [];
  for (const { lot } of lots) {
    const received = await receiveLot(context, lot);
    if (received.ok) lotIds.push(received.value.lotId);
    else problems.push(...received.problems);
  }
  if (problems.length > 0) return err(...problems);
  await takeOff(
    context,
    planId,
    lots.map(({ offerId }) => offerId),
  );
  return ok({ lotIds });
}

async function ticksOf({ queries }: CallContext, planId: PlanId): Promise<OfferId[]> {
  const rows = await queries
    .selectFrom('shopping_tick')
    .select('offer_id')
    .where('plan_id', '=', planId)
    .orderBy('ticked_at')
    .orderBy('offer_id')
    .execute();
  return rows.map((row) => row.offer_id);
}

async function takeOff(
  { queries }: CallContext,
  planId: PlanId,
  offerIds: readonly OfferId[],
): Promise<void> {
  if (offerIds.length === 0) return;
  await queries
    .deleteFrom('shopping_tick')
    .where('plan_id', '=', planId)
    .where('offer_id', 'in', offerIds)
    .execute();
}
