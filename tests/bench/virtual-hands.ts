/**
 * Hands that take turns in one thread as if each had a core of its own. Each has a clock that runs only while it works,
 * by so many moves a second whatever the machine does, and whichever is furthest behind goes next: the same jobs give
 * the same lays everywhere.
 */
import type { HandEvents, Workplace } from '../../shared-core/lay/team/hands.ts';
import { layMember, type MemberOrder } from '../../shared-core/lay/team/member.ts';

interface VirtualHand {
  ms: number;
  /** Goes on after a rest; null while it has nothing to do. */
  wake: (() => void) | null;
  readonly orders: { readonly order: MemberOrder; readonly sentMs: number }[];
  readonly hear: (order: MemberOrder) => void;
}

/** A real hand needs so long until it makes its first move: the thread, then its tables. */
const START_MS = 160;
/** The search looks at the clock before each move: about so many make a millisecond on the machines it was measured on. */
const LOOKS_PER_MS = 25;

export interface VirtualWorkplace extends Workplace {
  /** Lets the hands work until none has anything left to do. */
  readonly run: () => Promise<void>;
}

export function virtualWorkplace(handCount: number): VirtualWorkplace {
  const hands: VirtualHand[] = [];
  const timers: { readonly ms: number; readonly then: () => void }[] = [];
  let nowMs = 0;
  let atWork: { readonly hand: VirtualHand; readonly turnOver: () => void } | null = null;
  const clock = (): number => (atWork === null ? nowMs : atWork.hand.ms);

  const endTurn = (hand: VirtualHand): void => {
    const { turnOver } = atWork!;
    nowMs = hand.ms;
    atWork = null;
    turnOver();
  };
  const startHand = ({ answered }: HandEvents) => {
    const hand: VirtualHand = {
      ms: clock() + START_MS,
      wake: null,
      orders: [],
      hear: layMember({
        clock: () => {
          hand.ms += 1 / LOOKS_PER_MS;
          return hand.ms;
        },
        rest: () =>
          new Promise((resolve) => {
            hand.wake = resolve;
            endTurn(hand);
          }),
        post: (answer) => {
          answered(answer);
          if (answer.kind === 'done' || answer.kind === 'failed') endTurn(hand);
        },
      }),
    };
    hands.push(hand);
    return {
      send: (order: MemberOrder) => void hand.orders.push({ order, sentMs: clock() }),
      end: () => hands.splice(hands.indexOf(hand), 1),
    };
  };
  const nextMs = (hand: VirtualHand): number =>
    hand.wake !== null ? hand.ms : Math.max(hand.ms, hand.orders[0]?.sentMs ?? Infinity);

  async function run(): Promise<void> {
    for (;;) {
      const [hand] = hands.toSorted((a, b) => nextMs(a) - nextMs(b));
      const [timer] = timers.toSorted((a, b) => a.ms - b.ms);
      const handMs = hand === undefined ? Infinity : nextMs(hand);
      if (timer !== undefined && timer.ms <= handMs) {
        timers.splice(timers.indexOf(timer), 1);
        nowMs = timer.ms;
        timer.then();
        continue;
      }
      if (hand === undefined || handMs === Infinity) return;
      hand.ms = handMs;
      await new Promise<void>((turnOver) => {
        atWork = { hand, turnOver };
        const wake = hand.wake;
        hand.wake = null;
        let hasWork = wake !== null;
        while (hand.orders[0] !== undefined && hand.orders[0].sentMs <= handMs) {
          const { order } = hand.orders.shift()!;
          hasWork ||= order.kind === 'lay';
          hand.hear(order);
        }
        wake?.();
        // What comes when the lay is over already is not answered.
        if (!hasWork) endTurn(hand);
      });
    }
  }

  return {
    handCount,
    startHand,
    clock,
    later: (ms, then) => void timers.push({ ms: clock() + ms, then }),
    run,
  };
}
