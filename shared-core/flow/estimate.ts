/**
 * The sentence of the house: requirement, then lay, then cover, then to-buy, then cost.
 * Each reads what the earlier ones gave and returns new readonly data; what the finished coat is reads plan and
 * requirement alone. How a lay is run (inline, in a worker, in a thread), for how long and with which clock is
 * passed in, and so is the solver.
 */
import { boughtWidthMm, cover } from '../cover/cover.ts';
import { type StillEnough, stillEnough } from '../cover/still-enough.ts';
import { type CostSheet, cost } from '../cost/cost.ts';
import { endlessLength, layJob, type RunLay, type SlotLay, washedLay } from '../lay/plan-lay.ts';
import { type LaidPanel, type Panels, planPanels } from './panel-lays.ts';
import { type FlowSources, openSlotWidthMm, slotItems } from './sources.ts';
import { slotById } from '../plan/model/coat-plan.ts';
import { type Finished, finished } from '../requirement/finished/finished-coat.ts';
import { lostBeforeCutting } from '../requirement/cut/first-wash.ts';
import type { Need } from '../requirement/need.ts';
import { requirement } from '../requirement/requirement.ts';
import { stillToCut } from '../requirement/cut/still-to-cut.ts';
import type { Solve } from '../to-buy/programme.ts';
import { type ToBuy, toBuy } from '../to-buy/to-buy.ts';
import type { SlotCover } from '../cover/slot-cover.ts';

export { type FlowSources, openSlotWidthMm, slotItems } from './sources.ts';

export interface Estimate {
  /** Of what is still to be cut, where cutting has begun; so are lays, cover and to buy. The cost is that of the whole batch. */
  readonly requirement: readonly Need[];
  /** Panels of the whole batch that are quilted before pieces are cut from them. */
  readonly panels: readonly LaidPanel[];
  readonly lays: readonly SlotLay[];
  readonly cover: readonly SlotCover[];
  /** Of the slots that cutting has begun with: whether what is left of the very lots carries the rest. */
  readonly still: readonly StillEnough[];
  readonly toBuy: ToBuy;
  readonly cost: CostSheet;
  readonly finished: Finished;
}

/** The whole road for one plan. */
export async function estimate(sources: FlowSources, runLay: RunLay, solve: Solve): Promise<Estimate> {
  const { needs, panels } = await flowNeeds(sources, runLay);
  const lays = await layNeeds(sources, needs, runLay);
  const coverInput = { ...sources, needs, lays: new Map(lays.map((lay) => [lay.slotId, lay])) };
  const covers = await cover(coverInput, runLay);
  const bought = await toBuy(coverInput, covers, runLay, solve);
  return {
    requirement: needs,
    panels,
    lays,
    cover: covers,
    still: stillEnough(needs, covers, sources.cuttings ?? [], sources.shelf),
    toBuy: bought,
    cost: cost(sources.plan, covers, bought, sources.shelf, sources.cuttings),
    finished: finished(sources.plan, slotItems(sources)),
  };
}

/** What is still to be cut, with panels in the place of what is cut from them, and the panels of the whole batch. */
export async function flowNeeds(sources: FlowSources, runLay: RunLay): Promise<Panels> {
  const { plan, cuttings = [] } = sources;
  const items = slotItems(sources);
  const pieces = requirement(plan, items);
  const { panels } = await planPanels(sources, pieces, runLay);
  const whole = panels.length > 0 ? requirement(plan, items, panels) : pieces;
  const left = await planPanels(sources, stillToCut(plan, whole, cuttings), runLay);
  return { needs: left.needs, panels };
}

/** Every cut slot laid on endless cloth of its item's width: what the coats need, whatever the stash holds. */
export async function layNeeds(
  sources: FlowSources,
  needs: readonly Need[],
  runLay: RunLay,
): Promise<readonly SlotLay[]> {
  const items = slotItems(sources);
  return Promise.all(
    needs.flatMap((need) => {
      if (need.kind !== 'shapes' || need.shapes.length === 0) return [];
      const item = items.get(need.slotId);
      const widthMm = item ? boughtWidthMm(item, sources.offers) : openSlotWidthMm;
      const { slotId } = need;
      const lost = lostBeforeCutting(need.firstWash);
      const endless = endlessLength('endless', widthMm, item, lost);
      const job = layJob(need, [endless], sources.plan.clearanceMm, item, 1);
      const what = slotById(sources.plan, slotId).name;
      return [
        runLay(job, what).then((result): SlotLay => ({ slotId, job, result, ...washedLay(need, [lost]) })),
      ];
    }),
  );
}
