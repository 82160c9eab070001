/** Pieces with straight sides that bulge everywhere: cut across again and again, or each the cloth nearest to a point. */
import { type Ring, ringAreaMm2, ringBox } from '../../../shared-core/geometry/ring.ts';
import { rectangleRing } from './rectangles.ts';
import type { CutStrip, Dice } from './made.ts';

/** The parts of a convex ring on both sides of the line nx x + ny y = at: under it and over it. */
function split(ring: Ring, nx: number, ny: number, at: number): readonly [Ring, Ring] {
  const under: number[] = [];
  const over: number[] = [];
  const count = ring.length;
  for (let i = 0; i < count; i += 2) {
    const x = ring[i]!;
    const y = ring[i + 1]!;
    const afterX = ring[(i + 2) % count]!;
    const afterY = ring[(i + 3) % count]!;
    const here = nx * x + ny * y - at;
    const after = nx * afterX + ny * afterY - at;
    if (here <= 0) under.push(x, y);
    if (here >= 0) over.push(x, y);
    if ((here < 0 && after > 0) || (here > 0 && after < 0)) {
      const part = here / (here - after);
      const crossing = [x + part * (afterX - x), y + part * (afterY - y)];
      under.push(...crossing);
      over.push(...crossing);
    }
  }
  return [Float64Array.from(under), Float64Array.from(over)];
}

/** Straight cuts from side to side: each time the largest piece is parted, neither part under three tenths of it. */
export function guillotineCut(widthMm: number, lengthMm: number, count: number, next: Dice): CutStrip {
  const pieces: Ring[] = [rectangleRing(0, 0, lengthMm, widthMm)];
  while (pieces.length < count) {
    pieces.sort((a, b) => ringAreaMm2(a) - ringAreaMm2(b));
    const largest = pieces.pop()!;
    const box = ringBox(largest);
    const isLong = box.maxX - box.minX > box.maxY - box.minY;
    for (;;) {
      const angle = (isLong ? 0 : Math.PI / 2) + (next() - 0.5) * 1.2;
      const nx = Math.cos(angle);
      const ny = Math.sin(angle);
      const x = box.minX + (0.3 + 0.4 * next()) * (box.maxX - box.minX);
      const y = box.minY + (0.3 + 0.4 * next()) * (box.maxY - box.minY);
      const parts = split(largest, nx, ny, nx * x + ny * y);
      if (parts.some((part) => ringAreaMm2(part) < 0.3 * ringAreaMm2(largest))) continue;
      pieces.push(...parts);
      break;
    }
  }
  return { widthMm, lengthMm, cut: pieces.map((piece) => [piece]) };
}

/** The strip parted by which of `count` scattered points is nearest: no straight cut goes from side to side. */
export function nearestCut(widthMm: number, lengthMm: number, count: number, next: Dice): CutStrip {
  const points: (readonly [number, number])[] = [];
  let apart = Math.sqrt((widthMm * lengthMm) / count);
  while (points.length < count) {
    const [x, y] = [next() * lengthMm, next() * widthMm];
    if (points.every(([u, v]) => Math.hypot(x - u, y - v) > apart)) points.push([x, y]);
    apart *= 0.999;
  }
  const pieces = points.map(([x, y], index) => {
    let ring = rectangleRing(0, 0, lengthMm, widthMm);
    points.forEach(([u, v], other) => {
      if (other === index) return;
      const [nx, ny] = [u - x, v - y];
      [ring] = split(ring, nx, ny, (nx * (x + u) + ny * (y + v)) / 2);
    });
    return [ring];
  });
  return { widthMm, lengthMm, cut: pieces };
}
