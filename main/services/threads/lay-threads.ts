/** Threads for the lays of the headless command: see shared-core/lay/team/team.ts for who works on what. */
import { say } from '../../../shared-core/wording/say.ts';
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { type Hand, type HandEvents, handsFor } from '../../../shared-core/lay/team/hands.ts';
import { type LayBudget, type LayJob, sensibleIterations } from '../../../shared-core/lay/job.ts';
import type { MemberAnswer, MemberOrder } from '../../../shared-core/lay/team/member.ts';
import type { RunLay } from '../../../shared-core/lay/plan-lay.ts';
import { layTeams } from '../../../shared-core/lay/team/team.ts';
import type { LayFailure } from '../../../shared-core/lay/team/team-order.ts';
import { type Problem, problemSentence } from '../../../shared-core/measure/problem.ts';

export interface LayThreads {
  readonly runLay: RunLay;
  /** Lays that are still waited for reject. */
  readonly close: () => Promise<void>;
}

/** A lay that was given up because of the machine, with what the maker can do. */
export class LayGivenUp extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problemSentence(problem));
    this.problem = problem;
  }
}

/**
 * Threads that lay within a budget, with overtime on a busy machine until a lay is sensible (unless the budget names
 * its least itself). A budget that is a function is asked for each lay as it begins. Jobs wait their turn in the
 * order asked. A thread that dies is replaced and its lay tried once more.
 *
 * runLay rejects with the name of the lay that failed, and with LayGivenUp where two threads have died at it.
 */
export function openLayThreads(
  budgetOrAsk: LayBudget | (() => LayBudget),
  threadCount = handsFor(availableParallelism()),
  startThread = () => new Worker(new URL('./lay-thread.ts', import.meta.url)),
): LayThreads {
  const teams = layTeams({
    handCount: threadCount,
    startHand: (events) => threadHand(startThread(), events),
    clock: () => performance.now(),
    later: (ms, then) => void setTimeout(then, ms),
  });
  const budgetFor = (job: LayJob): LayBudget => {
    const budget = typeof budgetOrAsk === 'function' ? budgetOrAsk() : budgetOrAsk;
    const defaultLeast = budget.seconds === null ? 0 : sensibleIterations(job);
    return { ...budget, minIterations: budget.minIterations ?? defaultLeast };
  };
  return {
    runLay: (job, what) =>
      new Promise((resolve, reject) => {
        const failed = (failure: LayFailure) => reject(failureOf(what, failure));
        teams.lay({ job, budget: () => budgetFor(job), done: resolve, failed });
      }),
    close: teams.close,
  };
}

function threadHand(thread: Worker, { answered, died }: HandEvents): Hand {
  let cause: string | undefined;
  thread.on('message', (answer: MemberAnswer) => answered(answer));
  thread.on('error', (error) => {
    cause = causeOf(error);
  });
  thread.on('messageerror', (error) => {
    cause = error.message;
    void thread.terminate();
  });
  // The one event that every death ends with, and the last one of a thread.
  thread.on('exit', (code) => died(cause ?? say('lay-threads.it-ended-with-code', { code })));
  return {
    send: (order: MemberOrder) => thread.postMessage(order),
    end: () => thread.terminate(),
  };
}

function causeOf(error: unknown): string {
  const { code, message } = error as NodeJS.ErrnoException;
  return code === 'ERR_WORKER_OUT_OF_MEMORY' ? say('lay-threads.its-memory-ran-out') : message;
}

function failureOf(what: string, failure: LayFailure): Error {
  switch (failure.kind) {
    case 'refused':
      return new Error(`${what}: ${failure.sentence}`);
    case 'died twice':
      return new LayGivenUp(diedTwice(what, failure.cause));
    case 'stopped':
    case 'closed':
      return new Error(`${what}: closed before it was laid`);
    default:
      return failure satisfies never;
  }
}

function diedTwice(what: string, cause: string): Problem {
  return {
    where: say('lay-threads.the-lay-of', { what }),
    what: say('lay-threads.could-not-be-finished-what-looks', { cause }),
    fix: say('lay-threads.close-other-programs-and-try-again'),
  };
}
