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
import type { ThreadAnswer, ThreadOrder } from './lay-thread.ts';

export interface LayThreads {
  readonly runLay: RunLay;
  readonly close: () => Promise<void>;
}

interface Waiting {
  readonly job: LayJob;
  readonly what: string;
  readonly resolve: (result: LayResult) => void;
  readonly reject: (error: Error) => void;
}

/** Threads that lay within a budget, with overtime on a busy machine until a lay is sensible (unless the budget names its least itself). A budget that is a function is asked for each lay as it begins. Jobs wait their turn in the order asked. Rejects with the name of the lay that failed. */
export function openLayThreads(
  budgetOrAsk: LayBudget | (() => LayBudget),
  threadCount = Math.min(8, availableParallelism()),
): LayThreads {
  const idle: Worker[] = [];
  const all: Worker[] = [];
  const waiting: Waiting[] = [];

  const serve = (): void => {
    while (waiting.length > 0) {
      const worker = idle.pop() ?? (all.length < threadCount ? startThread() : undefined);
      if (!worker) return;
      run(worker, waiting.shift() as Waiting);
    }
  };
  const startThread = (): Worker => {
    const worker = new Worker(new URL('./lay-thread.ts', import.meta.url));
    all.push(worker);
    return worker;
  };
  const run = (worker: Worker, { job, what, resolve, reject }: Waiting): void => {
    const failed = (error: Error): void => reject(new Error(`${what}: ${error.message}`));
    worker.once('error', failed);
    worker.once('message', (answer: ThreadAnswer) => {
      worker.off('error', failed);
      idle.push(worker);
      if (answer.ok) resolve(answer.result);
      else failed(new Error(answer.sentence));
      serve();
    });
    const budget = typeof budgetOrAsk === 'function' ? budgetOrAsk() : budgetOrAsk;
    const usualLeast = budget.seconds === null ? 0 : sensibleIterations(job);
    const leastIterations = budget.leastIterations ?? usualLeast;
    worker.postMessage({ job, budget: { ...budget, leastIterations } } satisfies ThreadOrder);
  };

  return {
    runLay: (job, what) =>
      new Promise((resolve, reject) => {
        waiting.push({ job, what, resolve, reject });
        serve();
      }),
    close: async () => {
      await Promise.all(all.map((worker) => worker.terminate()));
    },
  };
}
