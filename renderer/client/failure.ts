/** What threw, as a problem: the estimate, the lays, whatever a room waits for. */
import type { Problem } from '../../shared-core/measure/problem.ts';

/** where: what could not be worked out, in the maker's words: "The season". */
export function failureOf(where: string, thrown: unknown, mend: string): Problem {
  const reason = thrown instanceof Error ? thrown.message : String(thrown);
  return { where, what: `could not be worked out: ${reason}`, mend };
}
