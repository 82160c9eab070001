/** The road up to the cover for some coats of a batch, to cut these first. */
import { cover } from '../cover/cover.ts';
import { cuttingProposal, type ProposedSlot } from '../cover/cutting-proposal.ts';
import { flowNeeds, type FlowSources, layNeeds } from './estimate.ts';
import type { RunLay } from '../lay/plan-lay.ts';
import type { CoatPlan } from '../plan/model/coat-plan.ts';
import type { CutCoats } from '../stash/cutting.ts';

/** What to cut so that so many coats of each size are cut in all, what was cut before counted in. */
export async function proposedCutting(
  sources: FlowSources,
  coats: readonly CutCoats[],
  runLay: RunLay,
): Promise<ProposedSlot[]> {
  const plan = withCoats(sources.plan, coats);
  const { needs } = await flowNeeds({ ...sources, plan }, runLay);
  const lays = await layNeeds({ ...sources, plan }, needs, runLay);
  const input = { ...sources, plan, needs, lays: new Map(lays.map((lay) => [lay.slotId, lay])) };
  return cuttingProposal(plan, needs, await cover(input, runLay));
}

/** The plan for other numbers of coats; a size that is not named is left out of it. */
function withCoats(plan: CoatPlan, coats: readonly CutCoats[]): CoatPlan {
  const countOf = (size: string) => coats.find((each) => each.size === size)?.coatCount ?? 0;
  return {
    ...plan,
    coatCount: countOf(plan.size),
    ...(plan.sizes && { sizes: plan.sizes.map((each) => ({ ...each, coatCount: countOf(each.size) })) }),
  };
}

/** The plan's own numbers. */
export function wholeBatch(plan: CoatPlan): CutCoats[] {
  return [{ size: plan.size, coatCount: plan.coatCount }, ...(plan.sizes ?? [])].map(
    ({ size, coatCount }) => ({ size, coatCount }),
  );
}
