/** A small list to buy: three things of two suppliers, with names that are hard on files. */
import type { SellingUnit } from '../../../shared-core/stash/offer.ts';
import type { ToBuyLine } from '../../../shared-core/to-buy/to-buy.ts';
import { item, offer, onShelf, plan, slot, toBuyList } from '../../fixtures/small-workshop.ts';

export const metric = { system: 'metric', currency: 'EUR' } as const;

export function line(
  itemId: string,
  supplier: string,
  unit: SellingUnit,
  unitCount: number,
  priceEachMinor: number,
  slotIds: readonly string[] = [itemId.replace(' item', '')],
): ToBuyLine {
  return {
    itemId: itemId as ToBuyLine['itemId'],
    slotIds,
    offer: offer(itemId, `${itemId} of ${supplier}`, unit, priceEachMinor, supplier),
    unitCount,
    boughtAmount: 0,
    usedAmount: 0,
    priceMinor: unitCount * priceEachMinor,
    leftAreaMm2: null,
    alternatives: [],
  };
}

export const coat = plan({
  slots: [
    slot('shell', 'cloth'),
    slot('facing', 'cloth'),
    slot('thread', 'thread'),
    slot('cord', 'fastening'),
  ],
});
export const shelf = [
  onShelf(item('cloth', 'shell item')),
  onShelf({ ...item('thread', 'thread item'), name: '=HYPERLINK("http://127.0.0.1/","thread")' }),
  onShelf({ ...item('fastening', 'cord item'), name: 'Cord, "springy"\n5 mm' }),
];
export const sources = { plan: coat, shelf };

export const byTenth: SellingUnit = { kind: 'by length', widthMm: 1473, stepMm: 100, leastMm: 500 };
export const spool: SellingUnit = { kind: 'spool', threadM: 1000 };

export const list = toBuyList([
  line('shell item', 'Tallow Lane', byTenth, 43, 115, ['shell', 'facing']),
  line('thread item', 'Fernlow, "Trimmings"', spool, 2, 585),
  line('cord item', 'Tallow Lane', { kind: 'each', lengthMm: null }, 1, 70),
]);
