/** A simpler outline that never lies inside the true one: what is valid for it is valid for the cloth. */
import { type Box, type Ring, ringBox } from '../../geometry/ring.ts';

/** A corner in its place round the ring, and what it would cost to do without it. */
interface Corner {
  x: number;
  y: number;
  before: Corner;
  after: Corner;
  isGone: boolean;
  /** How far the edge that begins here already strays from the true outline. */
  stray: number;
  /** How far the outline strays without this corner; Infinity when it cannot go. */
  cost: number;
  /** Where the next corner must move for it: null when it stays (a hollow is filled straight across). */
  put: { readonly x: number; readonly y: number } | null;
  /** The edge that was found in the way; while it is still there nothing needs to be asked again. */
  blockedFrom: Corner | null;
  blockedTo: Corner | null;
}

type Spot = { readonly x: number; readonly y: number };

function turnOf(a: Spot, b: Spot, c: Spot): number {
  return (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
}

function distanceToLine(p: Spot, a: Spot, b: Spot): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const length = Math.hypot(dx, dy);
  return length === 0
    ? Math.hypot(p.x - a.x, p.y - a.y)
    : Math.abs((p.x - a.x) * dy - (p.y - a.y) * dx) / length;
}

/** Is the point within reach of the segment a to b? */
function segmentsMeet(p: Spot, q: Spot, a: Spot, b: Spot): boolean {
  if (Math.max(p.x, q.x) < Math.min(a.x, b.x) || Math.min(p.x, q.x) > Math.max(a.x, b.x)) return false;
  if (Math.max(p.y, q.y) < Math.min(a.y, b.y) || Math.min(p.y, q.y) > Math.max(a.y, b.y)) return false;
  return turnOf(p, q, a) * turnOf(p, q, b) <= 0 && turnOf(a, b, p) * turnOf(a, b, q) <= 0;
}

/** The first corner of an edge that the new edge from p to q would meet, looking from `from` on until `to` is reached. */
function edgeMet(p: Spot, q: Spot, from: Corner, to: Corner): Corner | null {
  for (let corner = from; corner !== to; corner = corner.after) {
    if (segmentsMeet(p, q, corner, corner.after)) return corner;
  }
  return null;
}

/** Is an edge in the way of what doing without the corner would draw? Remembers which one. */
function isBlocked(here: Corner): boolean {
  const { blockedFrom, blockedTo, before, after, put } = here;
  if (blockedFrom !== null && !blockedFrom.isGone && blockedFrom.after === blockedTo) return true;
  // Neighbours of the new edges touch them and are not asked.
  const met =
    put === null
      ? edgeMet(before, after, after.after, before.before)
      : (edgeMet(here, put, after.after, before) ?? edgeMet(put, after, after.after, before));
  here.blockedFrom = met;
  here.blockedTo = met === null ? null : met.after;
  return met !== null;
}

/** Works out what it would cost to do without the corner. */
function weigh(here: Corner, box: Box): void {
  const { before, after } = here;
  here.blockedFrom = null;
  here.cost = Infinity;
  here.put = null;
  const size = Math.hypot(after.x - before.x, after.y - before.y) || 1;
  if (turnOf(before, here, after) <= 1e-12 * size * size) {
    // A hollow corner: cutting straight across it adds cloth.
    here.cost = distanceToLine(here, before, after) + Math.max(before.stray, here.stray);
    return;
  }
  // An edge between two bulging corners: prolong its neighbours until they meet.
  const afterNext = after.after;
  if (turnOf(here, after, afterNext) <= 0) return;
  const d1x = here.x - before.x;
  const d1y = here.y - before.y;
  const d2x = afterNext.x - after.x;
  const d2y = afterNext.y - after.y;
  const cross = d1x * d2y - d1y * d2x;
  if (cross <= 1e-12) return;
  const along = ((after.x - before.x) * d2y - (after.y - before.y) * d2x) / cross;
  if (!(along > 1)) return;
  const put = { x: before.x + along * d1x, y: before.y + along * d1y };
  if (put.x < box.minX || put.x > box.maxX || put.y < box.minY || put.y > box.maxY) return;
  here.put = put;
  here.cost = distanceToLine(put, here, after) + here.stray;
}

/** The ring as corners linked round it, without doubled ones; gives the first and how many they are. */
function linked(ring: Ring): { first: Corner; count: number } {
  const corners: Corner[] = [];
  for (let i = 0; i < ring.length; i += 2) {
    const [x, y] = [ring[i]!, ring[i + 1]!];
    const last = corners.at(-1);
    if (last !== undefined && Math.hypot(last.x - x, last.y - y) <= 1e-9) continue;
    const corner = { x, y, isGone: false, stray: 0, cost: Infinity, put: null } as unknown as Corner;
    corners.push(Object.assign(corner, { blockedFrom: null, blockedTo: null }));
  }
  corners.forEach((corner, index) => {
    corner.before = corners.at(index - 1)!;
    corner.after = corners[(index + 1) % corners.length]!;
  });
  return { first: corners[0]!, count: corners.length };
}

/** Takes a corner out of the ring, moving the next one where that was asked; gives the one that follows now. */
function takeOut(here: Corner): Corner {
  const { before, after, put, cost } = here;
  here.isGone = true;
  if (put === null) {
    before.after = after;
    after.before = before;
    before.stray = cost;
    return after;
  }
  // A corner that moves is another one, so that its edges are known to be new.
  const moved: Corner = { ...after, ...put, before, stray: Math.max(after.stray, cost) };
  after.isGone = true;
  before.after = moved;
  moved.after.before = moved;
  before.stray = Math.max(before.stray, cost);
  return moved;
}

/** Above so many corners they are not weighed against each other, but taken as they come, the cheap ones first. */
const MANY_CORNERS = 400;

/**
 * Counter-clockwise ring in, counter-clockwise ring out, without crossings, containing the ring and nowhere
 * farther from it than toleranceMm (up to rounding). Within the box of the ring, so that its extents stay.
 * An outline that still has more than maxCorners is made simpler beyond the tolerance, by about as little as that
 * takes. Cost: square of the corners.
 */
export function outwardRing(ring: Ring, toleranceMm: number, maxCorners = Infinity): Ring {
  const box = ringBox(ring);
  let { first, count } = linked(ring);
  const without = (here: Corner): Corner => {
    const follows = takeOut(here);
    if (first.isGone) first = follows;
    count -= 1;
    for (let corner = follows.before.before, i = 0; i < 4; i++, corner = corner.after) weigh(corner, box);
    return follows;
  };
  for (let corner = first, i = 0; i < count; i++, corner = corner.after) weigh(corner, box);
  for (let limit = toleranceMm / 64; count > Math.max(MANY_CORNERS, maxCorners); limit *= 2) {
    for (let corner = first, left = count; left > 0 && count > 4; left--) {
      corner = corner.cost < limit && !isBlocked(corner) ? without(corner) : corner.after;
    }
  }
  while (count > 4) {
    let min = count > maxCorners ? Infinity : toleranceMm;
    let best: Corner | null = null;
    for (let corner = first, i = 0; i < count; i++, corner = corner.after) {
      if (corner.cost >= min || isBlocked(corner)) continue;
      min = corner.cost;
      best = corner;
    }
    if (best === null) break;
    without(best);
  }
  const simple = new Float64Array(count * 2);
  for (let corner = first, i = 0; i < count; i++, corner = corner.after) {
    simple[i * 2] = corner.x;
    simple[i * 2 + 1] = corner.y;
  }
  return simple;
}
