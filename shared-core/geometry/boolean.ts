/**
 * Booleans on rings, by clipper2-ts on integers of 1/1000 mm.
 * Not for the engine's inner loop, and not the referee of a lay (lay/check/check.ts calls the library itself).
 */
import { Clipper, FillRule } from 'clipper2-ts';
import { type Ring, ringAreaMm2 } from './ring.ts';

export const unitsPerMm = 1000;

export function toPath(ring: Ring) {
  const path = [];
  for (let i = 0; i < ring.length; i += 2) {
    path.push({ x: Math.round(ring[i]! * unitsPerMm), y: Math.round(ring[i + 1]! * unitsPerMm) });
  }
  return path;
}

export function fromPath(path: readonly { x: number; y: number }[]): Ring {
  const ring = new Float64Array(path.length * 2);
  path.forEach((point, index) => {
    ring[index * 2] = point.x / unitsPerMm;
    ring[index * 2 + 1] = point.y / unitsPerMm;
  });
  return ring;
}

/**
 * The outer boundary of what a ring winds round counter-clockwise at least once: loops that run backwards
 * (as an offset makes inside a sharp corner) fall away. The largest ring is kept, counter-clockwise,
 * on a grid of 1/1000 mm. Null when nothing is left.
 */
export function ringWithoutLoops(ring: Ring): Ring | null {
  const solution = Clipper.union([toPath(ring)], FillRule.Positive);
  let largest: Ring | null = null;
  for (const path of solution) {
    const candidate = fromPath(path);
    if (!largest || ringAreaMm2(candidate) > ringAreaMm2(largest)) largest = candidate;
  }
  return largest && ringAreaMm2(largest) > 0 ? largest : null;
}

/** How much of a ring lies outside another, mm2. Both counter-clockwise, in one frame. */
export function outsideMm2(ring: Ring, outer: Ring): number {
  const rest = Clipper.difference([toPath(ring)], [toPath(outer)], FillRule.NonZero);
  return Math.abs(rest.reduce((sum, path) => sum + ringAreaMm2(fromPath(path)), 0));
}

/** What is left of rings when another is taken away: outer boundaries counter-clockwise, holes clockwise, on a grid of 1/1000 mm. */
export function ringsWithout(rings: readonly Ring[], taken: Ring): Ring[] {
  return Clipper.difference(rings.map(toPath), [toPath(taken)], FillRule.NonZero).map(fromPath);
}
