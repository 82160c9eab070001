/** One hand of the window: a worker that lays beside it. */
import './worker-language.ts';
import { layMember, type MemberOrder } from '../../../shared-core/lay/team/member.ts';

// A message to oneself comes after those that wait, and without the least delay of a timer.
const { port1: from, port2: to } = new MessageChannel();

const hear = layMember({
  clock: () => performance.now(),
  post: (answer) => self.postMessage(answer),
  rest: () =>
    new Promise((resolve) => {
      to.onmessage = () => resolve();
      from.postMessage(null);
    }),
});

self.onmessage = (event: MessageEvent<MemberOrder>) => hear(event.data);
