import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ringAreaMm2, ringMoved, ringTurned } from '../../../shared-core/geometry/ring.ts';
import { outsideMm2 } from '../../../shared-core/geometry/boolean.ts';
import type { LayJob, LayResult } from '../../../shared-core/lay/job.ts';
import { restRectangles } from '../../../shared-core/lay/rest.ts';

const box = (x: number, y: number, widthX: number, widthY: number) =>
  Float64Array.from([x, y, x + widthX, y, x + widthX, y + widthY, x, y + widthY]);

function laid(
  shapes: readonly Float64Array[],
  widthMm: number,
  places: readonly { shape: number; x: number; y: number; turnDeg?: number; mirrored?: boolean }[],
  flaws: LayJob['lengths'][number]['flaws'] = [],
) {
  const job: LayJob = {
    shapes: shapes.map((ring, index) => ({
      id: `shape ${index}`,
      ring,
      count: 1,
      mirroredCount: 0,
      turnsDeg: [0, 180],
    })),
    lengths: [{ id: 'roll', widthMm, lengthMm: 9000, flaws }],
    clearanceMm: 0,
    spread: 'open',
    repeat: null,
    seed: 1,
  };
  const placements = places.map((place) => ({
    length: 0,
    turnDeg: 0,
    mirrored: false,
    onFold: false,
    ...place,
  }));
  return { job, result: { placements } as unknown as LayResult };
}

describe('what a lay leaves beside its pieces', () => {
  test('is the strip beside a piece and what is left above it, largest first', () => {
    const { job, result } = laid([box(0, 0, 1200, 900)], 1450, [{ shape: 0, x: 0, y: 0 }]);
    expect(restRectangles(job, result, 0, 1700)).toEqual([
      { x: 0, y: 900, widthX: 1700, widthY: 550 },
      { x: 1200, y: 0, widthX: 500, widthY: 900 },
    ]);
  });

  test('keeps clear of flaws and of what is not cut off', () => {
    const { job, result } = laid(
      [box(0, 0, 400, 1450)],
      1450,
      [{ shape: 0, x: 0, y: 0 }],
      [{ x: 800, y: 0, widthX: 20, widthY: 1450 }],
    );
    expect(restRectangles(job, result, 0, 1000)).toEqual([
      { x: 400, y: 0, widthX: 400, widthY: 1450 },
      { x: 820, y: 0, widthX: 180, widthY: 1450 },
    ]);
    expect(restRectangles(job, result, 0, 900)).toHaveLength(1);
  });

  test('is nothing where the rests are too narrow to be of use', () => {
    const { job, result } = laid([box(0, 0, 1000, 1310)], 1450, [{ shape: 0, x: 0, y: 0 }]);
    expect(restRectangles(job, result, 0, 1000)).toEqual([]);
  });

  test('never touches a piece or another rest, for any lay', () => {
    const triangle = (a: number, b: number, skew: number) => Float64Array.from([0, 0, a, skew, a * 0.4, b]);
    const place = fc.record({
      a: fc.integer({ min: 90, max: 900 }),
      b: fc.integer({ min: 120, max: 700 }),
      skew: fc.integer({ min: -80, max: 80 }),
      x: fc.integer({ min: 0, max: 2500 }),
      y: fc.integer({ min: 0, max: 1200 }),
      turnDeg: fc.constantFrom(0, 90, 180, 270),
      mirrored: fc.boolean(),
    });
    fc.assert(
      fc.property(fc.array(place, { minLength: 1, maxLength: 9 }), (places) => {
        const { job, result } = laid(
          places.map(({ a, b, skew }) => triangle(a, b, skew)),
          1470,
          places.map(({ x, y, turnDeg, mirrored }, shape) => ({ shape, x, y, turnDeg, mirrored })),
        );
        const pieces = places.map(({ a, b, skew, x, y, turnDeg, mirrored }) =>
          ringMoved(ringTurned(triangle(a, b, skew), turnDeg, mirrored), x, y),
        );
        const rests = restRectangles(job, result, 0, 3000);
        for (const [index, rest] of rests.entries()) {
          const ring = box(rest.x, rest.y, rest.widthX, rest.widthY);
          const area = ringAreaMm2(ring);
          expect(Math.min(rest.widthX, rest.widthY)).toBeGreaterThanOrEqual(150);
          expect(area).toBeGreaterThanOrEqual(60_000);
          expect(rest.x + rest.widthX).toBeLessThanOrEqual(3000);
          expect(rest.y + rest.widthY).toBeLessThanOrEqual(1470);
          const others = rests.slice(0, index).map((each) => box(each.x, each.y, each.widthX, each.widthY));
          for (const other of [...pieces, ...others]) expect(area - outsideMm2(ring, other)).toBeLessThan(1);
        }
      }),
      { numRuns: 150, seed: 907 },
    );
  });
});
