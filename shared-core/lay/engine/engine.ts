/** Runs the search over a model: a first valid lay at once, then better ones. */
import type { LayBudget } from '../job.ts';
import { frontierLay, orderBy } from './frontier.ts';
import type { Lay, Model } from './model.ts';
import { randomFrom } from './random.ts';

export interface Engine {
  /** Works until the clock passes endMs or that many iterations are done. False when nothing is left to try. */
  advance(endMs: number | null, iterations: number | null): boolean;
  best(): Lay;
  betterCount(): number;
  iterations(): number;
  atFloor(): boolean;
  finished(): boolean;
}

/** What a lay costs: the length used, with what no real length holds counted many times. */
export function layCostMm(model: Model, lay: Lay): number {
  const used = model.bins.map(() => 0);
  for (let i = 0; i < model.items.length; i++) {
    const bin = lay.bin[i]!;
    const reached = lay.x[i]! + model.forms[lay.form[i]!]!.halfX - model.bins[bin]!.startX;
    if (reached > used[bin]!) used[bin] = reached;
  }
  let cost = 0;
  model.bins.forEach((bin, index) => {
    cost += used[index]! * (bin.length === -1 ? 1000 : 1);
  });
  return cost;
}

export function startEngine(model: Model, clock: () => number, _planned: LayBudget): Engine {
  const random = randomFrom(model.job.seed);
  let best = frontierLay(model, orderBy(model, 'area'), random, 4);
  let cost = layCostMm(model, best);
  let better = 0;
  let done = 0;
  for (const sense of ['along', 'across'] as const) {
    const other = frontierLay(model, orderBy(model, sense), random, 4);
    const otherCost = layCostMm(model, other);
    if (otherCost < cost) {
      best = other;
      cost = otherCost;
    }
  }
  return {
    advance(endMs, iterations) {
      for (let i = 0; iterations === null || i < iterations; i++) {
        if (endMs !== null && clock() >= endMs) break;
        const order = orderBy(model, 'area');
        for (let k = 0; k < 3; k++) {
          const a = Math.floor(random.next() * order.length);
          const b = Math.floor(random.next() * order.length);
          [order[a], order[b]] = [order[b]!, order[a]!];
        }
        const other = frontierLay(model, order, random, 4);
        const otherCost = layCostMm(model, other);
        done += 1;
        if (otherCost < cost) {
          best = other;
          cost = otherCost;
          better += 1;
        }
      }
      return true;
    },
    best: () => best,
    betterCount: () => better,
    iterations: () => done,
    atFloor: () => cost <= model.floorMm + model.grainMm,
    finished: () => model.items.length === 0,
  };
}
