/** Runs the search over a model: a first valid lay at once, then better ones. */
import type { LayBudget } from '../job.ts';
import { costOf, costsLess } from './lay-cost.ts';
import { frontierLay, orderBy } from './frontier.ts';
import type { Lay, Model } from './model.ts';
import { TimeIsUp } from './moves.ts';
import { mayBePuzzle, solvePuzzle } from './puzzle/puzzle.ts';
import { type Random, randomFrom } from './random.ts';
import type { Chain } from './repeat.ts';
import { FLOOR_GRAINS, startSearch } from './search.ts';

export interface Engine {
  /**
   * Works until the clock passes endMs or that many iterations are done. Once it passes lateMs, even a move half way is
   * given up rather than that a table is made for it. False when nothing is left to try.
   */
  advance(endMs: number | null, iterations: number | null, lateMs: number | null): boolean;
  best(): Lay;
  /** Goes on from a lay found elsewhere at its next start; false, and nothing changed, where it costs no less than the best. */
  adopt(lay: Lay): boolean;
  betterCount(): number;
  iterations(): number;
  atFloor(): boolean;
  finished(): boolean;
}

/** Without a plan, steps of the puzzle for each piece that would be all of the effort. */
const UNPLANNED_STEPS = 1000;
/** Another order is laid along the frontier only while no more than this part of the time is gone. */
const SHARE_FOR_FIRST = 0.3;

/** chains: lays of blocks that it may begin with; without any it begins with the best along the frontier. */
export function startEngine(
  model: Model,
  clock: () => number,
  planned: LayBudget,
  chains: readonly Chain[] = [],
): Engine {
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
  const first = chains[0]?.lay ?? bestOfFrontier(model, random, progress.spent);
  const search = startSearch(model, first, random, progress, chains);
  let puzzle = mayBePuzzle(model)
    ? solvePuzzle(model, first, {
        found: search.begin,
        nearlyFound: search.beginNear,
        spent: (steps) => {
          if (!progress.planned) return steps / (UNPLANNED_STEPS * model.items.length);
          return Math.max(progress.spent(), planned.iterations === null ? 0 : steps / planned.iterations);
        },
      })
    : null;
  let moves = search.run();
  return {
    advance(endMs, iterations, lateMs) {
      lateAtMs = lateMs ?? Infinity;
      try {
        for (let i = 0; (iterations === null || i < iterations) && !search.finished(); i++) {
          if (endMs !== null && clock() >= endMs) break;
          // Its steps are no moves: a budget of moves gives the same lay of what is no puzzle as it would without.
          if (puzzle !== null) {
            if (puzzle.next().done === true) puzzle = null;
            continue;
          }
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
    adopt(lay) {
      if (!costsLess(model, lay, search.best())) return false;
      search.adopt(lay);
      return true;
    },
    betterCount: search.betterCount,
    iterations: () => done,
    atFloor: () => {
      const [bin, used] = costOf(model, search.best());
      return bin === 0 && used <= model.floorMm + FLOOR_GRAINS * model.grainMm;
    },
    finished: search.finished,
  };
}

/** The first lay of a model without blocks to begin with. spent: how much of the planned effort is gone, 0 to 1. */
export function alongFrontier(model: Model, spent: () => number): Lay {
  return bestOfFrontier(model, randomFrom(model.job.seed), spent);
}

function bestOfFrontier(model: Model, random: Random, spent: () => number): Lay {
  let best: Lay | null = null;
  for (const sense of ['area', 'along', 'across'] as const) {
    if (best !== null && spent() > SHARE_FOR_FIRST) break;
    const lay = frontierLay(model, orderBy(model, sense), random, model.items.length > 120 ? 8 : 4);
    if (best === null || costsLess(model, lay, best)) best = lay;
  }
  return best!;
}
