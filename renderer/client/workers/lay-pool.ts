/** Workers for lays, beside the window: see shared-core/lay/team/team.ts for who works on what. */
import { say } from '../../../shared-core/wording/say.ts';
import { type Hand, type HandEvents, handsFor } from '../../../shared-core/lay/team/hands.ts';
import { type LayJob, type LayResult, sensibleIterations } from '../../../shared-core/lay/job.ts';
import type { MemberAnswer, MemberOrder } from '../../../shared-core/lay/team/member.ts';
import { layTeams } from '../../../shared-core/lay/team/team.ts';
import { workerName } from './worker-name.ts';
import type { LayFailure } from '../../../shared-core/lay/team/team-order.ts';

export interface LayOrder {
  readonly job: LayJob;
  /** A function is asked when a worker begins the lay. */
  readonly seconds: number | (() => number);
  /** Takes overtime on a busy machine until the lay is sensible. */
  readonly isThorough: boolean;
  readonly onBetter?: (result: LayResult) => void;
  /** Aborting takes the best lay so far; a lay that has none yet rejects. */
  readonly signal?: AbortSignal;
}

export const workerCount = handsFor(navigator.hardwareConcurrency || 2);

const teams = layTeams({
  handCount: workerCount,
  startHand: startWorker,
  clock: () => performance.now(),
  later: (ms, then) => void setTimeout(then, ms),
});

function startWorker({ answered, died }: HandEvents): Hand {
  const worker = new Worker(new URL('./lay-worker.ts', import.meta.url), {
    type: 'module',
    name: workerName('lay'),
  });
  const dead = (cause: string): void => {
    worker.terminate();
    died(cause);
  };
  worker.onmessage = (event: MessageEvent<MemberAnswer>) => answered(event.data);
  worker.onerror = (event) => dead(event.message || say('lay-pool.it-gave-no-reason'));
  worker.onmessageerror = () => dead(say('lay-pool.its-answer-could-not-be-read'));
  return {
    send: (order: MemberOrder) => worker.postMessage(order),
    end: () => worker.terminate(),
  };
}

/** Lays a job on the workers that are free. Rejects where two workers have died at it. */
export function layInWorker({ job, seconds, isThorough, onBetter, signal }: LayOrder): Promise<LayResult> {
  return new Promise((resolve, reject) => {
    if (signal?.aborted) return reject(new Error(failureWords({ kind: 'stopped', hadBegun: false })));
    const settled = new AbortController();
    const stop = teams.lay({
      job,
      budget: () => ({
        seconds: typeof seconds === 'function' ? seconds() : seconds,
        iterations: null,
        minIterations: isThorough ? sensibleIterations(job) : 0,
      }),
      ...(onBetter ? { onBetter } : {}),
      done: (result) => {
        settled.abort();
        resolve(result);
      },
      failed: (failure) => {
        settled.abort();
        reject(new Error(failureWords(failure)));
      },
    });
    signal?.addEventListener('abort', stop, { once: true, signal: settled.signal });
  });
}

function failureWords(failure: LayFailure): string {
  switch (failure.kind) {
    case 'refused':
      return failure.sentence;
    case 'died twice':
      return say('lay-pool.the-lay-could-not-be-finished', { cause: failure.cause });
    case 'stopped':
      return failure.hadBegun
        ? say('lay-pool.stopped-before-a-first-lay-was')
        : say('lay-pool.stopped-before-it-began');
    case 'closed':
      return say('lay-pool.closed-before-it-was-laid');
    default:
      return failure satisfies never;
  }
}
