/** What one worker does for a team: it lays slice by slice, tells what it finds, and hears between slices what the team says. */
import { layChecker } from '../check/check.ts';
import type { LayBudget, LayJob, LayResult } from '../job.ts';
import { type Clock, type LaySteps, layInSteps } from '../lay.ts';
import { problemSentence } from '../../measure/problem.ts';

export type MemberOrder =
  /** One lay at a time: the next comes after the answer to this one. */
  | {
      readonly kind: 'lay';
      readonly id: number;
      readonly job: LayJob;
      readonly budget: LayBudget;
      /** Whether better lays are told, each checked first; otherwise the last one alone. */
      readonly tells: boolean;
    }
  /** There are other members: what is found is shared with them from now on. */
  | { readonly kind: 'share'; readonly id: number }
  | { readonly kind: 'adopt'; readonly id: number; readonly result: LayResult }
  /** The best so far is the answer. */
  | { readonly kind: 'leave'; readonly id: number };

export type MemberAnswer =
  /** For other members, who look at it themselves: not checked yet. */
  | { readonly kind: 'shared'; readonly id: number; readonly result: LayResult }
  | { readonly kind: 'better'; readonly id: number; readonly result: LayResult }
  | { readonly kind: 'done'; readonly id: number; readonly result: LayResult }
  | { readonly kind: 'failed'; readonly id: number; readonly sentence: string };

export interface MemberPlace {
  readonly clock: Clock;
  readonly post: (answer: MemberAnswer) => void;
  /** Resolves when orders that have come in have been handed over. */
  readonly rest: () => Promise<void>;
}

/** Orders are heard and finds shared so often, ms. */
const REST_MS = 20;
/** A check takes milliseconds: after one, nothing is told for so many times as long. */
const TELL_PAUSE = 10;

interface Current {
  readonly id: number;
  isSharing: boolean;
  isLeaving: boolean;
  steps: LaySteps | null;
}

/** What hears the orders. */
export function layMember(place: MemberPlace): (order: MemberOrder) => void {
  let current: Current | null = null;

  async function work({ id, job, budget, tells }: MemberOrder & { kind: 'lay' }): Promise<void> {
    const { clock, post, rest } = place;
    const mine: Current = { id, isSharing: false, isLeaving: false, steps: null };
    current = mine;
    try {
      const checked = checkerOf(job);
      let best: LayResult | null = null;
      let told: LayResult | null = null;
      let shared: LayResult | null = null;
      const onBetter = (result: LayResult): void => {
        best = result;
      };
      const steps = layInSteps(job, budget, { clock, stopped: () => mine.isLeaving, onBetter });
      mine.steps = steps;
      let restedMs = -Infinity;
      let quietMs = -Infinity;
      for (;;) {
        const nowMs = clock();
        if (tells && best !== null && best !== told && nowMs >= quietMs) {
          told = best;
          post({ kind: 'better', id, result: checked(told) });
          quietMs = clock() + TELL_PAUSE * (clock() - nowMs);
        }
        if (nowMs - restedMs >= REST_MS) {
          if (mine.isSharing && best !== null && best !== shared) {
            shared = best;
            post({ kind: 'shared', id, result: shared });
          }
          await rest();
          restedMs = clock();
        }
        const result = steps.step();
        if (result === null) continue;
        post({ kind: 'done', id, result: checked(result) });
        return;
      }
    } catch (error) {
      post({ kind: 'failed', id, sentence: error instanceof Error ? error.message : String(error) });
    }
  }

  return (order) => {
    if (order.kind === 'lay') {
      void work(order);
      return;
    }
    if (current?.id !== order.id) return;
    switch (order.kind) {
      case 'share':
        current.isSharing = true;
        return;
      case 'adopt':
        current.steps?.adopt(order.result);
        return;
      case 'leave':
        current.isLeaving = true;
        return;
      default:
        order satisfies never;
    }
  };
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
