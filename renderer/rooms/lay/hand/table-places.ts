/** Where each length lies on the cutting table: one below the other, and which one a point of the table is on. */
import type { LayJob, LayResult } from '../../../../shared-core/lay/job.ts';

export interface TablePlace {
  readonly length: number;
  readonly topMm: number;
  readonly widthMm: number;
  /** As drawn: an endless length ends some way behind what is used of it. */
  readonly drawnMm: number;
}

const gapMm = 180;
const beyondMm = 600;

export function tablePlaces(job: LayJob, usedLengthMm: LayResult['usedLengthMm']): readonly TablePlace[] {
  let topMm = 0;
  return job.lengths.map(({ widthMm, lengthMm }, length) => {
    const place = {
      length,
      topMm,
      widthMm,
      // By half metres, so that the table does not grow under the hand.
      drawnMm: lengthMm ?? Math.ceil(((usedLengthMm[length] ?? 0) + beyondMm) / 500) * 500,
    };
    topMm += widthMm + gapMm;
    return place;
  });
}

export function tableSize(places: readonly TablePlace[]): { width: number; height: number } {
  const last = places.at(-1);
  return {
    width: Math.max(1, ...places.map(({ drawnMm }) => drawnMm)),
    height: last ? last.topMm + last.widthMm : 1,
  };
}

/** The length nearest to a height on the table, and how far up its width that is. */
export function lengthAt(places: readonly TablePlace[], tableY: number): { length: number; y: number } {
  let best = places[0]!;
  for (const place of places) if (tableY >= place.topMm - gapMm / 2) best = place;
  return { length: best.length, y: best.topMm + best.widthMm - tableY };
}
