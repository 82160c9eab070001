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
  type BlockContent,
  blockJob,
  blockOf,
  chainOf,
  type Chain,
  mayTurnBlocks,
  type Repeated,
  repeatedSets,
} from './repeat.ts';

/** Shares of the effort: for the sets alone, for two of them as one block, and the rest for all pieces at once. */
const SINGLE_SHARE = 0.35;
const PAIR_SHARE = 0.2;
/** Of the effort without a plan: moves for each of its pieces. */
const UNPLANNED_MOVES = 2000;

/** startSeed: of the model's job. */
export function startBatch(model: Model, clock: () => number, planned: LayBudget): Engine {
  const sets = repeatedSets(model.job);
  const times = sets.reduce((sum, set) => sum + set.times, 0);
  return times < 2 ? startEngine(model, clock, planned) : startRepeats(model, sets, clock, planned);
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
  const startedMs = clock();
  let done = 0;
  let better = 0;
  /** The best chain of blocks so far, and the search over all pieces once that has begun. */
  let best: Lay | null = null;
  let whole: Engine | null = null;
  const found = new Map<string, Block>();

  function share(of: number): LayBudget {
    return {
      seconds: planned.seconds === null ? null : planned.seconds * of,
      iterations: planned.iterations === null ? null : Math.floor(planned.iterations * of),
    };
  }

  /** Blocks enough for the whole job: the largest content first. */
  function sequence(): Block[] | null {
    const open = sets.map(({ times }) => times);
    const blocks: Block[] = [];
    const bySize = [...found.values()].sort(
      (a, b) => perSet(a) - perSet(b) || total(b.content) - total(a.content),
    );
    for (const block of bySize) {
      while (block.content.every((count, at) => count <= open[at]!)) {
        blocks.push(block);
        block.content.forEach((count, at) => (open[at]! -= count));
      }
    }
    return open.every((count) => count === 0) ? blocks : null;
  }

  /** Length for the pieces' area: what a block takes, whatever sets are in it. */
  function perSet(block: Block): number {
    const area = block.pieces.reduce((sum, { form }) => sum + form.areaMm2, 0);
    return block.lengthMm / area;
  }

  function chains(): Chain[] {
    const blocks = sequence();
    if (!blocks) return [];
    const alike = chainOf(
      model,
      blocks.map((block) => ({ block, turn: 'as laid' })),
      widthMm,
    );
    const turned = mayTurn
      ? chainOf(
          model,
          blocks.map((block, at) => ({ block, turn: at % 2 === 0 ? 'as laid' : 'end for end' })),
          widthMm,
        )
      : null;
    return [alike, turned].filter((chain) => chain !== null);
  }

  function take(lay: Lay): void {
    if (best && !isShorter(model, lay, best)) return;
    best = lay;
    better += 1;
  }

  /** Looks for one block; each better lay of it is repeated for the whole job. */
  function* lookFor(content: BlockContent, budget: LayBudget, from: Chain | null, blockModel: Model) {
    const engine = startEngine(blockModel, clock, budget, from);
    let known = -1;
    const learn = () => {
      if (engine.betterCount() === known) return;
      known = engine.betterCount();
      found.set(content.join(' '), blockOf(blockModel, engine.best(), content));
      const [first] = chains();
      if (first) take(first.lay);
    };
    learn();
    const untilMs = budget.seconds === null ? Infinity : clock() + budget.seconds * 1000;
    const moves =
      budget.iterations ?? (budget.seconds === null ? UNPLANNED_MOVES * blockModel.items.length : Infinity);
    for (let move = 0; move < moves && clock() < untilMs; move++) {
      if (!engine.advance(null, 1)) break;
      learn();
      yield;
    }
    learn();
  }
  return null as never;
}
