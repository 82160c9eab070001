/** All that the flow reads for a plan, in one consistent view of the file. */
import type { CallInput, FlowInput } from '../../../shared-core/contract/contract.ts';
import { localDate } from '../../../shared-core/measure/calendar-date.ts';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Queries } from '../../database/store.ts';
import { standing } from '../../../shared-core/stash/cutting.ts';
import { withoutReserved } from '../../../shared-core/stash/set-aside-entry.ts';
import type { CallContext, Calls } from '../calls/call.ts';
import { readCuttings } from '../cutting/cutting-read.ts';
import { latestRevision, noSuchPlan } from './plans.ts';
import { readSettings } from '../workshop/settings.ts';
import { setAsideOfPlan } from '../cutting/set-aside.ts';
import { readOffers, readShelves } from '../stock/shelf.ts';
import { readSuppliers } from '../purchasing/suppliers.ts';

export const flowInputCalls = { flowInput } satisfies Calls<'flowInput'>;

/** What the plan itself has set aside counts as free to it. */
async function flowInput(context: CallContext, input: CallInput<'flowInput'>): Promise<Result<FlowInput>> {
  const { queries } = context;
  const latest = await latestRevision(context, input.planId);
  if (!latest) return err(noSuchPlan);
  const { plan, revision } = latest;
  const ids = await itemIdsFor(queries, [plan]);
  const setAside = await setAsideOfPlan(queries, plan.id);
  return ok({
    plan,
    revision,
    shelf: withoutReserved(await readShelves(queries, ids, 'on hand'), setAside),
    offers: await readOffers(queries, ids),
    suppliers: await readSuppliers(queries),
    today: localDate(context.now()),
    settings: await readSettings(queries),
    setAside,
    cuttings: [...standing(await readCuttings(queries, { planId: plan.id }))].reverse(),
  });
}

/** Live items of the kinds that the plans use, and those they are bound to even where they were put away since; by name. */
export async function itemIdsFor(queries: Queries, plans: readonly CoatPlan[]): Promise<string[]> {
  const slots = plans.flatMap((plan) => plan.slots);
  const kinds = [...new Set(slots.map((slot) => slot.kind))];
  const boundIds = slots.flatMap((slot) => slot.itemId ?? []);
  const items = await queries
    .selectFrom('item')
    .select('id')
    .where(({ or, and, eb }) =>
      or([and([eb('archived', '=', 0), eb('kind', 'in', kinds)]), eb('id', 'in', boundIds)]),
    )
    .orderBy('name_key')
    .orderBy('id')
    .execute();
  return items.map((item) => item.id);
}
