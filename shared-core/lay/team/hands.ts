/** What a team lays with: the workers of a window or the threads of a command, whichever they are. */
import type { Clock } from '../lay.ts';
import type { MemberAnswer, MemberOrder } from './member.ts';

/** One worker of the window or thread of the command, which runs layMember. */
export interface Hand {
  readonly send: (order: MemberOrder) => void;
  /** Ends it in the middle of whatever it does. */
  readonly end: () => unknown;
}

export interface HandEvents {
  readonly answered: (answer: MemberAnswer) => void;
  /** It ends of itself, and says nothing more. */
  readonly died: (cause: string) => void;
}

export interface Workplace {
  readonly handCount: number;
  readonly startHand: (events: HandEvents) => Hand;
  readonly clock: Clock;
  readonly later: (ms: number, then: () => void) => void;
}

/** Each hand has memory of its own, and each further one brings less. */
const MOST_HANDS = 16;

/** Hands for lays on a machine with so many cores: where there are more than two, one is left for the window. */
export function handsFor(coreCount: number): number {
  return Math.max(1, Math.min(MOST_HANDS, coreCount > 2 ? coreCount - 1 : coreCount));
}
