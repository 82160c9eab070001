/** Runs one lay at a time beside the window: posts the first valid lay at once, then each better one, each checked first. */
import { layChecker } from '../../shared-core/lay/check.ts';
import { type LayJob, type LayResult, sensibleIterations } from '../../shared-core/lay/job.ts';
import { lay } from '../../shared-core/lay/lay.ts';
import { problemSentence } from '../../shared-core/measure/problem.ts';

export interface LayAsked {
  readonly id: number;
  readonly job: LayJob;
  readonly seconds: number;
  /** Takes overtime on a busy machine until the lay is sensible. */
  readonly isThorough: boolean;
}

export type LayAnswer =
  | { readonly kind: 'better'; readonly id: number; readonly result: LayResult }
  | { readonly kind: 'done'; readonly id: number; readonly result: LayResult }
  | { readonly kind: 'failed'; readonly id: number; readonly sentence: string };

function answer(message: LayAnswer): void {
  self.postMessage(message);
}

/** Gives a lay back when it is sound and throws otherwise. */
function checkerOf(job: LayJob): (result: LayResult) => LayResult {
  const faultsOf = layChecker(job);
  return (result) => {
    const problems = faultsOf(result);
    if (problems.length > 0) throw new Error(problems.map(problemSentence).join(' '));
    return result;
  };
}

self.onmessage = (event: MessageEvent<LayAsked>) => {
  const { id, job, seconds, isThorough } = event.data;
  try {
    const checked = checkerOf(job);
    const result = lay(
      job,
      { seconds, iterations: null, leastIterations: isThorough ? sensibleIterations(job) : 0 },
      {
        clock: () => performance.now(),
        onBetter: (better) => answer({ kind: 'better', id, result: checked(better) }),
      },
    );
    answer({ kind: 'done', id, result: checked(result) });
  } catch (error) {
    answer({ kind: 'failed', id, sentence: error instanceof Error ? error.message : String(error) });
  }
};
