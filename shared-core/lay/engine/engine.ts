/** Runs the search over a model: a first valid lay at once, then better ones. */
import type { LayBudget } from '../job.ts';
import { frontierLay, orderBy } from './frontier.ts';
import type { Lay, Model } from './model.ts';
import { TimeIsUp } from './moves.ts';
import { randomFrom } from './random.ts';
import { FLOOR_GRAINS, startSearch } from './search.ts';

export interface Engine {
  /**
   * Works until the clock passes endMs or that many iterations are done. Once it passes lateMs, even a move half way is
   * given up rather than that a table is made for it. False when nothing is left to try.
   */
  advance(endMs: number | null, iterations: number | null, lateMs: number | null): boolean;
  best(): Lay;
  betterCount(): number;
  iterations(): number;
  atFloor(): boolean;
  finished(): boolean;
}

/** What a lay costs: the last bin in use counts most, then how much of it is used. */
function costOf(model: Model, lay: Lay): readonly [number, number] {
  let last = 0;
  let used = 0;
  for (let i = 0; i < model.items.length; i++) {
    const bin = lay.bin[i]!;
    const reached = lay.x[i]! + model.forms[lay.form[i]!]!.halfX - model.bins[bin]!.startX;
    if (bin > last) {
      last = bin;
      used = reached;
    } else if (bin === last && reached > used) used = reached;
  }
  return [last, used];
}

function isLess(
  [bin, used]: readonly [number, number],
  [otherBin, otherUsed]: readonly [number, number],
): boolean {
  return bin < otherBin || (bin === otherBin && used < otherUsed);
}

/** Another order is laid along the frontier only while no more than this part of the time is gone. */
const SHARE_FOR_FIRST = 0.3;

export function startEngine(model: Model, clock: () => number, planned: LayBudget): Engine {
  const random = randomFrom(model.job.seed);
  const startedMs = clock();
  let done = 0;
  let lateAtMs = Infinity;
  const progress = {
    planned: planned.seconds !== null || planned.iterations !== null,
    spent(): number {
      const byTime = planned.seconds === null ? 0 : (clock() - startedMs) / (planned.seconds * 1000);
      const byCount = planned.iterations === null ? 0 : done / planned.iterations;
      return Math.max(byTime, byCount);
    },
    isLate: () => lateAtMs !== Infinity && clock() >= lateAtMs,
  };
  let first: Lay | null = null;
  for (const sense of ['area', 'along', 'across'] as const) {
    if (first !== null && progress.spent() > SHARE_FOR_FIRST) break;
    const lay = frontierLay(model, orderBy(model, sense), random, model.items.length > 120 ? 8 : 4);
    if (first === null || isLess(costOf(model, lay), costOf(model, first))) first = lay;
  }
  const search = startSearch(model, first!, random, progress);
  let moves = search.run();
  return {
    advance(endMs, iterations, lateMs) {
      lateAtMs = lateMs ?? Infinity;
      try {
        for (let i = 0; (iterations === null || i < iterations) && !search.finished(); i++) {
          if (endMs !== null && clock() >= endMs) break;
          if (moves.next().done === true) return false;
          done += 1;
        }
      } catch (error) {
        if (!(error instanceof TimeIsUp)) throw error;
        moves = search.run();
      }
      return !search.finished();
    },
    best: search.best,
    betterCount: search.betterCount,
    iterations: () => done,
    atFloor: () => {
      const [bin, used] = costOf(model, search.best());
      return bin === 0 && used <= model.floorMm + FLOOR_GRAINS * model.grainMm;
    },
    finished: search.finished,
  };
}
