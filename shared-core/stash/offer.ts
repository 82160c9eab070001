/** What a supplier sells an item as, and for how much. */
import { say } from '../wording/say.ts';
import { dayNumber } from '../measure/calendar-date.ts';
import type { Problem } from '../measure/problem.ts';
import { stepsUp } from '../measure/round-up.ts';
import type { Counted } from './kinds.ts';
import type { ItemId, OfferId } from './stash.ts';

/**
 * The smallest thing that can be bought:
 * by length: steps along the cloth at a width; sheet: a fixed rectangle; spool: metres of thread;
 * by mass: steps of g; pack: a number of pieces; each: one piece, with its length where it has one (zips).
 */
export type SellingUnit =
  | {
      readonly kind: 'by length';
      readonly stepMm: number;
      readonly widthMm: number;
      readonly leastMm: number;
    }
  | { readonly kind: 'sheet'; readonly widthMm: number; readonly lengthMm: number }
  | { readonly kind: 'spool'; readonly threadM: number }
  | { readonly kind: 'by mass'; readonly stepG: number; readonly leastG: number }
  | { readonly kind: 'pack'; readonly pieceCount: number }
  | { readonly kind: 'each'; readonly lengthMm: number | null };

/** What is counted so can be sold as this, the usual way first; then a shortage of it can be counted in such units. */
export const soldAs: Readonly<Record<Counted, readonly SellingUnit['kind'][]>> = {
  length: ['by length', 'sheet'],
  mass: ['by mass'],
  thread: ['spool'],
  pieces: ['pack', 'each'],
};

/** From so many units on, each of them costs this much. */
export interface PriceBreak {
  readonly fromCount: number;
  readonly priceMinor: number;
}

export interface Offer {
  readonly id: OfferId;
  readonly itemId: ItemId;
  readonly supplier: string;
  readonly unit: SellingUnit;
  /** Price of one step, sheet, spool, pack or piece. */
  readonly priceMinor: number;
  /** ISO date of the price. */
  readonly pricedOn: string;
  /** Rising counts with falling prices; absent: one price for any count. */
  readonly breaks?: readonly PriceBreak[];
  /** Fewest units that are sold at once; absent: one. A least length or mass stands in the unit. */
  readonly leastCount?: number;
}

/** Fewest units that can be bought, with the unit's own least length or mass turned into steps. */
export function leastUnits(offer: Offer): number {
  const { unit } = offer;
  const inUnit =
    unit.kind === 'by length'
      ? stepsUp(unit.leastMm, unit.stepMm)
      : unit.kind === 'by mass'
        ? stepsUp(unit.leastG, unit.stepG)
        : 1;
  return Math.max(1, inUnit, offer.leastCount ?? 1);
}

/** What one unit costs where so many are bought. */
export function unitPriceMinor(offer: Offer, unitCount: number): number {
  const reached = (offer.breaks ?? []).filter((priceBreak) => priceBreak.fromCount <= unitCount);
  return reached.at(-1)?.priceMinor ?? offer.priceMinor;
}

/** What so many units cost in all, without delivery. */
export function offerPriceMinor(offer: Offer, unitCount: number): number {
  return unitCount * unitPriceMinor(offer, unitCount);
}

/** Prices move; one that is older than this is marked as old, days (common practice, no source). */
export const oldPriceDays = 180;

/** Days since the price was seen; both ISO dates. */
export function priceAgeDays(offer: Pick<Offer, 'pricedOn'>, today: string): number {
  return dayNumber(today) - dayNumber(offer.pricedOn);
}

export function isOldPrice(offer: Pick<Offer, 'pricedOn'>, today: string): boolean {
  return priceAgeDays(offer, today) > oldPriceDays;
}

/** What is wrong with an offer's breaks and least count; empty when all is well. */
export function offerProblems(offer: Pick<Offer, 'priceMinor' | 'breaks' | 'leastCount'>): Problem[] {
  const problems: Problem[] = [];
  let before = { fromCount: 1, priceMinor: offer.priceMinor };
  for (const [index, next] of (offer.breaks ?? []).entries()) {
    const where = say('offer.price-break', { index: index + 1 });
    if (next.fromCount <= before.fromCount) {
      const than = index === 0 ? say('offer.more-than-one-unit') : say('offer.more-than-the-break-before-it');
      problems.push({
        where,
        what: say('offer.does-not-begin-at', { than }),
        fix: say('offer.give-the-breaks-in-rising-order'),
      });
    }
    if (next.priceMinor >= before.priceMinor) {
      problems.push({
        where,
        what: say('offer.is-not-cheaper-than-what-is'),
        fix: say('offer.type-the-price-of-one-unit'),
      });
    }
    before = next;
  }
  return problems;
}
