/** What a change of the plan did to its estimate, and whether what is left is still enough. Facts, not yet words. */
import type { Estimate } from './estimate.ts';
import { takenInAllMm } from '../lay/washed.ts';
import type { Need } from '../requirement/need.ts';
import type { CoverState } from '../cover/slot-cover.ts';

export interface SlotChange {
  readonly slotId: string;
  /** Need before and after, in mm of cloth length or the kind's unit; null where the slot was not there. */
  readonly before: number | null;
  readonly after: number | null;
  readonly stateBefore: CoverState | null;
  readonly stateAfter: CoverState | null;
}

export interface EstimateChange {
  readonly slots: readonly SlotChange[];
  readonly toBuyMinor: number;
  readonly batchCostMinor: number;
  /** True when every slot is covered after the change. */
  readonly isEnough: boolean;
}

/** Slots whose need or cover differs, in the order of the later estimate; lays closer than 1 mm count as the same. */
export function estimateChange(before: Estimate, after: Estimate): EstimateChange {
  const slotIds = [...new Set([...after.requirement, ...before.requirement].map((need) => need.slotId))];
  const slots = slotIds.map(
    (slotId): SlotChange => ({
      slotId,
      before: needAmount(before, slotId),
      after: needAmount(after, slotId),
      stateBefore: before.cover.find((slotCover) => slotCover.slotId === slotId)?.state ?? null,
      stateAfter: after.cover.find((slotCover) => slotCover.slotId === slotId)?.state ?? null,
    }),
  );
  return {
    slots: slots.filter(
      (slot) =>
        slot.stateBefore !== slot.stateAfter ||
        slot.before === null ||
        slot.after === null ||
        Math.abs(slot.after - slot.before) >= 1,
    ),
    toBuyMinor: after.toBuy.payMinor - before.toBuy.payMinor,
    batchCostMinor: after.cost.batchMinor - before.cost.batchMinor,
    isEnough: after.cover.every(
      (slotCover) => slotCover.state === 'covered' || slotCover.state === 'covered with care',
    ),
  };
}

/** What a slot needs: the length its lay uses, or its amount. */
export function needAmount(estimate: Estimate, slotId: string): number | null {
  const need: Need | undefined = estimate.requirement.find((candidate) => candidate.slotId === slotId);
  if (!need) return null;
  if (need.kind === 'amount') return need.amount;
  const slotLay = estimate.lays.find((candidate) => candidate.slotId === slotId);
  return slotLay ? takenInAllMm(slotLay) : 0;
}
