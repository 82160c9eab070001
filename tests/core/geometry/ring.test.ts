import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  ringAreaMm2,
  ringBox,
  ringCounterClockwise,
  ringFromPoints,
  ringMoved,
  ringPerimeterMm,
  ringPoints,
  ringReversed,
  ringTurned,
  turnCosSin,
} from '../../../shared-core/geometry/ring.ts';

const triangle = Float64Array.of(0, 0, 40, 0, 0, 9);

describe('a ring', () => {
  it('of 40 by 9 mm and a right angle has 180 mm2 and 90 mm round', () => {
    expect(ringAreaMm2(triangle)).toBe(180);
    expect(ringPerimeterMm(triangle)).toBe(40 + 9 + 41);
    expect(ringBox(triangle)).toEqual({ minX: 0, minY: 0, maxX: 40, maxY: 9 });
  });

  it('of two points has no area', () => {
    expect(ringAreaMm2(Float64Array.of(3, 4, 50, 60))).toBe(0);
  });

  it('drawn clockwise has a negative area and is turned round', () => {
    expect(ringAreaMm2(ringReversed(triangle))).toBe(-180);
    expect(ringAreaMm2(ringCounterClockwise(ringReversed(triangle)))).toBe(180);
    expect(ringCounterClockwise(triangle)).toBe(triangle);
  });

  it('turned a quarter counter-clockwise puts what lay along the cloth across it', () => {
    expect([...ringTurned(triangle, 90, false)].map((value) => value + 0)).toEqual([0, 0, 0, 40, -9, 0]);
  });

  it('mirrored lies on the other side of its grain line, still counter-clockwise', () => {
    const mirrored = ringTurned(triangle, 0, true);
    expect(ringAreaMm2(mirrored)).toBe(180);
    expect(ringBox(mirrored)).toMatchObject({ minY: -9, maxX: 40 });
  });

  const number = fc.integer({ min: -900, max: 900 });
  const anyRing = fc
    .array(fc.record({ x: number, y: number }), { minLength: 3, maxLength: 9 })
    .map(ringFromPoints);

  it('keeps area and length in four turns, mirrored and moved', () => {
    fc.assert(
      fc.property(
        anyRing,
        fc.constantFrom(0, 90, 180, 270, -90, 450),
        fc.boolean(),
        number,
        (ring, turnDeg, mirrored, by) => {
          const placed = ringMoved(ringTurned(ring, turnDeg, mirrored), by, -3 * by);
          expect(ringAreaMm2(placed)).toBe(ringAreaMm2(ring));
          expect(ringPerimeterMm(placed)).toBeCloseTo(ringPerimeterMm(ring), 8);
        },
      ),
    );
  });

  it('turned by any four quarters is itself again, to the last digit', () => {
    fc.assert(
      fc.property(anyRing, (ring) => {
        const back = [90, 90, 90, 90].reduce((turned, turnDeg) => ringTurned(turned, turnDeg, false), ring);
        expect([...back].map((value) => value + 0)).toEqual([...ring].map((value) => value + 0));
      }),
    );
  });

  it('is the same after a way through points', () => {
    expect(ringFromPoints(ringPoints(triangle))).toEqual(triangle);
  });

  it('turns by 30 degrees as a compass does', () => {
    const [cos, sin] = turnCosSin(30);
    expect(cos).toBeCloseTo(Math.sqrt(3) / 2, 12);
    expect(sin).toBeCloseTo(0.5, 12);
    expect(turnCosSin(-270)).toEqual([0, 1]);
  });
});
