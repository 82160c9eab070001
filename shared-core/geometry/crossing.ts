/** Whether a ring's sides cross or touch each other where they should not. */
import type { Ring } from './ring.ts';

/** Above 0 when c lies left of the line from a to b. */
function side(ax: number, ay: number, bx: number, by: number, cx: number, cy: number): number {
  return (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
}

/**
 * The first two sides found that cross, touch or lie on each other, as indices (side i runs from point i to the next);
 * neighbours count only where one doubles back over the other. Null for a simple ring.
 * Sides of no length count as touching their neighbours' neighbours: take repeated points out first.
 * Sides are sorted by their left ends, so a long outline costs little more than n log n; where all sides lie one above
 * the other, each is still held against each, by its box alone unless they touch.
 */
export function crossingSides(ring: Ring): readonly [number, number] | null {
  const count = ring.length / 2;
  const order = Array.from({ length: count }, (_, index) => index).sort(
    (i, j) => leftX(ring, i) - leftX(ring, j),
  );
  const left = Float64Array.from(order, (i) => leftX(ring, i));
  const right = Float64Array.from(order, (i) => rightX(ring, i));
  const low = Float64Array.from(order, (i) => Math.min(ring[2 * i + 1]!, ring[(2 * i + 3) % ring.length]!));
  const high = Float64Array.from(order, (i) => Math.max(ring[2 * i + 1]!, ring[(2 * i + 3) % ring.length]!));
  for (let a = 0; a < count; a++) {
    const rightA = right[a]!;
    const lowA = low[a]!;
    const highA = high[a]!;
    for (let b = a + 1; b < count && left[b]! <= rightA; b++) {
      if (low[b]! > highA || high[b]! < lowA) continue;
      const i = order[a]!;
      const j = order[b]!;
      if (sidesMeet(ring, i, j)) return i < j ? [i, j] : [j, i];
    }
  }
  return null;
}

function leftX(ring: Ring, i: number): number {
  return Math.min(ring[2 * i]!, ring[(2 * i + 2) % ring.length]!);
}

function rightX(ring: Ring, i: number): number {
  return Math.max(ring[2 * i]!, ring[(2 * i + 2) % ring.length]!);
}

function sidesMeet(ring: Ring, i: number, j: number): boolean {
  const count = ring.length;
  const ax = ring[2 * i]!;
  const ay = ring[2 * i + 1]!;
  const bx = ring[(2 * i + 2) % count]!;
  const by = ring[(2 * i + 3) % count]!;
  const cx = ring[2 * j]!;
  const cy = ring[2 * j + 1]!;
  const dx = ring[(2 * j + 2) % count]!;
  const dy = ring[(2 * j + 3) % count]!;
  const sideCount = count / 2;
  if ((i + 1) % sideCount === j) return doublesBack(ax, ay, bx, by, dx, dy);
  if ((j + 1) % sideCount === i) return doublesBack(cx, cy, dx, dy, bx, by);
  const c = side(ax, ay, bx, by, cx, cy);
  const d = side(ax, ay, bx, by, dx, dy);
  const a = side(cx, cy, dx, dy, ax, ay);
  const b = side(cx, cy, dx, dy, bx, by);
  if (((c > 0 && d < 0) || (c < 0 && d > 0)) && ((a > 0 && b < 0) || (a < 0 && b > 0))) return true;
  return (
    (c === 0 && isWithin(ax, ay, bx, by, cx, cy)) ||
    (d === 0 && isWithin(ax, ay, bx, by, dx, dy)) ||
    (a === 0 && isWithin(cx, cy, dx, dy, ax, ay)) ||
    (b === 0 && isWithin(cx, cy, dx, dy, bx, by))
  );
}

/** From p over q to r: r lies back towards p on the same line. */
function doublesBack(px: number, py: number, qx: number, qy: number, rx: number, ry: number): boolean {
  return side(px, py, qx, qy, rx, ry) === 0 && (qx - px) * (rx - qx) + (qy - py) * (ry - qy) < 0;
}

/** For a point on the line through both ends. */
function isWithin(ax: number, ay: number, bx: number, by: number, x: number, y: number): boolean {
  return x >= Math.min(ax, bx) && x <= Math.max(ax, bx) && y >= Math.min(ay, by) && y <= Math.max(ay, by);
}
