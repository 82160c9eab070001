import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  roundMinor,
  shareMinor,
  showMoney,
  splitMinor,
  wholeShareMinor,
} from '../../../../shared-core/measure/money/money.ts';

const sumOf = (parts: readonly number[]) => parts.reduce((sum, part) => sum + part, 0);
const weights = fc
  .array(fc.oneof(fc.integer({ min: 0, max: 50_000 }), fc.double({ min: 0, max: 977, noNaN: true })), {
    minLength: 1,
    maxLength: 23,
  })
  .filter((list) => sumOf(list) > 1e-6);
const total = fc.integer({ min: -5_000_000, max: 900_000_000 });

describe('a price is split over the coats of a batch', () => {
  it('gives the odd cents to the largest remainders, the earlier coat on a tie', () => {
    expect(splitMinor(1000, [1, 1, 1])).toEqual([334, 333, 333]);
    expect(splitMinor(101, [1, 3])).toEqual([25, 76]);
    expect(splitMinor(5, [1, 1])).toEqual([3, 2]);
    expect(splitMinor(-5, [1, 1])).toEqual([-2, -3]);
  });
  it('always adds up to the price, to the cent', () => {
    fc.assert(
      fc.property(total, weights, (totalMinor, list) => {
        const parts = splitMinor(totalMinor, list);
        expect(parts.every(Number.isSafeInteger)).toBe(true);
        expect(sumOf(parts)).toBe(totalMinor);
      }),
    );
  });
  it('never moves a coat more than a cent from its exact share', () => {
    fc.assert(
      fc.property(total, weights, (totalMinor, list) => {
        const whole = sumOf(list);
        splitMinor(totalMinor, list).forEach((part, index) => {
          expect(Math.abs(part - (totalMinor * list[index]!) / whole)).toBeLessThan(1 + 1e-6);
        });
      }),
    );
  });
  it('charges nothing to a coat that uses nothing', () => {
    fc.assert(
      fc.property(total, weights, (totalMinor, list) => {
        const parts = splitMinor(totalMinor, [...list, 0]);
        expect(Math.abs(parts.at(-1)!)).toBe(0);
      }),
    );
  });
  it('refuses weights below 0 or with no sum', () => {
    expect(() => splitMinor(700, [0, 0])).toThrow(RangeError);
    expect(() => splitMinor(700, [])).toThrow(RangeError);
    expect(() => splitMinor(700, [3, -1])).toThrow(RangeError);
    expect(() => splitMinor(700, [3, Number.NaN])).toThrow(RangeError);
  });
});

describe('a part of a lot costs its share', () => {
  it('rounds once, half away from zero', () => {
    expect(shareMinor(4999, 1, 3)).toBe(1666);
    expect(shareMinor(25, 1, 10)).toBe(3);
    expect(shareMinor(-25, 1, 10)).toBe(-3);
    expect(roundMinor(-0.2)).toBe(0);
    expect(Object.is(roundMinor(-0.2), -0)).toBe(false);
  });
  it('costs all of the price for all of the lot, and more for more of it', () => {
    const price = fc.integer({ min: 0, max: 90_000_000 });
    const lot = fc.integer({ min: 1, max: 700_000 });
    fc.assert(
      fc.property(
        price,
        lot,
        fc.integer({ min: 0, max: 700_000 }),
        fc.nat(900),
        (priceMinor, whole, part, more) => {
          expect(shareMinor(priceMinor, whole, whole)).toBe(priceMinor);
          expect(shareMinor(priceMinor, part + more, whole)).toBeGreaterThanOrEqual(
            shareMinor(priceMinor, part, whole),
          );
          expect(
            Math.abs(shareMinor(priceMinor, part, whole) - (priceMinor * part) / whole),
          ).toBeLessThanOrEqual(0.5);
        },
      ),
    );
  });
  it('throws for a lot of nothing, and for what is no amount', () => {
    expect(() => shareMinor(300, 1, 0)).toThrow(RangeError);
    expect(() => shareMinor(300, 1, Number.NaN)).toThrow(RangeError);
    expect(() => roundMinor(Number.POSITIVE_INFINITY)).toThrow(RangeError);
    expect(() => roundMinor(1e17)).toThrow(RangeError);
  });
});

describe('money is shown with two places', () => {
  it.each([
    [0, '0.00 EUR'],
    [7, '0.07 EUR'],
    [-45, '-0.45 EUR'],
    [1234, '12.34 EUR'],
    [123_456_789, '1,234,567.89 EUR'],
    [-100_000, '-1,000.00 EUR'],
  ])('%d as %s', (amountMinor, shown) => {
    expect(showMoney(amountMinor, 'EUR')).toBe(shown);
  });
});

describe('part of a lot whose amounts are whole', () => {
  it('is exact where a product of floats no longer is', () => {
    // The exact share ends on .49999997, which a product of floats takes for a half.
    expect(wholeShareMinor(87_991_348_564, 7_310_501, 18_290_003)).toBe(35_170_078_521);
    expect(shareMinor(87_991_348_564, 7_310_501, 18_290_003)).toBe(35_170_078_522);
    expect(wholeShareMinor(25, 1, 10)).toBe(3);
    expect(wholeShareMinor(-25, 1, 10)).toBe(-3);
    expect(Object.is(wholeShareMinor(-1, 1, 10), 0)).toBe(true);
  });
  it('is never more than half a cent from the exact share, whatever its size', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -1e11, max: 1e11 }),
        fc.integer({ min: 0, max: 1e12 }),
        fc.integer({ min: 1, max: 1e12 }),
        (totalMinor, part, whole) => {
          fc.pre(Math.abs(totalMinor) * (part / whole) < 1e15);
          const share = wholeShareMinor(totalMinor, part, whole);
          const offBy = BigInt(share) * BigInt(whole) - BigInt(totalMinor) * BigInt(part);
          expect(2n * (offBy < 0n ? -offBy : offBy) <= BigInt(whole)).toBe(true);
        },
      ),
      { seed: 21 },
    );
  });
  it('refuses what is not whole', () => {
    expect(() => wholeShareMinor(100, 0.5, 2)).toThrow();
    expect(() => wholeShareMinor(100, 1, 0)).toThrow('cannot be shared');
  });
});
