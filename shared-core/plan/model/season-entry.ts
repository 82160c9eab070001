/** A plan in a season of several, and how many coats the season makes of it. */
import type { Cutting, SetAside } from '../../stash/cutting.ts';
import type { CoatPlan } from './coat-plan.ts';
import { plansBySize } from './sizes.ts';

/** coatCount null: as many as the plan says. A plan in several sizes is always taken as it is. */
export interface SeasonEntry {
  readonly plan: CoatPlan;
  readonly coatCount: number | null;
  /** What the plan has set aside of the stash; absent: nothing. */
  readonly setAside?: readonly SetAside[];
  /** Its cuttings that stand: what they met is not needed again; absent: none. */
  readonly cuttings?: readonly Cutting[];
}

/** The plan with the coats that the season makes of it. */
export function plannedFor({ plan, coatCount }: SeasonEntry): CoatPlan {
  return coatCount === null || plansBySize(plan).length > 1 ? plan : { ...plan, coatCount };
}
