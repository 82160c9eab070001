/** Runs the search over a model: a first valid lay at once, then better ones. */
import type { LayBudget } from '../job.ts';
import { costOf, costsLess } from './cost.ts';
import { frontierLay, orderBy } from './frontier.ts';
import type { Lay, Model } from './model.ts';
import { randomFrom } from './random.ts';
import { FLOOR_GRAINS, startSearch } from './search.ts';

export interface Engine {
  /** Works until the clock passes endMs or that many iterations are done. False when nothing is left to try. */
  advance(endMs: number | null, iterations: number | null): boolean;
  best(): Lay;
  /** Goes on from a lay found elsewhere at its next start; false, and nothing changed, where it costs no less than the best. */
  adopt(lay: Lay): boolean;
  betterCount(): number;
  iterations(): number;
  atFloor(): boolean;
  finished(): boolean;
}

export function startEngine(model: Model, clock: () => number, planned: LayBudget): Engine {
  const random = randomFrom(model.job.seed);
  const startedMs = clock();
  const orders = [orderBy(model, 'area'), orderBy(model, 'along'), orderBy(model, 'across')];
  const lays = orders.map((order) => frontierLay(model, order, random, model.items.length > 120 ? 8 : 4));
  let first = lays[0]!;
  for (const lay of lays) if (costsLess(model, lay, first)) first = lay;
  let done = 0;
  const progress = {
    planned: planned.seconds !== null || planned.iterations !== null,
    spent(): number {
      const byTime = planned.seconds === null ? 0 : (clock() - startedMs) / (planned.seconds * 1000);
      const byCount = planned.iterations === null ? 0 : done / planned.iterations;
      return Math.max(byTime, byCount);
    },
  };
  const search = startSearch(model, first, random, progress);
  const moves = search.run();
  return {
    advance(endMs, iterations) {
      for (let i = 0; (iterations === null || i < iterations) && !search.finished(); i++) {
        if (endMs !== null && clock() >= endMs) break;
        if (moves.next().done === true) return false;
        done += 1;
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
