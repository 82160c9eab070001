/** The same coat in other sizes and cloths: each variant goes the whole road, so that their figures stand side by side. */
import { say } from '../wording/say.ts';
import { type Estimate, estimate, type FlowSources } from './estimate.ts';
import type { RunLay } from '../lay/plan-lay.ts';
import { takenInAllMm } from '../lay/washed.ts';
import { type CoatPlan, slotById } from '../plan/model/coat-plan.ts';
import { coatTotal } from '../plan/model/sizes.ts';
import type { Item, ItemId } from '../stash/stash.ts';
import type { Solve } from '../to-buy/programme.ts';

export interface Variant {
  readonly id: string;
  /** "as planned", "size 42", "shell: Slatewater nylon". */
  readonly name: string;
  readonly plan: CoatPlan;
}

/** What is compared of a variant; its lays stand in the estimate. */
export interface VariantResult {
  readonly variant: Variant;
  readonly estimate: Estimate;
  /** Length that the lays use on endless cloth, all slots together. */
  readonly usedMm: number;
  /** Material of the dearest coat. */
  readonly coatMinor: number;
  readonly toBuyMinor: number;
}

export function asPlanned(plan: CoatPlan): Variant {
  return { id: 'as planned', name: say('variants.as-planned'), plan };
}

/** As many coats as the plan makes, all of them in one of its sizes; a size that waits counts too. None for a plan of one size. */
export function sizeVariants(plan: CoatPlan): Variant[] {
  const { sizes, ...own } = plan;
  if (!sizes || sizes.length === 0) return [];
  const coatCount = coatTotal(plan);
  return [{ size: own.size, pieces: own.pieces }, ...sizes].map(({ size, pieces }) => ({
    id: `size ${size}`,
    name: say('variants.size', { size }),
    plan: { ...own, size, pieces, coatCount },
  }));
}

/** The plan with another item in one of its slots. */
export function itemVariant(plan: CoatPlan, slotId: string, item: Pick<Item, 'id' | 'name'>): Variant {
  const slot = slotById(plan, slotId);
  return {
    id: `${slotId} ${item.id}`,
    name: `${slot.name}: ${item.name}`,
    plan: { ...plan, slots: plan.slots.map((each) => withItem(each, slotId, item.id)) },
  };
}

function withItem(slot: CoatPlan['slots'][number], slotId: string, itemId: ItemId): typeof slot {
  return slot.id === slotId ? { ...slot, itemId } : slot;
}

export interface Watch {
  /** Once it is aborted no further variant is begun, and one that is not finished is left out. */
  readonly signal: { readonly aborted: boolean };
  readonly onDone: (result: VariantResult, doneCount: number) => void;
}

/** Each variant in its turn on the whole stash, its whole batch as if none were cut yet. What was finished before an abort is given; any other failure rejects. */
export async function sideBySide(
  sources: FlowSources,
  variants: readonly Variant[],
  runLay: RunLay,
  solve: Solve,
  { signal, onDone }: Watch,
): Promise<readonly VariantResult[]> {
  const results: VariantResult[] = [];
  for (const variant of variants) {
    if (signal.aborted) break;
    const outcome = await finished({ ...sources, cuttings: [], plan: variant.plan }, runLay, solve, signal);
    if (outcome === null) break;
    const result: VariantResult = {
      variant,
      estimate: outcome,
      usedMm: outcome.lays.reduce((sum, slotLay) => sum + takenInAllMm(slotLay), 0),
      coatMinor: outcome.cost.perCoatMinor[0] ?? 0,
      toBuyMinor: outcome.toBuy.payMinor,
    };
    results.push(result);
    onDone(result, results.length);
  }
  return results;
}

/** null: aborted before it was whole. */
async function finished(
  sources: FlowSources,
  runLay: RunLay,
  solve: Solve,
  signal: Watch['signal'],
): Promise<Estimate | null> {
  try {
    const whole = await estimate(sources, runLay, solve);
    return signal.aborted ? null : whole;
  } catch (error) {
    if (signal.aborted) return null;
    throw error;
  }
}
