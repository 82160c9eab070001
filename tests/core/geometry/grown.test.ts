import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outsideMm2 } from '../../../shared-core/geometry/boolean.ts';
import { ringGrown } from '../../../shared-core/geometry/grown.ts';
import { ringAreaMm2 } from '../../../shared-core/geometry/ring.ts';

const rectangle = (length: number, width: number) =>
  Float64Array.from([0, 0, length, 0, length, width, 0, width]);

describe('a ring grown all round', () => {
  it('a rectangle becomes larger by twice the spare each way, corners and all', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 900 }),
        fc.integer({ min: 5, max: 900 }),
        fc.integer({ min: 1, max: 80 }),
        (l, w, by) => {
          expect(ringAreaMm2(ringGrown(rectangle(l, w), by))).toBeCloseTo((l + 2 * by) * (w + 2 * by), 6);
        },
      ),
      { seed: 1701 },
    );
  });
  it('by nothing it is itself, and it holds what it grew from', () => {
    const wedge = Float64Array.from([0, 0, 620, 90, 410, 300, 60, 240]);
    expect(ringGrown(wedge, 0)).toBe(wedge);
    expect(outsideMm2(wedge, ringGrown(wedge, 13))).toBe(0);
    expect(ringAreaMm2(ringGrown(wedge, 13))).toBeGreaterThan(ringAreaMm2(wedge));
  });
  it('a sharp corner reaches no further than twice the spare', () => {
    const needle = Float64Array.from([0, 0, 600, 20, 0, 40]);
    const grown = ringGrown(needle, 25);
    const tipMm = Math.max(...Array.from(grown).filter((_, index) => index % 2 === 0));
    expect(tipMm).toBeLessThanOrEqual(650.01);
    expect(tipMm).toBeGreaterThan(620);
  });
  it('a notch narrower than two spares is cut straight over, and a closed one leaves no hole', () => {
    const notched = Float64Array.from([0, 0, 300, 0, 300, 90, 310, 95, 310, 105, 300, 110, 300, 200, 0, 200]);
    const keyhole = Float64Array.from([
      0, 0, 400, 0, 400, 195, 300, 195, 300, 100, 100, 100, 100, 300, 300, 300, 300, 205, 400, 205, 400, 400,
      0, 400,
    ]);
    expect(ringAreaMm2(ringGrown(notched, 30))).toBeGreaterThan(360 * 260);
    expect(ringAreaMm2(ringGrown(keyhole, 10))).toBeCloseTo(420 * 420, 3);
  });
  it('not by less than nothing', () => {
    expect(() => ringGrown(rectangle(10, 10), -1)).toThrow(RangeError);
  });
});
