/** How much shorter a lay usually still gets when it is looked for longer, so that nobody buys on a figure about to change. */
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import type { LayResult } from '../job.ts';
import { measuredFalls, measuredLays, measuredUntilS } from './still-falls-table.ts';
import type { FallsByPieces, Falls, MeasuredFalls } from './falls-by-pieces.ts';

/** Time for a lay that is looked for in earnest, s. One that was is taken as it is. */
export const thoroughSeconds = 3;

export interface StillFalls extends Falls {
  readonly basis: Basis;
}

const none: Falls = { low: 0, median: 0, high: 0 };

/**
 * By which share a lay of so many pieces that was looked for so many seconds usually still falls until it has been
 * looked for `measuredUntilS`; between the measured seconds in proportion to their logarithm, 0 from the end on.
 */
export function stillFalls(seconds: number, pieces: number): StillFalls {
  const row = measuredFalls.find(({ maxPieces }) => pieces <= maxPieces) ?? measuredFalls.at(-1)!;
  return {
    ...between(row.falls, seconds),
    basis: {
      kind: 'measured',
      how: say('still-falls.of-lays-of-demo-and-drafted', {
        lays: row.lays,
        measuredLays,
        piecesWords: piecesWords(row),
        measuredUntilS,
      }),
      source: '',
    },
  };
}

function between(falls: readonly MeasuredFalls[], seconds: number): Falls {
  const after = [...falls, { ...none, seconds: measuredUntilS }];
  const next = after.findIndex((fall) => fall.seconds >= seconds);
  if (next === -1) return none;
  const right = after[next]!;
  const left = after[next - 1] ?? right;
  const span = Math.log(right.seconds / left.seconds);
  const part = span === 0 ? 0 : Math.log(Math.max(seconds, left.seconds) / left.seconds) / span;
  // Kept between the two, so that rounding lets no fall grow.
  const at = (key: keyof Falls) =>
    Math.max(right[key], Math.min(left[key], left[key] + (right[key] - left[key]) * part));
  return { low: at('low'), median: at('median'), high: at('high') };
}

function piecesWords({ maxPieces }: FallsByPieces): string {
  return maxPieces === Infinity
    ? say('still-falls.those-of-more-pieces')
    : say('still-falls.those-of-up-to-pieces', { maxPieces });
}

/**
 * What is still to be expected of a lay: null where it is done, that is at its floor, with nothing left to try, or
 * looked for thoroughly and not at this moment; and where nearly all lays fall by less than half a per cent.
 */
export function layStillFalls(result: LayResult, isBeingLookedFor: boolean): StillFalls | null {
  if (result.stoppedBy === 'floor' || result.stoppedBy === 'nothing left to try') return null;
  if (result.stoppedBy === 'by hand') return null;
  // A clock may end a lay a hair early.
  if (!isBeingLookedFor && result.seconds >= 0.9 * thoroughSeconds) return null;
  const pieces = result.placements.length + result.unplaced.reduce((sum, { count }) => sum + count, 0);
  const falls = stillFalls(result.seconds, pieces);
  return percent(falls.high) === 0 ? null : falls;
}

/** Of several lays the one that usually falls most; null where all are done. */
export function maxStillFalling(all: readonly (StillFalls | null)[]): StillFalls | null {
  return all.reduce((max, one) => (one && (!max || one.high > max.high) ? one : max), null);
}

/** "another 2 to 4 %", "up to 3 %": by how much shorter it usually still gets. */
export function stillFallsWords({ low, high }: StillFalls): string {
  const [min, max] = [percent(low), percent(high)];
  if (min === 0) return say('still-falls.up-to', { max });
  return min === max ? say('still-falls.another', { max }) : say('still-falls.another-to', { min, max });
}

function percent(share: number): number {
  return Math.round(share * 100);
}
