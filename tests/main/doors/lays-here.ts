/** Lays in this thread, by moves alone, for commands of which something else is asked than how they lay. */
import type { openLayThreads } from '../../../main/services/threads/lay-threads.ts';
import { lay } from '../../../shared-core/lay/lay.ts';

export const laysHere: typeof openLayThreads = (budgetOrAsk) => ({
  async runLay(job) {
    const budget = typeof budgetOrAsk === 'function' ? budgetOrAsk() : budgetOrAsk;
    if (budget.iterations === null) throw new Error('lays are limited by moves here: ask with --iterations');
    return lay(job, budget, { clock: () => 0 });
  },
  close: async () => {},
});
