import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { averageLoftMm, chamberOf, fillMassG, lensAreaMm2 } from '../../../shared-core/quilting/chambers.ts';

describe('chambers', () => {
  const spacing = fc.double({ min: 5, max: 400, noNaN: true });
  const share = fc.double({ min: 0, max: 0.5, noNaN: true });
  it('a half circle of rise on each side is a full circle', () => {
    expect(lensAreaMm2(60, 30)).toBeCloseTo(Math.PI * 30 ** 2, 6);
  });
  it('flat is nothing, and a box and a triangle are its bounds', () => {
    expect(lensAreaMm2(60, 0)).toBe(0);
    fc.assert(
      fc.property(spacing, share, (s, r) => {
        const areaMm2 = lensAreaMm2(s, s * r);
        expect(areaMm2).toBeLessThanOrEqual(2 * s * s * r + 1e-9);
        expect(areaMm2).toBeGreaterThanOrEqual(s * s * r - 1e-9);
      }),
    );
  });
  it('more rise is never less room, also where it is nearly flat', () => {
    fc.assert(
      fc.property(spacing, share, share, (s, a, b) => {
        expect(lensAreaMm2(s, s * Math.max(a, b))).toBeGreaterThanOrEqual(
          lensAreaMm2(s, s * Math.min(a, b)) * (1 - 1e-6),
        );
      }),
    );
    expect(lensAreaMm2(100, 0.0101) / lensAreaMm2(100, 0.00999)).toBeCloseTo(1.011, 3);
  });
  it('twice as wide and twice as high is four times the section', () => {
    fc.assert(
      fc.property(spacing, share, (s, r) => {
        expect(lensAreaMm2(2 * s, 2 * s * r)).toBeCloseTo(4 * lensAreaMm2(s, s * r), 6);
      }),
    );
    expect(averageLoftMm(80, 12)).toBeCloseTo(lensAreaMm2(80, 12) / 80, 9);
  });
  it('a channel of half the width rises half as high', () => {
    const channel = { fromMm: 0, toMm: 35, widthMm: 35, lengthMm: 400, areaMm2: 14000 };
    expect(chamberOf(channel, 70, 12).volumeCm3).toBeCloseTo((lensAreaMm2(35, 6) * 400) / 1000, 9);
  });
  it('a rise beyond a half circle, or no fill power, is refused', () => {
    expect(() => lensAreaMm2(60, 31)).toThrow(RangeError);
    expect(() => fillMassG(100, 0, 1.2)).toThrow(RangeError);
    expect(() => fillMassG(-1, 400, 1.2)).toThrow(RangeError);
    expect(() => fillMassG(100, 400, 0)).toThrow(RangeError);
  });
});
