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

function die(): never {
  if (by === 'throw') throw new Error('the needle broke');
  if (by === 'exit') process.exit(7);
  const shelf: unknown[] = [];
  for (;;) shelf.push(Array.from({ length: 1000 }, (_, at) => ({ at })));
}
