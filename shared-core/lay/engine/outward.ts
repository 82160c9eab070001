/** A simpler outline that never lies inside the true one: what is valid for it is valid for the cloth. */
import type { Ring } from '../../geometry/ring.ts';

interface Corner {
  x: number;
  y: number;
}

function turnOf(a: Corner, b: Corner, c: Corner): number {
  return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
}

function distanceToLine(p: Corner, a: Corner, b: Corner): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = Math.hypot(dx, dy);
  return length === 0
    ? Math.hypot(p.x - a.x, p.y - a.y)
    : Math.abs((p.x - a.x) * dy - (p.y - a.y) * dx) / length;
}

/** Is the point within reach of the segment a to b? */
function segmentsMeet(p: Corner, q: Corner, a: Corner, b: Corner): boolean {
  if (Math.max(p.x, q.x) < Math.min(a.x, b.x) || Math.min(p.x, q.x) > Math.max(a.x, b.x)) return false;
  if (Math.max(p.y, q.y) < Math.min(a.y, b.y) || Math.min(p.y, q.y) > Math.max(a.y, b.y)) return false;
  return turnOf(p, q, a) * turnOf(p, q, b) <= 0 && turnOf(a, b, p) * turnOf(a, b, q) <= 0;
}

/** Would the new edge from p to q meet any edge of the ring other than those between indexes skipFrom and skipTo? */
function meetsRing(corners: Corner[], p: Corner, q: Corner, skip: (edge: number) => boolean): boolean {
  for (let i = 0; i < corners.length; i++) {
    if (skip(i)) continue;
    if (segmentsMeet(p, q, corners[i]!, corners[(i + 1) % corners.length]!)) return true;
  }
  return false;
}

/**
 * Counter-clockwise ring in, counter-clockwise ring out, without crossings, containing the ring and nowhere
 * farther from it than toleranceMm (up to rounding). Within the box of the ring, so that its extents stay.
 */
export function outwardRing(ring: Ring, toleranceMm: number): Ring {
  let corners: Corner[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const corner = { x: ring[i]!, y: ring[i + 1]! };
    const last = corners.at(-1);
    if (last === undefined || Math.hypot(last.x - corner.x, last.y - corner.y) > 1e-9) corners.push(corner);
  }
  const original = corners.slice();
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (const corner of original) {
    minX = Math.min(minX, corner.x);
    minY = Math.min(minY, corner.y);
    maxX = Math.max(maxX, corner.x);
    maxY = Math.max(maxY, corner.y);
  }
  // How far each edge already strays from the true outline.
  let strays: number[] = corners.map(() => 0);
  for (;;) {
    const count = corners.length;
    if (count <= 4) break;
    let bestCost = toleranceMm;
    let best: { remove: number; put: Corner | null; cost: number } | null = null;
    for (let i = 0; i < count; i++) {
      const before = corners[(i + count - 1) % count]!;
      const here = corners[i]!;
      const after = corners[(i + 1) % count]!;
      const beforeEdge = (i + count - 1) % count;
      const turn = turnOf(before, here, after);
      const size = Math.hypot(after.x - before.x, after.y - before.y) || 1;
      if (turn <= 1e-12 * size * size) {
        // A hollow corner: cutting straight across it adds cloth.
        const cost = distanceToLine(here, before, after) + Math.max(strays[beforeEdge]!, strays[i]!);
        if (cost >= bestCost) continue;
        if (
          meetsRing(
            corners,
            before,
            after,
            (e) => e === i || e === beforeEdge || e === (i + count - 2) % count || e === (i + 1) % count,
          )
        )
          continue;
        bestCost = cost;
        best = { remove: i, put: null, cost };
        continue;
      }
      // An edge between two bulging corners: prolong its neighbours until they meet.
      const afterNext = corners[(i + 2) % count]!;
      if (turnOf(here, after, afterNext) <= 0) continue;
      const d1x = here.x - before.x;
      const d1y = here.y - before.y;
      const d2x = afterNext.x - after.x;
      const d2y = afterNext.y - after.y;
      const cross = d1x * d2y - d1y * d2x;
      if (cross <= 1e-12) continue;
      const along = ((after.x - before.x) * d2y - (after.y - before.y) * d2x) / cross;
      const put = { x: before.x + along * d1x, y: before.y + along * d1y };
      if (!(along > 1)) continue;
      if (put.x < minX || put.x > maxX || put.y < minY || put.y > maxY) continue;
      const cost = distanceToLine(put, here, after) + strays[i]!;
      if (cost >= bestCost) continue;
      const skip = (e: number): boolean => e === i || e === beforeEdge || e === (i + 1) % count;
      if (meetsRing(corners, here, put, skip) || meetsRing(corners, put, after, skip)) continue;
      bestCost = cost;
      best = { remove: i, put, cost };
    }
    if (best === null) break;
    const index = best.remove;
    if (best.put === null) {
      const edge = (index + count - 1) % count;
      strays[edge] = best.cost;
      corners = corners.filter((_, i) => i !== index);
      strays = strays.filter((_, i) => i !== index);
    } else {
      const next = (index + 1) % count;
      const put = best.put;
      const edge = (index + count - 1) % count;
      strays[edge] = Math.max(strays[edge]!, best.cost);
      strays[next] = Math.max(strays[next]!, best.cost);
      corners = corners.map((corner, i) => (i === next ? put : corner)).filter((_, i) => i !== index);
      strays = strays.filter((_, i) => i !== index);
    }
  }
  const simple = new Float64Array(corners.length * 2);
  corners.forEach((corner, i) => {
    simple[i * 2] = corner.x;
    simple[i * 2 + 1] = corner.y;
  });
  return simple;
}
