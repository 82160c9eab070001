/**
 * Are two true outlines apart by a distance? Edge against edge, without tables and without simplified
 * outlines: the engine asks this of every lay before it calls it better.
 */
import { type Box, type Ring, ringBox } from '../../geometry/ring.ts';

function segmentsNearer(
  ax: number,
  ay: number,
  bx: number,
  by: number,
  cx: number,
  cy: number,
  dx: number,
  dy: number,
  squaredLimit: number,
): boolean {
  const ux = bx - ax;
  const uy = by - ay;
  const vx = dx - cx;
  const vy = dy - cy;
  const side1 = ux * (cy - ay) - uy * (cx - ax);
  const side2 = ux * (dy - ay) - uy * (dx - ax);
  const side3 = vx * (ay - cy) - vy * (ax - cx);
  const side4 = vx * (by - cy) - vy * (bx - cx);
  if (
    ((side1 > 0 && side2 < 0) || (side1 < 0 && side2 > 0)) &&
    ((side3 > 0 && side4 < 0) || (side3 < 0 && side4 > 0))
  )
    return true;
  return (
    pointNearer(ax, ay, cx, cy, vx, vy, squaredLimit) ||
    pointNearer(bx, by, cx, cy, vx, vy, squaredLimit) ||
    pointNearer(cx, cy, ax, ay, ux, uy, squaredLimit) ||
    pointNearer(dx, dy, ax, ay, ux, uy, squaredLimit)
  );
}

function pointNearer(
  px: number,
  py: number,
  x: number,
  y: number,
  ux: number,
  uy: number,
  squaredLimit: number,
): boolean {
  const lengthSquared = ux * ux + uy * uy;
  let along = lengthSquared > 0 ? ((px - x) * ux + (py - y) * uy) / lengthSquared : 0;
  along = along < 0 ? 0 : along > 1 ? 1 : along;
  const offX = px - x - along * ux;
  const offY = py - y - along * uy;
  return offX * offX + offY * offY < squaredLimit;
}

function contains(ring: Ring, px: number, py: number): boolean {
  let inside = false;
  const count = ring.length;
  let x0 = ring[count - 2]!;
  let y0 = ring[count - 1]!;
  for (let i = 0; i < count; i += 2) {
    const x1 = ring[i]!;
    const y1 = ring[i + 1]!;
    if (y0 > py !== y1 > py && px < x0 + ((py - y0) / (y1 - y0)) * (x1 - x0)) inside = !inside;
    x0 = x1;
    y0 = y1;
  }
  return inside;
}

/** Flat list x0, y0, x1, y1 of the edges of a ring moved by dx, dy that come into the box. */
function edgesInto(ring: Ring, dx: number, dy: number, box: Box): number[] {
  const edges: number[] = [];
  const count = ring.length;
  let ax = ring[count - 2]! + dx;
  let ay = ring[count - 1]! + dy;
  for (let i = 0; i < count; i += 2) {
    const bx = ring[i]! + dx;
    const by = ring[i + 1]! + dy;
    const isBeside = (ax < box.minX && bx < box.minX) || (ax > box.maxX && bx > box.maxX);
    const isAbove = (ay < box.minY && by < box.minY) || (ay > box.maxY && by > box.maxY);
    if (!isBeside && !isAbove) edges.push(ax, ay, bx, by);
    ax = bx;
    ay = by;
  }
  return edges;
}

/**
 * Second ring moved by dx, dy. True when they share inner points or come nearer than apartMm. Cost: edges times edges,
 * of those that lie where the two boxes meet.
 */
export function ringsNearer(first: Ring, second: Ring, dx: number, dy: number, apartMm: number): boolean {
  const squaredLimit = apartMm * apartMm;
  const one = ringBox(first);
  const two = ringBox(second);
  const meeting: Box = {
    minX: Math.max(one.minX, two.minX + dx) - apartMm,
    minY: Math.max(one.minY, two.minY + dy) - apartMm,
    maxX: Math.min(one.maxX, two.maxX + dx) + apartMm,
    maxY: Math.min(one.maxY, two.maxY + dy) + apartMm,
  };
  const ones = edgesInto(first, 0, 0, meeting);
  const twos = edgesInto(second, dx, dy, meeting);
  for (let i = 0; i < ones.length; i += 4) {
    const ax = ones[i]!;
    const ay = ones[i + 1]!;
    const bx = ones[i + 2]!;
    const by = ones[i + 3]!;
    const lowX = Math.min(ax, bx) - apartMm;
    const highX = Math.max(ax, bx) + apartMm;
    const lowY = Math.min(ay, by) - apartMm;
    const highY = Math.max(ay, by) + apartMm;
    for (let j = 0; j < twos.length; j += 4) {
      const cx = twos[j]!;
      const cy = twos[j + 1]!;
      const ex = twos[j + 2]!;
      const ey = twos[j + 3]!;
      if ((cx < lowX && ex < lowX) || (cx > highX && ex > highX)) continue;
      if ((cy < lowY && ey < lowY) || (cy > highY && ey > highY)) continue;
      if (segmentsNearer(ax, ay, bx, by, cx, cy, ex, ey, squaredLimit)) return true;
    }
  }
  return (
    contains(first, second[0]! + dx, second[1]! + dy) || contains(second, first[0]! - dx, first[1]! - dy)
  );
}
