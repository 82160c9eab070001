import fc from 'fast-check';
import { expect, it } from 'vitest';
import { crossingSides } from '../../../shared-core/geometry/crossing.ts';

const ring = (...numbers: number[]) => Float64Array.from(numbers);

it('a plain four-sided piece does not cross itself', () => {
  expect(crossingSides(ring(0, 0, 70, 5, 64, 31, -3, 22))).toBeNull();
});

it('a bow tie crosses, and both sides are named', () => {
  expect(crossingSides(ring(0, 0, 50, 40, 50, 0, 0, 30))).toEqual([0, 2]);
});

it('a corner that touches another side from inside counts', () => {
  expect(crossingSides(ring(0, 0, 90, 0, 90, 60, 45, 0, 0, 60))).not.toBeNull();
});

it('two sides that lie on each other count, though they do not cross', () => {
  expect(crossingSides(ring(0, 0, 80, 0, 80, 40, 60, 40, 60, 0, 20, 0, 20, 40, 0, 40))).not.toBeNull();
});

it('a side that runs back over the one before it counts', () => {
  expect(crossingSides(ring(0, 0, 80, 0, 30, 0, 30, 40))).not.toBeNull();
});

it('three points in one line double back', () => {
  expect(crossingSides(ring(0, 0, 80, 0, 30, 0))).not.toBeNull();
  expect(crossingSides(ring(30, 0, 0, 0, 80, 0))).not.toBeNull();
});

it('finds a crossing exactly when a plain comparison of every pair does', () => {
  const grid = fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 9 }));
  let crossed = 0;
  let simple = 0;
  fc.assert(
    fc.property(fc.uniqueArray(grid, { minLength: 4, maxLength: 7, selector: String }), (points) => {
      const expected = points.some((_, i) => points.some((_, j) => i < j && pairMeets(points, i, j)));
      if (expected) crossed++;
      else simple++;
      expect(crossingSides(Float64Array.from(points.flat())) !== null).toBe(expected);
    }),
    { numRuns: 2000, seed: 1889 },
  );
  expect(Math.min(crossed, simple)).toBeGreaterThan(50);
});

type Grid = readonly (readonly [number, number])[];

/** Exact on whole numbers: sides as parametric lines, solved by Cramer's rule without dividing. */
function pairMeets(points: Grid, i: number, j: number): boolean {
  const count = points.length;
  const [p, p2] = [points[i]!, points[(i + 1) % count]!];
  const [q, q2] = [points[j]!, points[(j + 1) % count]!];
  const r = [p2[0] - p[0], p2[1] - p[1]] as const;
  const s = [q2[0] - q[0], q2[1] - q[1]] as const;
  const w = [q[0] - p[0], q[1] - p[1]] as const;
  const det = r[0] * s[1] - r[1] * s[0];
  const adjacent = j === i + 1 || (i === 0 && j === count - 1);
  if (det === 0) {
    if (w[0] * r[1] - w[1] * r[0] !== 0) return false;
    const along = (point: readonly [number, number]) => (point[0] - p[0]) * r[0] + (point[1] - p[1]) * r[1];
    const low = Math.max(0, Math.min(along(q), along(q2)));
    const high = Math.min(r[0] ** 2 + r[1] ** 2, Math.max(along(q), along(q2)));
    return adjacent ? low < high : low <= high;
  }
  if (adjacent) return false;
  const t = (w[0] * s[1] - w[1] * s[0]) * Math.sign(det);
  const u = (w[0] * r[1] - w[1] * r[0]) * Math.sign(det);
  return t >= 0 && u >= 0 && t <= Math.abs(det) && u <= Math.abs(det);
}
