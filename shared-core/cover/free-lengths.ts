/** What is free of an item on the shelf, length by length, in the order in which a slot may take it. */
import { byName } from '../wording/in-order.ts';
import type { LayLength } from '../lay/job.ts';
import { type SlotLay, usableWidthMm } from '../lay/plan-lay.ts';
import { washedLength } from '../lay/washed.ts';
import type { Slot } from '../plan/model/coat-plan.ts';
import { firstWash, lostBeforeCutting } from '../requirement/cut/first-wash.ts';
import { beforeWashMm, noShrinkage, type Shrinkage } from '../stash/shrinkage.ts';
import type { Item, ItemOnShelf, LengthOnShelf, LotOnShelf } from '../stash/stash.ts';

export interface FreeLength {
  readonly lot: LotOnShelf;
  readonly length: LengthOnShelf;
  /** Where the free part begins: an earlier slot cuts from the start. */
  readonly startMm: number;
  readonly freeMm: number;
  /** What it loses by being washed before it is cut. */
  readonly lost: Shrinkage;
}

/**
 * What is free of an item, in the order a maker would cut it: for what is seen the fullest dye lot first, else remnants
 * first. Lengths that were washed are no good for pieces that are cut larger for a wash to come.
 */
export function freeLengths(
  shelf: ItemOnShelf,
  slot: Slot,
  taken: ReadonlyMap<string, number>,
): FreeLength[] {
  const wash = firstWash(slot, shelf.item);
  const free = shelf.lots.flatMap((lot) =>
    lot.lengths.map((length) => {
      const startMm = taken.get(length.id) ?? 0;
      const lost = length.isWashed ? noShrinkage : lostBeforeCutting(wash);
      return { lot, length, startMm, freeMm: length.onHandMm - length.reservedMm - startMm, lost };
    }),
  );
  const isFit = ({ isWashed }: LengthOnShelf) => !isWashed || !wash || wash.isBeforeCutting;
  const usable = free.filter(({ freeMm, length }) => freeMm > 1 && isFit(length));
  if (!slot.isSeen) return usable.sort((a, b) => a.freeMm - b.freeMm);
  const byDyeLot = new Map<string, number>();
  for (const { lot, freeMm } of usable)
    byDyeLot.set(dyeLotOf(lot), (byDyeLot.get(dyeLotOf(lot)) ?? 0) + freeMm);
  const isRemnant = (length: LengthOnShelf) => (length.form === 'remnant' ? 1 : 0);
  return usable.sort(
    (a, b) =>
      (byDyeLot.get(dyeLotOf(b.lot)) ?? 0) - (byDyeLot.get(dyeLotOf(a.lot)) ?? 0) ||
      byName(dyeLotOf(a.lot), dyeLotOf(b.lot)) ||
      isRemnant(a.length) - isRemnant(b.length) ||
      b.freeMm - a.freeMm,
  );
}

/** Lots without a dye lot written down count as a dye lot each. */
export function dyeLotOf(lot: LotOnShelf): string {
  return lot.dyeLot || lot.id;
}

/** A free length as the lay sees it: usable width, flaws from where the free part begins, and what a wash leaves of it. */
export function onShelf(candidate: FreeLength, item: Item): LayLength {
  const unwashed = {
    id: candidate.length.id,
    widthMm: usableWidthMm(candidate.length.widthMm, item),
    lengthMm: candidate.freeMm,
    flaws: candidate.length.flaws
      .map((flaw) => ({ ...flaw, x: flaw.x - candidate.startMm }))
      .filter((flaw) => flaw.x + flaw.widthX > 0),
  };
  return washedLength(unwashed, candidate.lost);
}

/** The shortest length that takes the whole planned lay as it is, with its margin: what leaves the most useful rest. */
export function smallestThatHolds(
  planned: SlotLay,
  free: readonly FreeLength[],
  item: Item,
  marginMm = 0,
): FreeLength | null {
  const layWidthMm = planned.job.lengths[0]?.widthMm ?? 0;
  const usedMm = planned.result.usedLengthMm[0] ?? 0;
  const holding = free.filter(
    (candidate) =>
      candidate.length.flaws.length === 0 &&
      candidate.freeMm >= beforeWashMm(usedMm, candidate.lost.alongRatio) + marginMm &&
      onShelf(candidate, item).widthMm >= layWidthMm - 1e-6,
  );
  return holding.reduce<FreeLength | null>(
    (best, candidate) => (!best || candidate.freeMm < best.freeMm ? candidate : best),
    null,
  );
}
