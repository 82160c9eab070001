/** Other items of the stash that would do for a slot. */
import { usableWidthMm } from '../lay/plan-lay.ts';
import type { Slot } from '../plan/coat-plan.ts';
import type { Need } from '../requirement/need.ts';
import type { Item, ItemId, ItemOnShelf } from '../stash/stash.ts';

/** Like kind, like weight (within a third), and free at least as much by area or amount. */
export function substitutes(
  slot: Slot,
  bound: Item | undefined,
  shelf: readonly ItemOnShelf[],
  need: Need,
): ItemId[] {
  return shelf
    .filter(({ item }) => item.kind === slot.kind && item.id !== bound?.id && isLike(item, bound, need))
    .filter((candidate) => hasEnough(candidate, need))
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

function hasEnough(candidate: ItemOnShelf, need: Need): boolean {
  if (need.kind === 'amount') {
    return candidate.lots.reduce((sum, lot) => sum + lot.onHand - lot.reserved, 0) >= need.amount;
  }
  const areaMm2 = candidate.lots.reduce(
    (sum, lot) =>
      sum +
      lot.lengths.reduce(
        (lotSum, length) =>
          lotSum + (length.onHandMm - length.reservedMm) * usableWidthMm(length.widthMm, candidate.item),
        0,
      ),
    0,
  );
  return areaMm2 >= need.areaMm2;
}
