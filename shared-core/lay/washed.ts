/**
 * Lays on cloth that was washed before it is cut: their lengths, flaws and pieces are measures of washed cloth, and what
 * is taken from the shelf or bought is told in metres of the cloth as it lies there.
 */
import { beforeWashMm, type Shrinkage } from '../stash/shrinkage.ts';
import type { LayLength, LayResult } from './job.ts';

/** What the wash leaves of a length, and where its flaws are then. */
export function washedLength(length: LayLength, { alongRatio, acrossRatio }: Shrinkage): LayLength {
  const along = 1 - alongRatio;
  const across = 1 - acrossRatio;
  return {
    ...length,
    widthMm: length.widthMm * across,
    lengthMm: length.lengthMm === null ? null : length.lengthMm * along,
    flaws: length.flaws.map(({ x, y, widthX, widthY }) => ({
      x: x * along,
      y: y * across,
      widthX: widthX * along,
      widthY: widthY * across,
    })),
  };
}

/** What was found, and what the lengths of its job lost by being washed first (`SlotLay.washed`). */
interface Laid {
  readonly result: LayResult;
  readonly washed?: readonly Shrinkage[];
}

/** What a lay takes of one of its lengths, mm as it lies on the shelf or is bought. */
export function takenMm({ result, washed }: Laid, lengthIndex: number): number {
  const usedMm = result.usedLengthMm[lengthIndex] ?? 0;
  const lost = washed?.[lengthIndex];
  return lost ? beforeWashMm(usedMm, lost.alongRatio) : usedMm;
}

/** The same of all its lengths together. */
export function takenInAllMm(laid: Laid): number {
  return laid.result.usedLengthMm.reduce((sum, _, index) => sum + takenMm(laid, index), 0);
}
