/** What one worker does for a team: it lays slice by slice, tells what it finds, each lay checked first, and hears between slices what the team says. */
import { layChecker } from './check.ts';
import type { LayBudget, LayJob, LayResult } from './job.ts';
import { type Clock, type LaySteps, layInSteps } from './lay.ts';
import { problemSentence } from '../measure/problem.ts';

export type MemberOrder =
  /** One lay at a time: the next comes after the answer to this one. */
  | {
      readonly kind: 'lay';
      readonly id: number;
      readonly job: LayJob;
      readonly budget: LayBudget;
      /** Whether better lays are told as they are found; otherwise the last one alone, until 'tell' comes. */
      readonly tells: boolean;
    }
  | { readonly kind: 'tell'; readonly id: number }
  | { readonly kind: 'adopt'; readonly id: number; readonly result: LayResult }
  /** The best so far is the answer. */
  | { readonly kind: 'leave'; readonly id: number };

export type MemberAnswer =
  | { readonly kind: 'better'; readonly id: number; readonly result: LayResult }
  | { readonly kind: 'done'; readonly id: number; readonly result: LayResult }
  | { readonly kind: 'failed'; readonly id: number; readonly sentence: string };

export interface MemberPlace {
  readonly clock: Clock;
  readonly post: (answer: MemberAnswer) => void;
  /** Resolves when orders that have come in have been handed over. */
  readonly rest: () => Promise<void>;
}

/** Orders are heard so often, ms. */
const REST_MS = 20;
/** A check takes milliseconds: after one, nothing is told for so many times as long. */
const TELL_PAUSE = 10;

/** What hears the orders. */
export function layMember(place: MemberPlace): (order: MemberOrder) => void {
  let current: { readonly id: number; tells: boolean; isLeaving: boolean; steps: LaySteps | null } | null =
    null;

  async function work({ id, job, budget, tells }: MemberOrder & { kind: 'lay' }): Promise<void> {
    const { clock, post, rest } = place;
    const mine = { id, tells, isLeaving: false, steps: null as LaySteps | null };
    current = mine;
    try {
      const checked = checkerOf(job);
      let news: LayResult | null = null;
      const onBetter = (result: LayResult): void => {
        news = result;
      };
      const steps = layInSteps(job, budget, { clock, stopped: () => mine.isLeaving, onBetter });
      mine.steps = steps;
      let restedMs = -Infinity;
      let quietMs = -Infinity;
      for (;;) {
        const nowMs = clock();
        if (mine.tells && news !== null && nowMs >= quietMs) {
          post({ kind: 'better', id, result: checked(news) });
          news = null;
          quietMs = clock() + TELL_PAUSE * (clock() - nowMs);
        }
        if (nowMs - restedMs >= REST_MS) {
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
      case 'tell':
        current.tells = true;
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
