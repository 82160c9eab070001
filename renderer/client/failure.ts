/** What threw, as a problem and in the log: the estimate, the lays, whatever a room waits for. */
import { say } from '../../shared-core/wording/say.ts';
import type { Problem } from '../../shared-core/measure/problem.ts';
import { logSaysWhere, noteFailure } from './note-failure.ts';

/** where: what could not be worked out, in the maker's words: "The season". what: what became of it instead. */
export function failureOf(
  where: string,
  thrown: unknown,
  fix: string,
  what = say('failure.could-not-be-worked-out'),
): Problem {
  noteFailure(where.toLowerCase(), thrown);
  const reason = thrown instanceof Error ? thrown.message : String(thrown);
  return { where, what: `${what}: ${reason}`, fix: `${fix} ${logSaysWhere}` };
}
