/** A lay thread that dies of some jobs, for tests: workerData says of which seed, and in which way. */
import { parentPort, workerData } from 'node:worker_threads';
import { lay } from '../../../shared-core/lay/lay.ts';
import type { MemberAnswer, MemberOrder } from '../../../shared-core/lay/team/member.ts';

export interface Mortality {
  readonly seed: number;
  readonly by: 'exit' | 'throw' | 'memory';
}

const { seed, by } = workerData as Mortality;

parentPort?.on('message', (order: MemberOrder) => {
  if (order.kind !== 'lay') return;
  const { id, job, budget } = order;
  if (job.seed === seed) die();
  const result = lay(job, budget, { clock: () => 0 });
  parentPort?.postMessage({ kind: 'done', id, result } satisfies MemberAnswer);
});

/**
 * A memory that is really full is no matter for a test: where V8 cannot end the thread in time, it ends the process.
 * What Node says of a thread that ran out of memory is its code, and a thread may throw it by itself.
 */
function die(): never {
  if (by === 'exit') process.exit(7);
  if (by === 'throw') throw new Error('the needle broke');
  throw Object.assign(new Error('heap out of memory'), { code: 'ERR_WORKER_OUT_OF_MEMORY' });
}
