/**
 * The search over a whole job. Where it asks for the same set of shapes several times, the set is laid by itself
 * first; its best lay, repeated along the cloth, is shown as soon as it is better, is where the search over all pieces
 * begins, and is never lost again: a batch takes no more than its best coat repeated.
 */
import type { LayBudget } from '../job.ts';
import { type Engine, isShorter, startEngine } from './engine.ts';
import { type Lay, type Model, modelOf } from './model.ts';
import {
  type Block,
  type BlockTurn,
  blockJob,
  blockOf,
  type Chain,
  type ChainLink,
  chainOf,
  mayTurnBlocks,
  type Repeated,
  repeatedSets,
  type Seam,
  seamOf,
} from './repeat.ts';

/** Shares of the effort: for each set alone, for the seams between two; the rest is for all pieces at once. */
const SINGLE_SHARE = 0.5;
const SEAM_SHARE = 0.2;
/** Two sets have one seam, which is found among all pieces. */
const SINGLE_SHARE_OF_TWO = 0.4;
/** Without a plan: moves for each piece of a block. */
const UNPLANNED_MOVES = 2000;
/** A set of fewer pieces is no coat: repeating it is only one more way to begin. */
const FEWEST_PIECES = 16;
const FEW_SHARE = 0.08;

/** model: of a job without problems. planned: only helps to divide the effort. */
export function startBatch(model: Model, clock: () => number, planned: LayBudget): Engine {
  const sets = repeatedSets(model.job);
  const setCount = sets.reduce((sum, { times }) => sum + times, 0);
  if (setCount < 2) return startEngine(model, clock, planned);
  return startRepeats(model, sets, clock, planned);
}

/** Indices of the sets, one for each block, alike side by side. */
function blockOrder(sets: readonly Repeated[]): number[] {
  return sets.flatMap(({ times }, at) => Array.from({ length: times }, () => at));
}

function startRepeats(
  model: Model,
  sets: readonly Repeated[],
  clock: () => number,
  planned: LayBudget,
): Engine {
  const { job } = model;
  const widthMm = model.bins.at(-1)?.widthMm ?? model.widthMm;
  const mayTurn = mayTurnBlocks(job);
  const isPlanned = planned.seconds !== null || planned.iterations !== null;
  const order = blockOrder(sets);
  const isCoat = model.items.length / order.length >= FEWEST_PIECES;
  const singleShare = !isCoat ? FEW_SHARE : order.length === 2 ? SINGLE_SHARE_OF_TWO : SINGLE_SHARE;
  /** By set, and by the two sets on both sides. */
  const blocks = new Map<number, Block>();
  const seams = new Map<string, Seam>();
  let done = 0;
  let better = 0;
  let best: Lay | null = null;
  /** The search over all pieces, once it has begun. */
  let whole: Engine | null = null;

  function take(lay: Lay): void {
    if (best && !isShorter(model, lay, best)) return;
    best = lay;
    better += 1;
  }

  function budgetOf(share: number, pieceCount: number): LayBudget {
    if (!isPlanned) return { seconds: null, iterations: UNPLANNED_MOVES * pieceCount };
    return {
      seconds: planned.seconds === null ? null : planned.seconds * share,
      iterations: planned.iterations === null ? null : Math.floor(planned.iterations * share),
    };
  }

  /** These sets one behind another in a model; null while one of them was not laid yet, or where they find no room. */
  function chainIn(into: Model, of: readonly number[], turn: BlockTurn = 'as laid'): Chain | null {
    const links: ChainLink[] = [];
    for (const [at, set] of of.entries()) {
      const block = blocks.get(set);
      if (!block) return null;
      const isTurned = at % 2 === 1 && turn === 'end for end';
      const seam = turn === 'as laid' && at > 0 ? seams.get(`${of[at - 1]} ${set}`) : undefined;
      links.push({ block, turn: isTurned ? turn : 'as laid', seam: seam ?? null });
    }
    return chainOf(into, links, widthMm);
  }

  function takeChain(): void {
    const chain = chainIn(model, order);
    if (chain) take(chain.lay);
  }

  /** Runs a search within its budget; told of each better lay. */
  function* spend(engine: Engine, budget: LayBudget, onBetter: () => void): Generator<void, void, void> {
    const startedMs = clock();
    let known = -1;
    for (;;) {
      if (engine.betterCount() !== known) {
        known = engine.betterCount();
        onBetter();
      }
      if (engine.finished()) return;
      if (budget.seconds !== null && clock() - startedMs >= budget.seconds * 1000) return;
      if (budget.iterations !== null && engine.iterations() >= budget.iterations) return;
      engine.advance(null, 1);
      done += 1;
      yield;
    }
  }

  function* laySet(set: number, share: number): Generator<void, void, void> {
    const content = sets.map((_, at) => (at === set ? 1 : 0));
    const own = modelOf(blockJob(job, sets, content, widthMm));
    const budget = budgetOf(share, own.items.length);
    const engine = startEngine(own, clock, budget);
    yield* spend(engine, budget, () => {
      blocks.set(set, blockOf(own, engine.best()));
      takeChain();
    });
  }

  function* laySeam(first: number, second: number, share: number): Generator<void, void, void> {
    const content = sets.map((_, at) => Number(at === first) + Number(at === second));
    const both = modelOf(blockJob(job, sets, content, widthMm));
    const chain = chainIn(both, [first, second]);
    if (!chain) return;
    const budget = budgetOf(share, both.items.length);
    const engine = startEngine(both, clock, budget, [], chain);
    yield* spend(engine, budget, () => {
      seams.set(`${first} ${second}`, seamOf(both, chain, engine.best()));
      takeChain();
    });
  }

  function* run(): Generator<void, void, void> {
    let left = 1;
    for (const set of sets.keys()) {
      left -= singleShare / sets.length;
      yield* laySet(set, singleShare / sets.length);
    }
    if (isCoat && order.length > 2) {
      const pairs = new Set(order.slice(1).map((set, at) => `${order[at]} ${set}`));
      for (const pair of pairs) {
        const [first, second] = pair.split(' ').map(Number);
        left -= SEAM_SHARE / pairs.size;
        yield* laySeam(first!, second!, SEAM_SHARE / pairs.size);
      }
    }
    const turned = mayTurn ? chainIn(model, order, 'end for end') : null;
    const chains = isCoat ? [chainIn(model, order), turned].filter((chain) => chain !== null) : [];
    const engine = startEngine(model, clock, isPlanned ? budgetOf(left, 0) : planned, chains);
    whole = engine;
    yield* spend(engine, { seconds: null, iterations: null }, () => take(engine.best()));
  }

  const moves = run();
  let isOver = false;
  // Up to the first lay of the first set: the job then has a lay too.
  while (!best && !isOver) isOver = moves.next().done === true;
  return {
    advance(endMs, iterations) {
      for (let move = 0; (iterations === null || move < iterations) && !isOver; move++) {
        if (endMs !== null && clock() >= endMs) break;
        isOver = moves.next().done === true;
      }
      return !isOver;
    },
    best: () => best!,
    betterCount: () => better,
    iterations: () => done,
    atFloor: () => whole?.atFloor() ?? false,
    finished: () => isOver,
  };
}
