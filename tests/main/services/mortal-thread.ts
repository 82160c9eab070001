/** A lay thread that dies of some jobs, for tests: workerData says of which seed, and in which way. */
import { parentPort, workerData } from 'node:worker_threads';
import type { ThreadOrder } from '../../../main/services/lay-thread.ts';
import { lay } from '../../../shared-core/lay/lay.ts';

export interface Mortality {
  readonly seed: number;
  readonly by: 'exit' | 'throw' | 'memory';
}

const { seed, by } = workerData as Mortality;

parentPort?.on('message', ({ job, budget }: ThreadOrder) => {
  if (job.seed === seed) die();
  parentPort?.postMessage({ ok: true, result: lay(job, budget, { clock: () => 0 }) });
});

function die(): never {
  if (by === 'throw') throw new Error('the needle broke');
  if (by === 'exit') process.exit(7);
  const shelf: unknown[] = [];
  for (;;) shelf.push(Array.from({ length: 1000 }, (_, at) => ({ at })));
}
