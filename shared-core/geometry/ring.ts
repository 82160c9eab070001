/**
 * Conventions of all geometry here, said once:
 * x runs along the cloth (its length), y across it (its width); lengths in mm; angles in degrees,
 * counter-clockwise, and only the multiples of 90 that cloth allows stay exact.
 * A ring is a flat Float64Array (x0, y0, x1, y1, ...), open (the first point is not repeated),
 * counter-clockwise, without crossings. Outlines that people edit are { x, y } points (plan/model/outline.ts);
 * rings are for computing and pass to a worker whole.
 */
import { remembered } from './remembered.ts';

export type Ring = Float64Array;

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Smallest box round a ring: x and y of its lower left and upper right corners, mm. */
export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function ringFromPoints(points: readonly Point[]): Ring {
  const ring = new Float64Array(points.length * 2);
  points.forEach((point, index) => {
    ring[index * 2] = point.x;
    ring[index * 2 + 1] = point.y;
  });
  return ring;
}

export function ringPoints(ring: Ring): Point[] {
  const points: Point[] = [];
  for (let i = 0; i < ring.length; i += 2) points.push({ x: ring[i]!, y: ring[i + 1]! });
  return points;
}

/** Signed area in mm2, above 0 when counter-clockwise. */
export function ringAreaMm2(ring: Ring): number {
  const count = ring.length;
  if (count < 6) return 0;
  let twice = 0;
  let previousX = ring[count - 2]!;
  let previousY = ring[count - 1]!;
  for (let i = 0; i < count; i += 2) {
    const x = ring[i]!;
    const y = ring[i + 1]!;
    twice += previousX * y - x * previousY;
    previousX = x;
    previousY = y;
  }
  return twice / 2;
}

/** Length of the closed ring in mm. */
export function ringPerimeterMm(ring: Ring): number {
  const count = ring.length;
  let total = 0;
  for (let i = 0; i < count; i += 2) {
    const next = (i + 2) % count;
    total += Math.hypot(ring[next]! - ring[i]!, ring[next + 1]! - ring[i + 1]!);
  }
  return total;
}

export function ringBox(ring: Ring): Box {
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let i = 0; i < ring.length; i += 2) {
    const x = ring[i]!;
    const y = ring[i + 1]!;
    if (x < minX) minX = x;
    if (x > maxX) maxX = x;
    if (y < minY) minY = y;
    if (y > maxY) maxY = y;
  }
  return { minX, minY, maxX, maxY };
}

/** The same ring, counter-clockwise. */
export function ringCounterClockwise(ring: Ring): Ring {
  return ringAreaMm2(ring) < 0 ? ringReversed(ring) : ring;
}

/** Do two rings have the same corners round, wherever each begins, within near mm? */
export function ringsAlike(one: Ring, two: Ring, near: number): boolean {
  if (one.length !== two.length) return false;
  const count = one.length;
  for (let shift = 0; shift < count; shift += 2) {
    let same = true;
    for (let i = 0; i < count && same; i += 2) {
      const k = (i + shift) % count;
      same = Math.abs(one[i]! - two[k]!) <= near && Math.abs(one[i + 1]! - two[k + 1]!) <= near;
    }
    if (same) return true;
  }
  return false;
}

/** Without corners that lie within hairMm of the one before them, the first one's neighbour at the end included. */
export function ringWithoutDoubles(ring: Ring, hairMm: number): Ring {
  const kept: number[] = [];
  const isDoubled = (x: number, y: number, at: number) =>
    Math.hypot(x - kept[at]!, y - kept[at + 1]!) <= hairMm;
  for (let i = 0; i < ring.length; i += 2) {
    if (kept.length === 0 || !isDoubled(ring[i]!, ring[i + 1]!, kept.length - 2))
      kept.push(ring[i]!, ring[i + 1]!);
  }
  while (kept.length > 2 && isDoubled(kept.at(-2)!, kept.at(-1)!, 0)) kept.length -= 2;
  return kept.length === ring.length ? ring : Float64Array.from(kept);
}

export function ringReversed(ring: Ring): Ring {
  const count = ring.length;
  const reversed = new Float64Array(count);
  for (let i = 0; i < count; i += 2) {
    reversed[i] = ring[count - 2 - i]!;
    reversed[i + 1] = ring[count - 1 - i]!;
  }
  return reversed;
}

/** The ring with x and y multiplied, each by its own factor above 0. */
export const ringStretched = remembered((ring: Ring, byX: number, byY: number): Ring => {
  return byX === 1 && byY === 1 ? ring : ring.map((value, index) => value * (index % 2 === 0 ? byX : byY));
});

/** Moved by dx, dy in mm. */
export function ringMoved(ring: Ring, dx: number, dy: number): Ring {
  const moved = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    moved[i] = ring[i]! + dx;
    moved[i + 1] = ring[i + 1]! + dy;
  }
  return moved;
}

/** Cosine and sine of a turn, exact for multiples of 90 degrees. */
export function turnCosSin(turnDeg: number): readonly [number, number] {
  switch (((turnDeg % 360) + 360) % 360) {
    case 0:
      return [1, 0];
    case 90:
      return [0, 1];
    case 180:
      return [-1, 0];
    case 270:
      return [0, -1];
    default: {
      const radians = (turnDeg * Math.PI) / 180;
      return [Math.cos(radians), Math.sin(radians)];
    }
  }
}

/**
 * A ring as it lies on the cloth: first mirrored (y becomes -y) if asked, then turned
 * counter-clockwise about the origin. Stays counter-clockwise.
 */
export function ringTurned(ring: Ring, turnDeg: number, mirrored: boolean): Ring {
  const [cos, sin] = turnCosSin(turnDeg);
  const flip = mirrored ? -1 : 1;
  const turned = new Float64Array(ring.length);
  for (let i = 0; i < ring.length; i += 2) {
    const x = ring[i]!;
    const y = ring[i + 1]! * flip;
    turned[i] = x * cos - y * sin;
    turned[i + 1] = x * sin + y * cos;
  }
  return mirrored ? ringReversed(turned) : turned;
}
