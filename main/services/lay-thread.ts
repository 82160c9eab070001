/** One lay in a worker thread: the same core code as the window's workers, checked before it is given back. */
import { parentPort } from 'node:worker_threads';
import { checkLay } from '../../shared-core/lay/check.ts';
import type { LayBudget, LayJob, LayResult } from '../../shared-core/lay/job.ts';
import { lay } from '../../shared-core/lay/lay.ts';
import { problemSentence } from '../../shared-core/measure/problem.ts';

export interface ThreadOrder {
  readonly job: LayJob;
  readonly budget: LayBudget;
}

export type ThreadAnswer =
  | { readonly ok: true; readonly result: LayResult }
  | { readonly ok: false; readonly sentence: string };

parentPort?.on('message', ({ job, budget }: ThreadOrder) => {
  parentPort?.postMessage(answer(job, budget));
});

function answer(job: LayJob, budget: LayBudget): ThreadAnswer {
  try {
    const result = lay(job, budget, { clock: () => performance.now() });
    const problems = checkLay(job, result);
    return problems.length > 0
      ? { ok: false, sentence: problems.map(problemSentence).join(' ') }
      : { ok: true, result };
  } catch (error) {
    return { ok: false, sentence: error instanceof Error ? error.message : String(error) };
  }
}
