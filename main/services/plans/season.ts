/** The calls about the season: which plans are made, in which order and how many, with all that its flow reads. */
import { say } from '../../../shared-core/wording/say.ts';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import type { SeasonInput } from '../../../shared-core/contract/cost-calls.ts';
import type { SeasonEntry } from '../../../shared-core/plan/model/season-entry.ts';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import { standing } from '../../../shared-core/stash/cutting.ts';
import type { CallContext, Calls } from '../calls/call.ts';
import { readCuttings } from '../cutting/cutting-read.ts';
import { itemIdsFor } from './flow-input.ts';
import { latestRevision, noSuchPlan } from './plans.ts';
import { readSettings } from '../workshop/settings.ts';
import { setAsideOfPlan } from '../cutting/set-aside.ts';
import { readOffers, readShelves } from '../stock/shelf.ts';
import { readSuppliers } from '../purchasing/suppliers.ts';

export const seasonCalls = { readSeason, saveSeason } satisfies Calls<'readSeason' | 'saveSeason'>;

/** Plans, stash and offers in one consistent view of the file. */
async function readSeason(context: CallContext): Promise<Result<SeasonInput>> {
  const { queries } = context;
  const rows = await queries.selectFrom('season_plan').selectAll().orderBy('place').execute();
  const entries: SeasonEntry[] = [];
  for (const row of rows) {
    const latest = await latestRevision(context, row.plan_id);
    if (!latest) continue;
    const setAside = await setAsideOfPlan(queries, row.plan_id);
    const cuttings = [...standing(await readCuttings(queries, { planId: row.plan_id }))].reverse();
    entries.push({ plan: latest.plan, coatCount: row.coat_count, setAside, cuttings });
  }
  const ids = await itemIdsFor(
    queries,
    entries.map(({ plan }) => plan),
  );
  return ok({
    entries,
    shelf: await readShelves(queries, ids, 'on hand'),
    offers: await readOffers(queries, ids),
    suppliers: await readSuppliers(queries),
    settings: await readSettings(queries),
  });
}

/** The season as a whole takes the place of the one before. */
async function saveSeason(
  context: CallContext,
  { entries }: CallInput<'saveSeason'>,
): Promise<Result<SeasonInput>> {
  const { queries } = context;
  const planIds = new Set(entries.map(({ planId }) => planId));
  if (planIds.size < entries.length) {
    return err({
      where: say('common.the-season'),
      what: say('season.names-a-plan-twice'),
      fix: say('season.put-each-plan-in-once-with'),
    });
  }
  for (const planId of planIds) if (!(await latestRevision(context, planId))) return err(noSuchPlan);
  await queries.deleteFrom('season_plan').execute();
  for (const [index, { planId, coatCount }] of entries.entries()) {
    await queries
      .insertInto('season_plan')
      .values({ plan_id: planId, place: index + 1, coat_count: coatCount })
      .execute();
  }
  return readSeason(context);
}
