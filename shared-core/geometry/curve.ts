/** Cubic curves as chains of points, within a stated tolerance. */
import type { Point } from './ring.ts';

/** Point of a cubic at parameter t, 0 to 1. */
export function cubicPoint(from: Point, control1: Point, control2: Point, to: Point, t: number): Point {
  const u = 1 - t;
  const a = u * u * u;
  const b = 3 * u * u * t;
  const c = 3 * u * t * t;
  const d = t * t * t;
  return {
    x: a * from.x + b * control1.x + c * control2.x + d * to.x,
    y: a * from.y + b * control1.y + c * control2.y + d * to.y,
  };
}

/** More chords than any curve of 50 m needs within 0.01 mm; beyond, the tolerance gives way. */
const maxChords = 2000;

/**
 * How many chords keep within toleranceMm of a cubic, at most 2,000.
 * Steps are even in t; their number follows from the second differences of the control points, whose
 * largest bounds the distance: d <= max|B''| / (8 n^2) with max|B''| <= 6 max(|P0 - 2 P1 + P2|, |P1 - 2 P2 + P3|).
 */
export function cubicChordCount(
  from: Point,
  control1: Point,
  control2: Point,
  to: Point,
  toleranceMm: number,
): number {
  const bend = Math.max(
    Math.hypot(from.x - 2 * control1.x + control2.x, from.y - 2 * control1.y + control2.y),
    Math.hypot(control1.x - 2 * control2.x + to.x, control1.y - 2 * control2.y + to.y),
  );
  // What is not a number has no bend to follow.
  return Math.min(maxChords, Math.max(1, Math.ceil(Math.sqrt((0.75 * bend) / toleranceMm)) || 1));
}

/** Points along a cubic after `from`, ending in `to`; chords within toleranceMm, as cubicChordCount says. */
export function cubicChords(
  from: Point,
  control1: Point,
  control2: Point,
  to: Point,
  toleranceMm: number,
): Point[] {
  const count = cubicChordCount(from, control1, control2, to, toleranceMm);
  const points: Point[] = [];
  for (let i = 1; i < count; i++) points.push(cubicPoint(from, control1, control2, to, i / count));
  points.push(to);
  return points;
}

/** Both halves of a cubic cut at t, as control points. */
export function cubicSplit(
  from: Point,
  control1: Point,
  control2: Point,
  to: Point,
  t: number,
): readonly [readonly [Point, Point, Point, Point], readonly [Point, Point, Point, Point]] {
  const between = (a: Point, b: Point): Point => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
  const ab = between(from, control1);
  const bc = between(control1, control2);
  const cd = between(control2, to);
  const abc = between(ab, bc);
  const bcd = between(bc, cd);
  const middle = between(abc, bcd);
  return [
    [from, ab, abc, middle],
    [middle, bcd, cd, to],
  ];
}

/** Length of a chain of points in mm. */
export function chainLengthMm(points: readonly Point[]): number {
  let total = 0;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!;
    const b = points[i]!;
    total += Math.hypot(b.x - a.x, b.y - a.y);
  }
  return total;
}
