/** Lays for the headless command: a few worker threads, each one lay at a time. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import {
  type LayBudget,
  type LayJob,
  type LayResult,
  sensibleIterations,
} from '../../shared-core/lay/job.ts';
import type { RunLay } from '../../shared-core/lay/plan-lay.ts';
import { type Problem, problemSentence } from '../../shared-core/measure/problem.ts';
import type { ThreadAnswer, ThreadOrder } from './lay-thread.ts';

export interface LayThreads {
  readonly runLay: RunLay;
  /** Lays that are still waited for reject. */
  readonly close: () => Promise<void>;
}

/** A lay that was given up because of the machine, with what the maker can do. */
export class LayGivenUp extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problemSentence(problem));
    this.problem = problem;
  }
}

interface Waiting {
  readonly job: LayJob;
  readonly what: string;
  /** Whether a thread has died at it already. */
  readonly isRetry: boolean;
  readonly resolve: (result: LayResult) => void;
  readonly reject: (error: Error) => void;
}

/**
 * Threads that lay within a budget, with overtime on a busy machine until a lay is sensible (unless the budget names
 * its least itself). A budget that is a function is asked for each lay as it begins. Jobs wait their turn in the
 * order asked. A thread that dies is replaced and its lay tried once more.
 *
 * runLay rejects with the name of the lay that failed, and with LayGivenUp where two threads have died at it.
 */
export function openLayThreads(
  budgetOrAsk: LayBudget | (() => LayBudget),
  threadCount = Math.min(8, availableParallelism()),
  startThread = () => new Worker(new URL('./lay-thread.ts', import.meta.url)),
): LayThreads {
  const idle = new Set<Worker>();
  const busy = new Map<Worker, Waiting>();
  const waiting: Waiting[] = [];
  let isClosed = false;

  const serve = (): void => {
    while (waiting.length > 0) {
      const [ready] = idle;
      const worker = ready ?? (busy.size < threadCount ? watchedThread() : undefined);
      if (!worker) return;
      idle.delete(worker);
      run(worker, waiting.shift() as Waiting);
    }
  };
  const watchedThread = (): Worker => {
    const worker = startThread();
    let cause: string | undefined;
    worker.on('message', (answer: ThreadAnswer) => answered(worker, answer));
    worker.on('error', (error) => {
      cause = causeOf(error);
    });
    worker.on('messageerror', (error) => {
      cause = error.message;
      void worker.terminate();
    });
    // The one event that every death ends with, and the last one of a thread.
    worker.on('exit', (code) => died(worker, cause ?? `it ended with code ${code}`));
    return worker;
  };
  const answered = (worker: Worker, answer: ThreadAnswer): void => {
    const { what, resolve, reject } = busy.get(worker) as Waiting;
    busy.delete(worker);
    idle.add(worker);
    if (answer.ok) resolve(answer.result);
    else reject(new Error(`${what}: ${answer.sentence}`));
    serve();
  };
  const died = (worker: Worker, cause: string): void => {
    const asked = busy.get(worker);
    busy.delete(worker);
    idle.delete(worker);
    if (asked && isClosed) asked.reject(closedBefore(asked.what));
    else if (asked?.isRetry) asked.reject(new LayGivenUp(diedTwice(asked.what, cause)));
    else if (asked) waiting.unshift({ ...asked, isRetry: true });
    serve();
  };
  const run = (worker: Worker, asked: Waiting): void => {
    busy.set(worker, asked);
    const { job } = asked;
    const budget = typeof budgetOrAsk === 'function' ? budgetOrAsk() : budgetOrAsk;
    const usualLeast = budget.seconds === null ? 0 : sensibleIterations(job);
    const leastIterations = budget.leastIterations ?? usualLeast;
    worker.postMessage({ job, budget: { ...budget, leastIterations } } satisfies ThreadOrder);
  };

  return {
    runLay: (job, what) =>
      new Promise((resolve, reject) => {
        if (isClosed) return reject(closedBefore(what));
        waiting.push({ job, what, isRetry: false, resolve, reject });
        serve();
      }),
    close: async () => {
      isClosed = true;
      for (const { what, reject } of waiting.splice(0)) reject(closedBefore(what));
      await Promise.all([...idle, ...busy.keys()].map((worker) => worker.terminate()));
    },
  };
}

function causeOf(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return code === 'ERR_WORKER_OUT_OF_MEMORY' ? 'its memory ran out' : message;
}

function diedTwice(what: string, cause: string): Problem {
  return {
    where: `The lay of ${what}`,
    what: `could not be finished: what looks for it stopped twice (${cause})`,
    mend: 'Close other programs and try again; if it stops again, plan fewer coats at once.',
  };
}

function closedBefore(what: string): Error {
  return new Error(`${what}: closed before it was laid`);
}
