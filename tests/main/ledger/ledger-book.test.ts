import fc from 'fast-check';
import { expect, test } from 'vitest';
import { tempFolder } from '../asking.ts';
import { createDatabase, dropDatabase, freshAddress } from '../postgres/test-database.ts';
import { history } from './step.ts';
import { lead } from './lead.ts';

/** A database takes longer for each, and what is asked of it is the same. */
const runCount = process.env.BOLT_TEST_STORE === 'postgres' ? 6 : 24;

/** In the second run of these tests, on a database; one history is done with before the next begins. */
let last: string | undefined;
async function databaseForOne(): Promise<string | undefined> {
  if (process.env.BOLT_TEST_STORE !== 'postgres') return undefined;
  if (last !== undefined) await dropDatabase(last);
  last = freshAddress();
  await createDatabase(last);
  return last;
}

test('whatever happens in a workshop, its figures are those of a careful book: balances, values, coats and costs', async () => {
  const done: Record<string, number> = {};
  await fc.assert(
    fc.asyncProperty(history(40), async (steps) => {
      const led = await lead(tempFolder(), steps, await databaseForOne());
      for (const [what, times] of Object.entries(led.done)) done[what] = (done[what] ?? 0) + times;
      expect(led.differences).toEqual([]);
    }),
    { numRuns: runCount, seed: 2207, endOnFailure: true },
  );
  // The histories do what they are there for.
  for (const [what, min] of [
    ['cut: done', 300],
    ['cut: refused', 30],
    ['take back: done', 100],
    ['take back: refused', 30],
    ['set aside: done', 200],
    ['set aside: refused', 30],
    ['set aside what the cover takes: done', 100],
    ['bring another size to hand: done', 100],
    ['change the margin: done', 100],
    ['count: done', 100],
    ['undo: done', 100],
    ['undo: refused', 30],
  ] as const) {
    expect(done[what] ?? 0, what).toBeGreaterThan((min * runCount) / 100);
  }
});
