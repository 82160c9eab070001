/** Hands that do what the test says: they lay nothing by themselves. Time passes when the test lets it. */
import type { HandEvents, Workplace } from '../../../shared-core/lay/team/hands.ts';
import type { LayResult } from '../../../shared-core/lay/job.ts';
import type { MemberOrder } from '../../../shared-core/lay/team/member.ts';

class HandOfTest {
  readonly orders: MemberOrder[] = [];
  isEnded = false;
  readonly #events: HandEvents;
  constructor(events: HandEvents) {
    this.#events = events;
  }
  readonly send = (order: MemberOrder): void => {
    this.orders.push(order);
  };
  readonly end = (): void => {
    this.isEnded = true;
  };
  answer(kind: 'shared' | 'better' | 'done', result: LayResult): void {
    this.#events.answered({ kind, id: this.#lastId(), result });
  }
  fail(sentence: string): void {
    this.#events.answered({ kind: 'failed', id: this.#lastId(), sentence });
  }
  die(cause: string): void {
    this.#events.died(cause);
  }
  #lastId(): number {
    return this.orders.findLast(({ kind }) => kind === 'lay')!.id;
  }
}

export class HandWork implements Workplace {
  readonly hands: HandOfTest[] = [];
  readonly handCount: number;
  #nowMs = 1_000;
  #timers: { ms: number; then: () => void }[] = [];
  constructor(handCount: number) {
    this.handCount = handCount;
  }
  readonly clock = (): number => this.#nowMs;
  readonly startHand = (events: HandEvents): HandOfTest => {
    this.hands.push(new HandOfTest(events));
    return this.hands.at(-1)!;
  };
  readonly later = (ms: number, then: () => void): void => {
    this.#timers.push({ ms: this.#nowMs + ms, then });
  };
  pass(ms: number): void {
    this.#nowMs += ms;
    const due = this.#timers.filter((timer) => timer.ms <= this.#nowMs);
    this.#timers = this.#timers.filter((timer) => timer.ms > this.#nowMs);
    for (const { then } of due) then();
  }
}
