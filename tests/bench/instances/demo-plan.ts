/**
 * The demo coat as the tables of DEVELOPERS.md were measured with it: take-up by the arc of the cloth alone. The demo's
 * own choices may change; its instances for benches must not, or their figures no longer compare.
 */
import { demoWorkshop } from '../../../shared-core/demo/demo-workshop.ts';
import type { CoatPlan } from '../../../shared-core/plan/coat-plan.ts';
import { takeUpRatio } from '../../../shared-core/quilting/take-up.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';

export interface MeasuredDemo {
  readonly plan: CoatPlan;
  readonly items: readonly Item[];
}

/** Half of the loft of the demo's batting is left between the lines, half of that on each face. */
export function measuredDemo(): MeasuredDemo {
  const { plans, items } = demoWorkshop();
  const plan = plans[0]!;
  const quilting = plan.quilting!;
  const battingId = plan.slots.find(({ kind }) => kind === 'batting')?.itemId;
  const batting = items.find(({ id }) => id === battingId);
  const loftMm = batting?.kind === 'batting' ? (batting.facts.loftMm ?? 0) : 0;
  const measures = [1, 2].map((battingPlyCount) => ({
    battingPlyCount,
    spacingMm: quilting.spacingMm,
    riseMm: null,
    overLinesRatio: takeUpRatio(quilting.spacingMm, (loftMm * battingPlyCount) / 4),
    alongLinesRatio: 0,
  }));
  return { plan: { ...plan, quilting: { ...quilting, measures } }, items };
}
