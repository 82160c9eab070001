import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  arcRatio,
  lossRatio,
  takeUpAlongLines,
  takeUpOverLines,
  takeUpRatio,
} from '../../../shared-core/quilting/take-up.ts';

describe('take-up', () => {
  it('flat cloth takes up nothing', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 500, noNaN: true }), (s) => {
        expect(takeUpRatio(s, 0)).toBe(0);
      }),
    );
  });
  it('more rise takes up more, wider spacing less', () => {
    const rise = fc.double({ min: 0.01, max: 20, noNaN: true });
    const spacing = fc.double({ min: 40, max: 300, noNaN: true });
    fc.assert(
      fc.property(rise, rise, spacing, spacing, (a, b, s, t) => {
        expect(takeUpRatio(s, Math.max(a, b))).toBeGreaterThanOrEqual(takeUpRatio(s, Math.min(a, b)) - 1e-9);
        expect(takeUpRatio(Math.max(s, t), a)).toBeLessThanOrEqual(takeUpRatio(Math.min(s, t), a) + 1e-9);
      }),
    );
    expect(takeUpRatio(60, 15)).toBeGreaterThan(takeUpRatio(60, 10) * 1.5);
  });
  it('a loft too great for the lines counts as a half circle', () => {
    expect(arcRatio(60, 70)).toBeCloseTo(Math.PI / 2 - 1, 9);
  });
  it('over the lines it is the arc, and never less than the stitches pull in', () => {
    expect(takeUpOverLines(60, 15).ratio).toBe(takeUpRatio(60, 15));
    expect(takeUpOverLines(60, 15).maxRatio).toBe(takeUpRatio(60, 15));
    expect(takeUpOverLines(60, 1)).toEqual({ ratio: 0.025, minRatio: 0.01, maxRatio: 0.05 });
    expect(takeUpAlongLines).toEqual(takeUpOverLines(60, 0));
  });
  it('what is cut larger by the take-up is the finished size after the loss', () => {
    expect((1 + takeUpRatio(60, 15)) * (1 - lossRatio(takeUpRatio(60, 15)))).toBeCloseTo(1, 12);
  });
});
