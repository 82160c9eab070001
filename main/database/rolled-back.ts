/** How a refusal leaves a transaction: as something thrown, so that it is rolled back, and yet as the answer. */
import type { Result } from '../../shared-core/measure/problem.ts';
import type { Queries, Work } from './store.ts';

/** transact: runs what it is given in a transaction that anything thrown takes back. */
export async function refusalRollsBack<Value>(
  work: Work<Value>,
  transact: (rolling: (queries: Queries) => Promise<Result<Value>>) => Promise<Result<Value>>,
): Promise<Result<Value>> {
  try {
    return await transact(async (queries) => {
      const outcome = await work(queries);
      if (!outcome.ok) throw new RolledBack(outcome);
      return outcome;
    });
  } catch (error) {
    if (error instanceof RolledBack) return error.outcome;
    throw error;
  }
}

class RolledBack extends Error {
  readonly outcome: Result<never>;
  constructor(outcome: Result<never>) {
    super('rolled back');
    this.outcome = outcome;
  }
}
