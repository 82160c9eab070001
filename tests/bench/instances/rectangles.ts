/** Rectangles of whole millimetres. */
import type { Ring } from '../../../shared-core/geometry/ring.ts';
import { below, type CutStrip, type Dice } from './made.ts';

export function rectangleRing(minX: number, minY: number, maxX: number, maxY: number): Ring {
  return Float64Array.of(minX, minY, maxX, minY, maxX, maxY, minX, maxY);
}

type Box = readonly [minX: number, minY: number, maxX: number, maxY: number];

/** A whole number between two, between these parts of the way. */
function between(from: number, to: number, min: number, max: number, next: Dice): number {
  return Math.round(from + (to - from) * (min + (max - min) * next()));
}

/** Straight across, or (five parts) round a middle, so that no straight cut goes from side to side. */
function parted([minX, minY, maxX, maxY]: Box, isRound: boolean, next: Dice): Box[] {
  if (!isRound) {
    if (maxX - minX > maxY - minY) {
      const x = between(minX, maxX, 0.3, 0.7, next);
      return [
        [minX, minY, x, maxY],
        [x, minY, maxX, maxY],
      ];
    }
    const y = between(minY, maxY, 0.3, 0.7, next);
    return [
      [minX, minY, maxX, y],
      [minX, y, maxX, maxY],
    ];
  }
  const left = between(minX, maxX, 0.2, 0.4, next);
  const right = between(minX, maxX, 0.6, 0.8, next);
  const low = between(minY, maxY, 0.2, 0.4, next);
  const high = between(minY, maxY, 0.6, 0.8, next);
  return [
    [minX, minY, right, low],
    [right, minY, maxX, high],
    [left, high, maxX, maxY],
    [minX, low, left, maxY],
    [left, low, right, high],
  ];
}

/** At least so many rectangles; every third cut goes round a middle when asked. */
export function rectangleCut(
  widthMm: number,
  lengthMm: number,
  count: number,
  goesRound: boolean,
  next: Dice,
): CutStrip {
  const areaOf = ([minX, minY, maxX, maxY]: Box): number => (maxX - minX) * (maxY - minY);
  const pieces: Box[] = [[0, 0, lengthMm, widthMm]];
  while (pieces.length < count) {
    pieces.sort((a, b) => areaOf(a) - areaOf(b));
    pieces.push(...parted(pieces.pop()!, goesRound && below(next, 3) === 0, next));
  }
  return { widthMm, lengthMm, cut: pieces.map((box) => [rectangleRing(...box)]) };
}
