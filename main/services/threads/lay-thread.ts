/** One hand of the headless command: a thread with the same core code as the window's workers. */
import { setImmediate } from 'node:timers/promises';
import { parentPort } from 'node:worker_threads';
import { layMember, type MemberOrder } from '../../../shared-core/lay/team/member.ts';

const hear = layMember({
  clock: () => performance.now(),
  post: (answer) => parentPort?.postMessage(answer),
  rest: () => setImmediate(),
});

parentPort?.on('message', (order: MemberOrder) => hear(order));
