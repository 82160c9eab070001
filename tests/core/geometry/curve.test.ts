import fc from 'fast-check';
import { expect, it } from 'vitest';
import { chainLengthMm, cubicChords, cubicPoint, cubicSplit } from '../../../shared-core/geometry/curve.ts';
import type { Point } from '../../../shared-core/geometry/ring.ts';

const coordinate = fc.double({ min: -600, max: 600, noNaN: true });
const point = fc.record({ x: coordinate, y: coordinate });
const cubic = fc.tuple(point, point, point, point);

/** De Casteljau by hand, as a second way to the same point. */
function byHalving(points: readonly Point[], t: number): Point {
  if (points.length === 1) return points[0]!;
  const next = points.slice(1).map((p, i) => ({
    x: points[i]!.x + (p.x - points[i]!.x) * t,
    y: points[i]!.y + (p.y - points[i]!.y) * t,
  }));
  return byHalving(next, t);
}

function distanceToSegment(p: Point, a: Point, b: Point): number {
  const lengthSquared = (b.x - a.x) ** 2 + (b.y - a.y) ** 2;
  const t =
    lengthSquared === 0
      ? 0
      : Math.min(1, Math.max(0, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / lengthSquared));
  return Math.hypot(p.x - a.x - (b.x - a.x) * t, p.y - a.y - (b.y - a.y) * t);
}

it('a curve drawn as chords is never further off than promised', () => {
  fc.assert(
    fc.property(cubic, fc.constantFrom(0.05, 0.2, 3), ([a, b, c, d], toleranceMm) => {
      const chain = [a, ...cubicChords(a, b, c, d, toleranceMm)];
      for (let i = 0; i <= 200; i++) {
        const on = cubicPoint(a, b, c, d, i / 200);
        const nearest = Math.min(
          ...chain.slice(1).map((to, index) => distanceToSegment(on, chain[index]!, to)),
        );
        expect(nearest).toBeLessThanOrEqual(toleranceMm + 1e-9);
      }
    }),
    { numRuns: 60, seed: 1889 },
  );
});

it('a curve ends where it was drawn to', () => {
  const to = { x: 90, y: -13 };
  expect(cubicChords({ x: 0, y: 0 }, { x: 10, y: 70 }, { x: 60, y: 60 }, to, 0.2).at(-1)).toEqual(to);
});

it('a straight curve needs one chord', () => {
  expect(cubicChords({ x: 0, y: 0 }, { x: 30, y: 10 }, { x: 60, y: 20 }, { x: 90, y: 30 }, 0.2)).toHaveLength(
    1,
  );
});

it('a point of the curve is the same by halving', () => {
  fc.assert(
    fc.property(cubic, fc.double({ min: 0, max: 1, noNaN: true }), ([a, b, c, d], t) => {
      const one = cubicPoint(a, b, c, d, t);
      const other = byHalving([a, b, c, d], t);
      expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeLessThan(1e-9);
    }),
  );
});

it('both halves of a cut curve lie on it', () => {
  fc.assert(
    fc.property(
      cubic,
      fc.double({ min: 0.05, max: 0.95, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      ([a, b, c, d], t, u) => {
        const [first, second] = cubicSplit(a, b, c, d, t);
        const low = cubicPoint(...first, u);
        const lowExpected = cubicPoint(a, b, c, d, u * t);
        const high = cubicPoint(...second, u);
        const highExpected = cubicPoint(a, b, c, d, t + u * (1 - t));
        expect(Math.hypot(low.x - lowExpected.x, low.y - lowExpected.y)).toBeLessThan(1e-8);
        expect(Math.hypot(high.x - highExpected.x, high.y - highExpected.y)).toBeLessThan(1e-8);
      },
    ),
  );
});

it('a quarter circle of radius 130 mm is 204.2 mm long', () => {
  const k = 130 * 0.5522847;
  const chain = [
    { x: 130, y: 0 },
    ...cubicChords({ x: 130, y: 0 }, { x: 130, y: k }, { x: k, y: 130 }, { x: 0, y: 130 }, 0.001),
  ];
  // A cubic's quarter circle is 0.03 % off at most.
  expect(Math.abs(chainLengthMm(chain) - (Math.PI / 2) * 130)).toBeLessThan(0.06);
});
