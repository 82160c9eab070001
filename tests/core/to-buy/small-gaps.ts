/** Gaps of one plan or several, bought in place: numbers one can check by hand. */
import { solveHere } from '../../../main/services/threads/solver.ts';
import { ringFromPoints } from '../../../shared-core/geometry/ring.ts';
import type { Offer, PriceBreak, SellingUnit } from '../../../shared-core/stash/offer.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';
import type { Supplier } from '../../../shared-core/stash/supplier.ts';
import { basket, type BasketAnswer } from '../../../shared-core/to-buy/basket.ts';
import type { Basket } from '../../../shared-core/to-buy/basket-sums.ts';
import type { Gap } from '../../../shared-core/to-buy/gaps.ts';
import { layHere, onShelf } from '../../fixtures/small-workshop.ts';

export const thread: SellingUnit = { kind: 'spool', threadM: 500 };
export const pack = (pieceCount: number): SellingUnit => ({ kind: 'pack', pieceCount });

export function amountGap(itemId: string, amount: number, more: Partial<Gap> = {}): Gap {
  return {
    id: `plan ${itemId}`,
    planId: 'plan',
    slotId: itemId.replace(' item', ''),
    slotName: itemId.replace(' item', ''),
    itemId,
    isSeen: false,
    needs: { kind: 'amount', amount, marginAmount: 0, wantedLengthMm: null },
    ...more,
  };
}

/** Rectangles to cut, length x width in mm with their count. */
export function cutGap(
  itemId: string,
  panels: readonly (readonly [lengthMm: number, widthMm: number, count: number])[],
  more: Partial<Gap> = {},
): Gap {
  const shapes = panels.map(([lengthMm, widthMm, count], index) => ({
    pieceId: `${itemId} panel ${index}`,
    shapeId: 'panel',
    size: '40',
    name: 'panel',
    ring: ringFromPoints([
      { x: 0, y: 0 },
      { x: lengthMm, y: 0 },
      { x: lengthMm, y: widthMm },
      { x: 0, y: widthMm },
    ]),
    areaMm2: lengthMm * widthMm,
    count,
    mirroredCount: 0,
    turnsDeg: [0, 90, 180, 270],
  }));
  const areaMm2 = shapes.reduce((sum, shape) => sum + shape.areaMm2 * shape.count, 0);
  return {
    ...amountGap(itemId, 0),
    needs: {
      kind: 'cut',
      missing: { kind: 'shapes', slotId: itemId, shapes, areaMm2, basis: [] },
      lengthMm: 9_999,
      marginMm: 0,
      widthMm: 1,
      clearanceMm: 0,
    },
    ...more,
  };
}

export function withBreaks(of: Offer, ...breaks: PriceBreak[]): Offer {
  return { ...of, breaks };
}

export function supplier(name: string, deliveryMinor: number, freeFromMinor: number | null = null): Supplier {
  return { name, deliveryMinor, freeFromMinor, leadDays: null };
}

export async function bought(
  gaps: readonly Gap[],
  offers: readonly Offer[],
  suppliers: readonly Supplier[] = [],
  items: readonly Item[] = [],
): Promise<BasketAnswer> {
  const shelf = items.map((each) => onShelf(each));
  return basket({ gaps, shelf, offers, suppliers }, layHere, solveHere);
}

/** "offer x count", by the offer's own name. */
export function counts({ buys }: Basket): Record<string, number> {
  return Object.fromEntries(buys.map((buy) => [buy.offer.id, buy.unitCount]));
}
