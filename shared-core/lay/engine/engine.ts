/** Runs the search over a model: a first valid lay at once, then better ones. */
import type { LayBudget } from '../job.ts';
import { costOf, costsLess } from './cost.ts';
import { frontierLay, orderBy } from './frontier.ts';
import type { Lay, Model } from './model.ts';
import type { Chain } from './repeat.ts';
import { type Random, randomFrom } from './random.ts';
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

/** chains: lays of blocks that it may begin with; without any it begins with the best along the frontier. */
export function startEngine(
  model: Model,
  clock: () => number,
  planned: LayBudget,
  chains: readonly Chain[] = [],
): Engine {
  const random = randomFrom(model.job.seed);
  const startedMs = clock();
  const first = chains[0]?.lay ?? bestOfFrontier(model, random);
  let done = 0;
  const progress = {
    planned: planned.seconds !== null || planned.iterations !== null,
    spent(): number {
      const byTime = planned.seconds === null ? 0 : (clock() - startedMs) / (planned.seconds * 1000);
      const byCount = planned.iterations === null ? 0 : done / planned.iterations;
      return Math.max(byTime, byCount);
    },
  };
  const search = startSearch(model, first, random, progress, chains);
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

/** The first lay of a model without blocks to begin with. */
export function alongFrontier(model: Model): Lay {
  return bestOfFrontier(model, randomFrom(model.job.seed));
}

function bestOfFrontier(model: Model, random: Random): Lay {
  const orders = [orderBy(model, 'area'), orderBy(model, 'along'), orderBy(model, 'across')];
  const lays = orders.map((order) => frontierLay(model, order, random, model.items.length > 120 ? 8 : 4));
  return lays.reduce((first, lay) => (costsLess(model, lay, first) ? lay : first));
}
