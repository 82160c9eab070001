import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roundUpToStep, stepsUp } from '../../../shared-core/measure/round-up.ts';

const eighthYardMm = 914.4 / 8;

describe('cloth is sold in steps', () => {
  it("and a float's dust buys no further step", () => {
    expect(stepsUp(4.5 * 25.4 * 3, eighthYardMm)).toBe(3);
    expect(stepsUp(0.1 + 0.2, 0.1)).toBe(3);
    expect(stepsUp(700 * 1.1, 110)).toBe(7);
    expect(stepsUp(0, eighthYardMm)).toBe(0);
  });
  it('but a tenth of a millimetre does', () => {
    expect(stepsUp(3 * eighthYardMm + 0.1, eighthYardMm)).toBe(4);
    expect(stepsUp(0.1, eighthYardMm)).toBe(1);
    expect(roundUpToStep(1471, 100)).toBe(1500);
  });
  it('by as few steps as carry the length', () => {
    const step = fc.double({ min: 0.1, max: 2000, noNaN: true });
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e5, noNaN: true }), step, (valueMm, stepMm) => {
        const soldMm = roundUpToStep(valueMm, stepMm);
        const dustMm = 1e-8 * stepMm + 1e-11 * valueMm;
        expect(soldMm).toBeGreaterThanOrEqual(valueMm - dustMm);
        expect(soldMm - stepMm).toBeLessThan(valueMm);
      }),
    );
  });
  it('and whole steps stay as they are, however they were added up', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 400 }),
        fc.constantFrom(eighthYardMm, 25.4, 100, 914.4 / 4, 63.5),
        (count, stepMm) => {
          let addedMm = 0;
          for (let i = 0; i < count; i++) addedMm += stepMm;
          expect(stepsUp(addedMm, stepMm)).toBe(count);
          expect(stepsUp(roundUpToStep(addedMm, stepMm), stepMm)).toBe(count);
        },
      ),
    );
  });
  it('never of nothing, and never for what is no length', () => {
    expect(() => stepsUp(5, 0)).toThrow(RangeError);
    expect(() => stepsUp(5, -3)).toThrow(RangeError);
    expect(() => stepsUp(-5, 3)).toThrow(RangeError);
    expect(() => stepsUp(Number.NaN, 3)).toThrow(RangeError);
  });
});
