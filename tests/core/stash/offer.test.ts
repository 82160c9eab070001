import { expect, test } from 'vitest';
import { isOldPrice, leastUnits, offerPriceMinor, priceAgeDays } from '../../../shared-core/stash/offer.ts';
import { deliveryMinor } from '../../../shared-core/stash/supplier.ts';
import { offer } from '../../fixtures/small-workshop.ts';

const spool = {
  ...offer('t', 'o', { kind: 'spool', threadM: 500 }, 420),
  breaks: [
    { fromCount: 5, priceMinor: 390 },
    { fromCount: 12, priceMinor: 345 },
  ],
};

test('all units have the price of the break that their number reaches', () => {
  expect([1, 4, 5, 11, 12].map((count) => offerPriceMinor(spool, count))).toEqual([
    420, 1680, 1950, 4290, 4140,
  ]);
});

test('the least length and the least count are both kept', () => {
  const byLength = offer('c', 'o', { kind: 'by length', stepMm: 114.3, widthMm: 1470, leastMm: 457.2 }, 1);
  expect([leastUnits(byLength), leastUnits({ ...spool, leastCount: 3 }), leastUnits(spool)]).toEqual([
    4, 3, 1,
  ]);
});

test('a price is old after 180 days, not on the 180th', () => {
  const of = { pricedOn: '2026-03-02' };
  expect(priceAgeDays(of, '2026-08-29')).toBe(180);
  expect([isOldPrice(of, '2026-08-29'), isOldPrice(of, '2026-08-30')]).toEqual([false, true]);
});

test('a delivery is free from its sum on, and nothing where nobody knows of it', () => {
  const tallow = { name: 'Tallow', deliveryMinor: 390, freeFromMinor: 4_000, leadDays: 5 };
  expect([deliveryMinor(tallow, 3_999), deliveryMinor(tallow, 4_000), deliveryMinor(undefined, 10)]).toEqual([
    390, 0, 0,
  ]);
});
