/** Places on chains of points: at a distance along one, and how far another point lies from it. */
import type { Point } from './ring.ts';

/** The point atMm along an open chain of one point or more; beyond its end, the end. */
export function chainPointAt(points: readonly Point[], atMm: number): Point {
  let leftMm = atMm;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1]!;
    const b = points[i]!;
    const stepMm = Math.hypot(b.x - a.x, b.y - a.y);
    if (leftMm <= stepMm) {
      const share = stepMm === 0 ? 0 : leftMm / stepMm;
      return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
    }
    leftMm -= stepMm;
  }
  return points.at(-1)!;
}

/** Least distance of a point from an open chain of two points or more, mm. */
export function chainDistanceMm(point: Point, chain: readonly Point[]): number {
  let min = Infinity;
  for (let i = 1; i < chain.length; i++) {
    const a = chain[i - 1]!;
    const b = chain[i]!;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const squared = dx * dx + dy * dy;
    const share = squared === 0 ? 0 : ((point.x - a.x) * dx + (point.y - a.y) * dy) / squared;
    const t = Math.min(1, Math.max(0, share));
    min = Math.min(min, Math.hypot(point.x - a.x - dx * t, point.y - a.y - dy * t));
  }
  return min;
}
