import { describe, expect, it } from 'vitest';
import { lotPrices, pricedUnit } from '../../../shared-core/cost/unit-price.ts';
import { lot } from '../../fixtures/small-workshop.ts';

describe('what a purchase cost by the unit', () => {
  it('is by the metre for cloth received in millimetres, oldest purchase first', () => {
    const prices = lotPrices(
      [
        lot('taffeta', 'autumn', 7310.5, 0, 12_345, '2026-09-14'),
        lot('taffeta', 'spring', 20_000, 0, 26_000, '2026-03-02'),
      ],
      pricedUnit('cloth', 'metric'),
    );
    expect(prices.map(({ lot: { id }, unitMinor }) => [id, unitMinor])).toEqual([
      ['spring', 1300],
      ['autumn', 1689],
    ]);
    expect(prices[0]?.changeRatio).toBeNull();
    expect(prices[1]?.changeRatio).toBeCloseTo(0.299, 3);
  });

  it('is by the yard, the pound and the thousand yards in an imperial workshop', () => {
    const unitMinor = (kind: 'cloth' | 'fill' | 'thread' | 'needle', received: number) =>
      lotPrices([lot('any', 'one', received, 0, 5000)], pricedUnit(kind, 'imperial'))[0]?.unitMinor;
    expect(unitMinor('cloth', 9144)).toBe(500);
    expect(unitMinor('fill', 453.592)).toBe(5000);
    expect(unitMinor('thread', 457.2)).toBe(10_000);
    expect(unitMinor('needle', 20)).toBe(250);
  });

  it('after a gift no change is told', () => {
    const prices = lotPrices(
      [
        lot('any', 'gift', 10, 0, 0, '2026-01-05'),
        lot('any', 'bought', 10, 0, 730, '2026-02-05'),
        lot('any', 'dearer', 10, 0, 949, '2026-03-05'),
      ],
      pricedUnit('needle', 'metric'),
    );
    expect(prices.map(({ changeRatio }) => changeRatio)).toEqual([null, null, expect.closeTo(0.3, 9)]);
  });
});
