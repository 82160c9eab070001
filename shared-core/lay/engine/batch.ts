/**
 * The search over a whole job. Where it asks for the same set of shapes several times, the set is laid by itself
 * first; its best lay, repeated along the cloth, is shown as soon as it is better, is where the search over all pieces
 * begins, and is never lost again: a batch takes no more than its best coat repeated.
 */
import type { LayBudget, LayJob } from '../job.ts';
import { costsLess } from './lay-cost.ts';
import { alongFrontier, type Engine, startEngine } from './engine.ts';
import { type Lay, type Model, modelOf } from './model.ts';
import {
  type Block,
  type BlockContent,
  type BlockTurn,
  blockJob,
  blockOf,
  type Chain,
  type ChainLink,
  chainOf,
  mayTurnBlocks,
  type Repeated,
  repeatedSets,
} from './repeat.ts';

/**
 * Shares of the effort. Up to three sets are laid one by one and then all at once; of more, two are laid as one block
 * in between, since what is won there is won for every two.
 */
const FEW_SETS = 3;
const SINGLE_SHARE = 0.6;
const PAIR_SHARE = 0.3;
/** Without a plan: moves for each piece of a block. */
const UNPLANNED_MOVES = 2000;
/** A set of fewer pieces is no coat: repeating it is only one more way to begin. */
const FEWEST_PIECES = 16;
const SMALL_SHARE = 0.08;

/** model: of a job without problems. planned: only helps to divide the effort. */
export function startBatch(model: Model, clock: () => number, planned: LayBudget): Engine {
  const sets = model.held.length === 0 ? setsOf(model.job) : null;
  return sets ? startRepeats(model, sets, clock, planned) : startEngine(model, clock, planned);
}

/**
 * What is laid by itself: all sizes together where the job asks for all of them equally often, else each size; null
 * where one is asked for once, since one set behind another is no good lay then.
 */
function setsOf(job: LayJob): Repeated[] | null {
  const together = repeatedSets(job, () => '');
  if (together.some(({ times }) => times > 1)) return together;
  const bySize = repeatedSets(job, ({ group }) => group ?? '');
  return bySize.length > 0 && bySize.every(({ times }) => times > 1) ? bySize : null;
}

function startRepeats(
  model: Model,
  sets: readonly Repeated[],
  clock: () => number,
  planned: LayBudget,
): Engine {
  const { job } = model;
  const mayTurn = mayTurnBlocks(job);
  const startedMs = clock();
  const spent = () => (planned.seconds === null ? 0 : (clock() - startedMs) / (planned.seconds * 1000));
  const isPlanned = planned.seconds !== null || planned.iterations !== null;
  const times = sets.map((set) => set.times);
  const setCount = times.reduce((sum, each) => sum + each, 0);
  const isCoat = model.items.length / setCount >= FEWEST_PIECES;
  const found: Block[] = [];
  let done = 0;
  let lateMs: number | null = null;
  let better = 0;
  let best: Lay | null = null;
  /** The search over all pieces, once it has begun; and the best lay from elsewhere that waits for it. */
  let whole: Engine | null = null;
  let offered: Lay | null = null;

  /** isOwn: found here, and not taken over from elsewhere. */
  function take(lay: Lay, isOwn = true): void {
    if (best && !costsLess(model, lay, best)) return;
    best = lay;
    if (isOwn) better += 1;
  }

  function budgetOf(share: number, pieceCount: number): LayBudget {
    if (!isPlanned) return { seconds: null, iterations: UNPLANNED_MOVES * pieceCount };
    return {
      seconds: planned.seconds === null ? null : planned.seconds * share,
      iterations: planned.iterations === null ? null : Math.floor(planned.iterations * share),
    };
  }

  /** So many of each set, in blocks one behind another: the larger blocks first. Empty where they find no room. */
  function chainIn(into: Model, content: BlockContent, turn: BlockTurn): Chain[] {
    const open = [...content];
    const links: ChainLink[] = [];
    for (const block of found.toSorted((a, b) => sizeOf(b) - sizeOf(a))) {
      while (block.content.every((count, at) => count <= (open[at] ?? 0))) {
        links.push({ block, turn: links.length % 2 === 1 ? turn : 'as laid' });
        block.content.forEach((count, at) => {
          open[at] = (open[at] ?? 0) - count;
        });
      }
    }
    if (open.some((count) => count > 0)) return [];
    const chain = chainOf(into, links, model.widthMm);
    return chain ? [chain] : [];
  }

  function chainsIn(into: Model, content: BlockContent): Chain[] {
    const alike = chainIn(into, content, 'as laid');
    return mayTurn ? [...alike, ...chainIn(into, content, 'end for end')] : alike;
  }

  /** Runs a search within its budget; told of each better lay, and whether the search found it itself. */
  function* spend(
    engine: Engine,
    budget: LayBudget,
    onBetter: (isOwn: boolean) => void,
  ): Generator<void, void, void> {
    const beginMs = clock();
    let known: Lay | null = null;
    let count = -1;
    for (;;) {
      if (engine.best() !== known) {
        known = engine.best();
        onBetter(engine.betterCount() !== count);
        count = engine.betterCount();
      }
      if (engine.finished()) return;
      if (budget.seconds !== null && clock() - beginMs >= budget.seconds * 1000) return;
      if (budget.iterations !== null && engine.iterations() >= budget.iterations) return;
      const before = engine.iterations();
      engine.advance(null, 1, lateMs);
      done += engine.iterations() - before;
      yield;
    }
  }

  /** A search for one block, which stands with its first lay. */
  function blockSearch(content: BlockContent, share: number): Generator<void, void, void> {
    const own = modelOf(blockJob(job, sets, content));
    const budget = budgetOf(share, own.items.length);
    const engine = startEngine(own, clock, budget, chainsIn(own, content));
    const at = found.length;
    found[at] = blockOf(own, engine.best(), content);
    return spend(engine, budget, () => {
      found[at] = blockOf(own, engine.best(), content);
      for (const chain of chainIn(model, times, 'as laid')) take(chain.lay);
    });
  }

  const one = times.map((_, at) => times.map((__, other) => Number(other === at)));
  const isFew = setCount <= FEW_SETS;
  const oneShare = isCoat ? SINGLE_SHARE : SMALL_SHARE;
  const twoShare = !isCoat || isFew ? 0 : PAIR_SHARE;
  const singles = one.map((content) => blockSearch(content, oneShare / one.length));
  for (const chain of chainIn(model, times, 'as laid')) take(chain.lay);
  // Where lengths are too short for blocks, or hold more without them.
  if (!best || !isCoat || model.bins.length > 1) take(alongFrontier(model, spent));

  function* run(): Generator<void, void, void> {
    for (const search of singles) yield* search;
    if (twoShare > 0) {
      for (const content of one) {
        yield* blockSearch(
          content.map((count) => 2 * count),
          twoShare / one.length,
        );
      }
    }
    const left = budgetOf(1 - oneShare - twoShare, 0);
    const chains = isCoat ? chainsIn(model, times) : [];
    const engine = startEngine(model, clock, isPlanned ? left : planned, chains);
    if (offered) engine.adopt(offered);
    whole = engine;
    yield* spend(engine, { seconds: null, iterations: null }, (isOwn) => take(engine.best(), isOwn));
  }

  const moves = run();
  let isOver = false;
  return {
    advance(endMs, iterations, late) {
      lateMs = late;
      for (let move = 0; (iterations === null || move < iterations) && !isOver; move++) {
        if (endMs !== null && clock() >= endMs) break;
        isOver = moves.next().done === true;
      }
      return !isOver;
    },
    best: () => best!,
    adopt(lay) {
      if (best && !costsLess(model, lay, best)) return false;
      if (whole) return whole.adopt(lay);
      if (!offered || costsLess(model, lay, offered)) offered = lay;
      return true;
    },
    betterCount: () => better,
    iterations: () => done,
    atFloor: () => whole?.atFloor() ?? false,
    finished: () => isOver,
  };
}

function sizeOf({ content }: Block): number {
  return content.reduce((sum, count) => sum + count, 0);
}
