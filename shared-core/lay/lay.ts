/**
 * The lay: a job goes in, better and better placements come out. Nothing here knows the time: the clock
 * is passed in, so the same job, seed and number of iterations give the same lay everywhere.
 */
import { problemSentence } from '../measure/problem.ts';
import { say } from '../wording/say.ts';
import { startBatch } from './engine/batch.ts';
import { modelOf } from './engine/model.ts';
import { OutOfMemory } from './engine/moves.ts';
import { layOfResult, layResult } from './engine/result.ts';
import { type LayBudget, type LayJob, type LayResult, maxOvertime } from './job.ts';
import { layProblems } from './problems.ts';

export { layProblems } from './problems.ts';

/** A slice of work: it ends at the first of the two; null for no bound of that kind. */
export interface LaySlice {
  readonly ms: number | null;
  readonly iterations: number | null;
  /** After so many ms even a move half way is given up, where it would take long; null or absent: never. */
  readonly maxMs?: number | null;
}

/** A search that a worker runs slice by slice; it can be left at any time. */
export interface LaySearch {
  /** Works for a slice. False when there is nothing left to try; both bounds null is a programmer's mistake and throws. */
  advance(slice: LaySlice): boolean;
  /** The best lay so far: valid from the start. */
  best(): LayResult;
  /**
   * Takes over a better lay of the same job found elsewhere, under whatever seed: the search goes on from it at its next
   * start. Ignored, and false, where it is no complete lay of this job or no better than the best. One whose pieces
   * overlap is ignored when its turn comes.
   */
  adopt(result: LayResult): boolean;
  /** Grows by one each time a better lay is found by this search itself, so that a worker posts only news. */
  betterCount(): number;
}

/** Milliseconds from any fixed moment. */
export type Clock = () => number;

/**
 * Begins a lay: the first valid one stands when this returns. Throws on a job with problems (see layProblems).
 * plannedIterations and plannedMs only help the search to divide its effort; neither ends it.
 */
export function startLay(job: LayJob, clock: Clock, planned?: LayBudget): LaySearch {
  const problems = layProblems(job);
  if (problems.length > 0) {
    throw new Error(problems.map(problemSentence).join(' '));
  }
  const startedMs = clock();
  const model = modelOf(job);
  const engine = withinMemory(() => startBatch(model, clock, planned ?? { seconds: null, iterations: null }));
  let endMs = startedMs;
  return {
    advance({ ms, iterations, maxMs = null }) {
      if (ms === null && iterations === null) throw new Error('a slice needs a bound');
      const nowMs = clock();
      const going = withinMemory(() =>
        engine.advance(ms === null ? null : nowMs + ms, iterations, maxMs === null ? null : nowMs + maxMs),
      );
      endMs = clock();
      return going;
    },
    best() {
      const stoppedBy = engine.atFloor() ? 'floor' : engine.finished() ? 'nothing left to try' : 'under way';
      return layResult(model, engine.best(), engine.iterations(), (endMs - startedMs) / 1000, stoppedBy);
    },
    adopt(result) {
      const found = layOfResult(model, result);
      return found !== null && engine.adopt(found);
    },
    betterCount: () => engine.betterCount(),
  };
}

/** Throws in the maker's words where the engine finds no more memory. */
function withinMemory<Made>(work: () => Made): Made {
  try {
    return work();
  } catch (error) {
    throw error instanceof OutOfMemory ? new Error(say('lay.needs-more-memory-than-there-is')) : error;
  }
}

export interface LayRun {
  readonly clock: Clock;
  /** Asked between slices: true to stop and take the best so far. */
  readonly stopped?: () => boolean;
  /** Told each better lay, the first one included. */
  readonly onBetter?: (result: LayResult) => void;
}

const SLICE_MS = 40;
const SLICE_ITERATIONS = 200;

/** A lay under way within a budget, for whoever has other things to do between its slices. */
export interface LaySteps {
  /** Works for a slice. The lay when it is done, null while it is not. */
  step(): LayResult | null;
  adopt(result: LayResult): boolean;
}

/** Lays the job within the budget. A budget without any bound runs until there is nothing left to try or it is stopped. */
export function lay(job: LayJob, budget: LayBudget, run: LayRun): LayResult {
  const steps = layInSteps(job, budget, run);
  for (;;) {
    const result = steps.step();
    if (result !== null) return result;
  }
}

/** Begins a lay within the budget; the first valid one is told when this returns. */
export function layInSteps(job: LayJob, budget: LayBudget, run: LayRun): LaySteps {
  const startedMs = run.clock();
  const search = startLay(job, run.clock, budget);
  let told = -1;
  const tell = (): void => {
    if (run.onBetter !== undefined && search.betterCount() !== told) run.onBetter(search.best());
    told = search.betterCount();
  };
  tell();
  const step = (): LayResult | null => {
    const result = search.best();
    if (result.stoppedBy === 'floor') return result;
    const isBehind = result.iterations < (budget.minIterations ?? 0);
    const seconds = budget.seconds === null ? Infinity : budget.seconds * (isBehind ? maxOvertime : 1);
    const leftMs = startedMs + seconds * 1000 - run.clock();
    if (leftMs <= 0) return { ...result, stoppedBy: 'time' };
    const leftIterations = budget.iterations === null ? Infinity : budget.iterations - result.iterations;
    if (leftIterations <= 0) return { ...result, stoppedBy: 'iterations' };
    if (run.stopped?.() === true) return { ...result, stoppedBy: 'maker' };
    const going = search.advance({
      ms: budget.seconds === null && budget.iterations !== null ? null : Math.min(leftMs, SLICE_MS),
      iterations: Math.min(leftIterations, SLICE_ITERATIONS),
      maxMs: Number.isFinite(leftMs) ? leftMs : null,
    });
    tell();
    return going ? null : search.best();
  };
  return { step, adopt: (result) => search.adopt(result) };
}
