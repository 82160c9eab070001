/** Other items of the stash that would do for a slot. */
import { usableWidthMm } from '../lay/plan-lay.ts';
import type { Slot } from '../plan/model/coat-plan.ts';
import { marginOfAmount, marginOfLength } from '../plan/model/margin.ts';
import { afterWashMm2, firstWash } from '../requirement/cut/first-wash.ts';
import type { Need } from '../requirement/need.ts';
import { areaLeftRatio, noShrinkage } from '../stash/shrinkage.ts';
import type { Item, ItemId, ItemOnShelf } from '../stash/stash.ts';
import { freeLengths } from './free-lengths.ts';

/** Like kind, like weight (within a third), and free at least as much by area or amount, the margin for safety with it. */
export function substitutes(
  slot: Slot,
  bound: Item | undefined,
  shelf: readonly ItemOnShelf[],
  need: Need,
): ItemId[] {
  return shelf
    .filter(({ item }) => item.kind === slot.kind && item.id !== bound?.id && isLike(item, bound, need))
    .filter((candidate) => hasEnough(candidate, slot, need))
    .map(({ item }) => item.id);
}

function isLike(item: Item, bound: Item | undefined, need: Need): boolean {
  if (item.kind === 'fastening') {
    const isLongEnough =
      need.kind !== 'amount' ||
      need.wantedLengthMm === null ||
      (item.facts.lengthMm ?? 0) >= need.wantedLengthMm;
    return isLongEnough && bound?.kind === 'fastening' && item.facts.form === bound.facts.form;
  }
  if (!bound || bound.kind !== item.kind) return !bound;
  if (
    (item.kind === 'cloth' && bound.kind === 'cloth') ||
    (item.kind === 'batting' && bound.kind === 'batting')
  ) {
    const weight = item.facts.arealMassGPerM2;
    const wanted = bound.facts.arealMassGPerM2;
    return weight !== null && wanted !== null && Math.abs(weight - wanted) <= wanted / 3;
  }
  return true;
}

function hasEnough(candidate: ItemOnShelf, slot: Slot, need: Need): boolean {
  if (need.kind === 'amount') {
    const free = candidate.lots.reduce((sum, lot) => sum + lot.onHand - lot.reserved, 0);
    return free >= need.amount + marginOfAmount(need.margin, need.amount, need.counted);
  }
  const widthMm = fullWidthMm(candidate.item);
  // In unwashed cloth of the candidate, which shrinks by its own ratio.
  const left = areaLeftRatio(firstWash(slot, candidate.item) ?? noShrinkage);
  const areaMm2 = freeLengths(candidate, slot, new Map()).reduce(
    (sum, { length, freeMm }) =>
      sum + (freeMm * usableWidthMm(length.widthMm, candidate.item)) / (length.isWashed ? left : 1),
    0,
  );
  const neededMm2 = afterWashMm2(need, need.areaMm2) / left;
  // Gaps between the pieces are not counted, so the lay is taken as long as the pieces' area makes it.
  const marginMm2 = widthMm > 0 ? widthMm * marginOfLength(need.margin, neededMm2 / widthMm) : 0;
  return areaMm2 >= neededMm2 + marginMm2;
}

function fullWidthMm(item: Item): number {
  return item.kind === 'cloth' || item.kind === 'batting' ? usableWidthMm(item.facts.widthMm ?? 0, item) : 0;
}
