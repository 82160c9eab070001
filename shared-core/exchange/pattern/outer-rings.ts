/** Which closed lines of a drawing are outlines: those that lie in no other. */
import { say } from '../../wording/say.ts';
import { type Box, type Point, type Ring, ringAreaMm2, ringBox } from '../../geometry/ring.ts';
import { type DrawnPath, isInside, pathChordCount, pathRing } from './drawn.ts';
import { BeyondLimit, type ReadMeter } from '../read-meter.ts';

export interface OuterRing {
  readonly path: DrawnPath;
  readonly ring: Ring;
}

/**
 * Of closed paths, those that lie in no other, in their order. The largest are looked at first, so each is held against
 * outlines alone and never against all; more outlines than maxCount throw BeyondLimit.
 */
export function outerRings(
  paths: readonly DrawnPath[],
  tolerance: number,
  maxCount: number,
  meter: ReadMeter,
): OuterRing[] {
  const rings = paths.map((path) => {
    meter.chords(pathChordCount(path, tolerance), say('outer-rings.line', { line: path.line }));
    const ring = pathRing(path, tolerance);
    return { path, ring, box: ringBox(ring), area: Math.abs(ringAreaMm2(ring)) };
  });
  const outer: (typeof rings)[number][] = [];
  for (const each of rings.toSorted((a, b) => b.area - a.area)) {
    const { start, line } = each.path;
    const isWithin = outer.some(({ ring, box }) => {
      if (!isInBox(box, start)) return false;
      meter.steps(ring.length / 2, say('outer-rings.line', { line }));
      return isInside(ring, start);
    });
    meter.steps(outer.length, say('outer-rings.line', { line }));
    if (isWithin) continue;
    if (outer.length === maxCount)
      throw new BeyondLimit(
        say('outer-rings.the-file'),
        say('outer-rings.has-more-than-the-pieces-that', { maxCount }),
      );
    outer.push(each);
  }
  const kept = new Set(outer);
  return rings.filter((each) => kept.has(each));
}

function isInBox(box: Box, { x, y }: Point): boolean {
  return x >= box.minX && x <= box.maxX && y >= box.minY && y <= box.maxY;
}
