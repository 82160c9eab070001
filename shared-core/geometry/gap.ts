/** How far apart two outlines lie. */
import { type Box, type Ring, ringBox } from './ring.ts';

function pointToSegment(px: number, py: number, x: number, y: number, ux: number, uy: number): number {
  const squared = ux * ux + uy * uy;
  const share = squared > 0 ? ((px - x) * ux + (py - y) * uy) / squared : 0;
  const along = Math.min(1, Math.max(0, share));
  return Math.hypot(px - x - along * ux, py - y - along * uy);
}

/** Is the point inside the ring? On an edge either answer may come. */
export function ringContains(ring: Ring, px: number, py: number): boolean {
  let isInside = false;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [x0, y0, x1, y1] = [ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!];
    if (y0 > py !== y1 > py && px < x0 + ((py - y0) / (y1 - y0)) * (x1 - x0)) isInside = !isInside;
  }
  return isInside;
}

/** Distance of two boxes, mm; 0 where they meet. */
export function boxGapMm(one: Box, other: Box): number {
  const x = Math.max(0, one.minX - other.maxX, other.minX - one.maxX);
  const y = Math.max(0, one.minY - other.maxY, other.minY - one.maxY);
  return Math.hypot(x, y);
}

/**
 * Shortest distance of two rings, mm; 0 where they cross or one lies in the other. Where it is more than maxMm, any
 * larger number may come. Cost: edges times edges, of those within maxMm of the other's box.
 */
export function ringGapMm(one: Ring, other: Ring, maxMm = Infinity): number {
  const ones = edgesNear(one, ringBox(other), maxMm);
  const others = edgesNear(other, ringBox(one), maxMm);
  let gap = Infinity;
  for (const [ax, ay, ux, uy] of ones) {
    for (const [cx, cy, vx, vy] of others) {
      if (cross(ax, ay, ux, uy, cx, cy, vx, vy)) return 0;
      gap = Math.min(
        gap,
        pointToSegment(ax, ay, cx, cy, vx, vy),
        pointToSegment(ax + ux, ay + uy, cx, cy, vx, vy),
        pointToSegment(cx, cy, ax, ay, ux, uy),
        pointToSegment(cx + vx, cy + vy, ax, ay, ux, uy),
      );
    }
  }
  const isNested = ringContains(one, other[0]!, other[1]!) || ringContains(other, one[0]!, one[1]!);
  return isNested ? 0 : gap;
}

type Edge = readonly [x: number, y: number, alongX: number, alongY: number];

function edgesNear(ring: Ring, box: Box, maxMm: number): Edge[] {
  const edges: Edge[] = [];
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) {
    const [x0, y0, x1, y1] = [ring[j]!, ring[j + 1]!, ring[i]!, ring[i + 1]!];
    if (Math.min(x0, x1) > box.maxX + maxMm || Math.max(x0, x1) < box.minX - maxMm) continue;
    if (Math.min(y0, y1) > box.maxY + maxMm || Math.max(y0, y1) < box.minY - maxMm) continue;
    edges.push([x0, y0, x1 - x0, y1 - y0]);
  }
  return edges;
}

function cross(
  ax: number,
  ay: number,
  ux: number,
  uy: number,
  cx: number,
  cy: number,
  vx: number,
  vy: number,
): boolean {
  const start = ux * (cy - ay) - uy * (cx - ax);
  const end = ux * (cy + vy - ay) - uy * (cx + vx - ax);
  const first = vx * (ay - cy) - vy * (ax - cx);
  const last = vx * (ay + uy - cy) - vy * (ax + ux - cx);
  return start * end < 0 && first * last < 0;
}
