/** What one coat of each plan costs in material, slot by slot: for plans side by side. */
import { type StackedBars, stackedBars } from '../measure/bars.ts';
import { roundMinor, splitMinor } from '../measure/money/money.ts';
import { folded } from '../measure/text/folded-text.ts';
import { sentenceCase } from '../measure/text/sentence-case.ts';
import type { PlanId } from '../stash/stash.ts';

export interface PlanCost {
  readonly planId: PlanId;
  readonly name: string;
  readonly coatCount: number;
  /** Of all its coats together. */
  readonly slots: readonly { readonly name: string; readonly costMinor: number }[];
  /** 'as cut': by what its cuttings took; 'planned': by the lays that were found for it. */
  readonly from: 'as cut' | 'planned';
  /** A part of it has no price. */
  readonly isIncomplete: boolean;
}

/**
 * A bar for each plan, in their order. Slots of one name are one part, whatever coat they belong to; the costliest
 * stands first. The parts of a bar add up to its coat, rounded once.
 */
export function costBySlot(plans: readonly PlanCost[]): StackedBars {
  const labels = new Map<string, string>();
  const weights = new Map<string, number>();
  const bars = plans.flatMap(({ planId, name, coatCount, slots }) => {
    const batchMinor = slots.reduce((sum, { costMinor }) => sum + costMinor, 0);
    if (coatCount < 1 || batchMinor <= 0) return [];
    const shares = splitMinor(
      roundMinor(batchMinor / coatCount),
      slots.map(({ costMinor }) => costMinor),
    );
    const amounts = new Map<string, number>();
    slots.forEach((slot, index) => {
      const shareMinor = shares[index] ?? 0;
      if (shareMinor === 0) return;
      const key = folded(slot.name);
      labels.set(key, labels.get(key) ?? sentenceCase(slot.name));
      amounts.set(key, (amounts.get(key) ?? 0) + shareMinor);
      weights.set(key, (weights.get(key) ?? 0) + shareMinor);
    });
    return [{ key: planId, label: name, amounts }];
  });
  const parts = [...labels].map(([key, label]) => ({ key, label }));
  const weight = (key: string) => weights.get(key) ?? 0;
  return stackedBars(
    parts.sort((a, b) => weight(b.key) - weight(a.key)),
    bars,
  );
}
