/**
 * Coats as the tables of DEVELOPERS.md were measured with them: cut to the outline, with take-up by the arc of the cloth
 * alone. What new plans choose may change; instances for benches must not, or their figures no longer compare.
 */
import { demoWorkshop } from '../../../shared-core/demo/demo-workshop.ts';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { toOutline } from '../../../shared-core/plan/model/quilting-order.ts';
import { takeUpRatio } from '../../../shared-core/quilting/take-up.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';

/** Half of the loft is left between the lines, half of that on each face. loftMm: of one layer of batting. */
export function asMeasured(plan: CoatPlan, loftMm: number): CoatPlan {
  if (plan.quilting === null) return plan;
  const { spacingMm } = plan.quilting;
  const measures = [0, 1, 2].map((battingPlyCount) => ({
    battingPlyCount,
    spacingMm,
    riseMm: null,
    overLinesRatio: takeUpRatio(spacingMm, (loftMm * battingPlyCount) / 4),
    alongLinesRatio: 0,
  }));
  return { ...plan, quilting: { ...plan.quilting, measures, order: toOutline } };
}

export function measuredDemo(): { readonly plan: CoatPlan; readonly items: readonly Item[] } {
  const { plans, items } = demoWorkshop();
  const plan = plans[0]!;
  const battingId = plan.slots.find(({ kind }) => kind === 'batting')?.itemId;
  const batting = items.find(({ id }) => id === battingId);
  return { plan: asMeasured(plan, batting?.kind === 'batting' ? (batting.facts.loftMm ?? 0) : 0), items };
}
