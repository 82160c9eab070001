/** What a cover holds back of the shelf as margin for safety, and what is short of it; the rule is in plan/margin.ts. */
import type { SlotLay } from '../lay/plan-lay.ts';
import { takenInAllMm } from '../lay/washed.ts';
import { marginOfAmount, marginOfLength } from '../plan/model/margin.ts';
import type { AmountNeed, Need } from '../requirement/need.ts';
import type { LotId, LotOnShelf } from '../stash/stash.ts';
import type { Shortage, SlotCover, Use } from './slot-cover.ts';

/** What is kept of a place: what is cut, and the margin beside it. */
export function keptOf({ amount, marginAmount = 0 }: Use): number {
  return amount + marginAmount;
}

/** All that is to be got: what the coats lack, and what is short of the margin. In the kind's unit, or mm of cloth. */
export function shortOf({ amount, marginAmount = 0 }: Shortage): number {
  return amount + marginAmount;
}

/** The margin that is to be held ready beside a need, in the kind's unit; for what is cut it goes by the lay, mm. */
export function marginOf(need: Need, slotLay: SlotLay | undefined): number {
  return need.kind === 'amount'
    ? marginOfAmount(need.margin, need.amount, need.counted)
    : marginOfLength(need.margin, slotLay ? takenInAllMm(slotLay) : 0);
}

/** A margin of cloth taken from the rest of the lengths in use, the first one first, and what of it finds no room there. */
export function heldOnLengths(uses: readonly Use[], marginMm: number): { uses: Use[]; openMm: number } {
  let openMm = marginMm;
  const withMargin = uses.map((use) => {
    const marginAmount = Math.min(openMm, Math.max(0, use.free - use.amount));
    openMm -= marginAmount;
    return marginAmount > 0 ? { ...use, marginAmount } : use;
  });
  return { uses: withMargin, openMm };
}

/**
 * The cover of an amount with its margin held back in the lots, the oldest first, whatever they are cut from.
 * freeOf: what of a lot nothing takes yet.
 */
export function withAmountHeld(
  slotCover: SlotCover,
  need: AmountNeed,
  lots: readonly LotOnShelf[],
  freeOf: (lot: LotOnShelf) => number,
): SlotCover {
  let open = marginOf(need, undefined);
  if (open <= 0) return slotCover;
  const uses = new Map<LotId, Use>(slotCover.uses.map((use) => [use.lotId, use]));
  for (const lot of lots) {
    const free = freeOf(lot);
    const marginAmount = Math.min(open, free);
    if (!(marginAmount > 0)) continue;
    const use = uses.get(lot.id) ?? { lotId: lot.id, lengthId: null, amount: 0, free, layLength: null };
    uses.set(lot.id, { ...use, marginAmount });
    open -= marginAmount;
  }
  const held = { ...slotCover, uses: [...uses.values()] };
  if (open <= 1e-9) return held;
  const lacking = slotCover.shortage ?? {
    amount: 0,
    widthMm: null,
    wantedLengthMm: need.wantedLengthMm,
    missingPieceCount: 0,
  };
  return {
    ...held,
    state: 'short',
    shortage: { ...lacking, marginAmount: open },
  };
}
