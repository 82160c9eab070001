/**
 * Are two true outlines apart by a distance? Edge against edge, without tables and without simplified
 * outlines: the engine asks this of every lay before it calls it better.
 */
import type { Ring } from '../../geometry/ring.ts';

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

/** Second ring moved by dx, dy. True when they share inner points or come nearer than apartMm. Cost: edges times edges. */
export function ringsNearer(first: Ring, second: Ring, dx: number, dy: number, apartMm: number): boolean {
  const squaredLimit = apartMm * apartMm;
  const count1 = first.length;
  const count2 = second.length;
  let minX = Infinity;
  let minY = Infinity;
  let maxX = -Infinity;
  let maxY = -Infinity;
  for (let j = 0; j < count2; j += 2) {
    if (second[j]! < minX) minX = second[j]!;
    if (second[j]! > maxX) maxX = second[j]!;
    if (second[j + 1]! < minY) minY = second[j + 1]!;
    if (second[j + 1]! > maxY) maxY = second[j + 1]!;
  }
  minX += dx - apartMm;
  maxX += dx + apartMm;
  minY += dy - apartMm;
  maxY += dy + apartMm;
  let ax = first[count1 - 2]!;
  let ay = first[count1 - 1]!;
  for (let i = 0; i < count1; i += 2) {
    const bx = first[i]!;
    const by = first[i + 1]!;
    const lowX = Math.min(ax, bx) - apartMm;
    const highX = Math.max(ax, bx) + apartMm;
    const lowY = Math.min(ay, by) - apartMm;
    const highY = Math.max(ay, by) + apartMm;
    if (lowX <= maxX && highX >= minX && lowY <= maxY && highY >= minY) {
      let cx = second[count2 - 2]! + dx;
      let cy = second[count2 - 1]! + dy;
      for (let j = 0; j < count2; j += 2) {
        const ex = second[j]! + dx;
        const ey = second[j + 1]! + dy;
        if (
          !(cx < lowX && ex < lowX) &&
          !(cx > highX && ex > highX) &&
          !(cy < lowY && ey < lowY) &&
          !(cy > highY && ey > highY)
        ) {
          if (segmentsNearer(ax, ay, bx, by, cx, cy, ex, ey, squaredLimit)) return true;
        }
        cx = ex;
        cy = ey;
      }
    }
    ax = bx;
    ay = by;
  }
  return (
    contains(first, second[0]! + dx, second[1]! + dy) || contains(second, first[0]! - dx, first[1]! - dy)
  );
}
