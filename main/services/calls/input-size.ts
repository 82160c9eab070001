/** What is sent to a call, looked at before anything else: far larger things than any call takes are not read at all. */
import { say } from '../../../shared-core/wording/say.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';

/** Entries of one list or record; the longest that a call takes is a lay of 50,000 pieces. */
const maxEntries = 100_000;
/** Things in all, within each other. */
const maxThings = 3_000_000;
const deepest = 40;

/** Null where it may be read. Ends at the first thing that is too much, and never goes deeper than it says. */
export function sizeProblem(given: unknown): Problem | null {
  const open: { readonly value: object; readonly depth: number }[] = [];
  let thingCount = 0;
  const look = (value: unknown, depth: number): void => {
    if (typeof value === 'object' && value !== null) open.push({ value, depth });
  };
  look(given, 1);
  for (let next = open.pop(); next; next = open.pop()) {
    const { value, depth } = next;
    if (depth > deepest) return tooMuch;
    let entryCount = 0;
    for (const key in value) {
      if (++entryCount > maxEntries || ++thingCount > maxThings) return tooMuch;
      look((value as Record<string, unknown>)[key], depth + 1);
    }
  }
  return null;
}

const tooMuch: Problem = {
  get where() {
    return say('input-size.what-was-sent');
  },
  get what() {
    return say('input-size.holds-more-entries-than-any-step');
  },
  get fix() {
    return say('input-size.send-less-at-once');
  },
};
