/** Two changes of two parts that cross each other: each reads what the other writes. */
import { expect, test } from 'vitest';
import { openSharedStore, type SharedStore } from '../../../main/database/postgres/postgres-store.ts';
import type { Queries } from '../../../main/database/store.ts';
import { ok } from '../../../shared-core/measure/problem.ts';
import { createDatabase, dropDatabase, freshAddress } from './test-database.ts';

async function opened(address: string, onAgain: (why: string) => void): Promise<SharedStore> {
  const store = await openSharedStore({ address, waitMs: 10_000, onAgain });
  if (!store.ok) throw new Error(JSON.stringify(store.problems));
  return store.value;
}

const nameOf = async (queries: Queries) =>
  (await queries.selectFrom('workshop').select('name').executeTakeFirstOrThrow()).name;
const supplierCount = async (queries: Queries) =>
  (await queries.selectFrom('supplier').select('key').execute()).length;

test('one of them is made again, and the outcome is as if one had come after the other', async () => {
  const address = freshAddress();
  await createDatabase(address);
  const again: string[] = [];
  const [first, second] = [
    await opened(address, (why) => again.push(why)),
    await opened(address, (why) => again.push(why)),
  ];
  // Both have read before either writes, the first time.
  let waiting = 2;
  let meet = () => {};
  const met = new Promise<void>((done) => {
    meet = done;
  });
  const bothHaveRead = () => {
    if (--waiting === 0) meet();
    return met;
  };
  let runs = 0;
  const [named, added] = await Promise.all([
    first.write({ locks: 'workshop' }, async (queries) => {
      runs++;
      const count = await supplierCount(queries);
      await bothHaveRead();
      await queries
        .updateTable('workshop')
        .set({ name: `knows ${count}` })
        .execute();
      return ok(count);
    }),
    second.write({ locks: 'stash' }, async (queries) => {
      runs++;
      const name = await nameOf(queries);
      await bothHaveRead();
      await queries
        .insertInto('supplier')
        .values({
          key: 'marl',
          name: `of "${name}"`,
          delivery_minor: 1,
          free_from_minor: null,
          lead_days: null,
        })
        .execute();
      return ok(name);
    }),
  ]);
  expect(again).toEqual(['conflict']);
  expect(runs).toBe(3);
  const outcome = [named.ok && named.value, added.ok && added.value];
  expect([
    [0, 'knows 0'],
    [1, ''],
  ]).toContainEqual(outcome);
  await first.close();
  await second.close();
  await dropDatabase(address);
});

test('a change that is crossed again and again is given up in a sentence, and leaves nothing', async () => {
  const address = freshAddress();
  await createDatabase(address);
  const again: string[] = [];
  const store = await opened(address, (why) => again.push(why));
  const refused = await store
    .write({ locks: 'stash' }, async (queries) => {
      await queries.updateTable('workshop').set({ name: 'half' }).execute();
      throw Object.assign(new Error('could not serialize access'), { code: '40001' });
    })
    .then(
      () => null,
      (error: unknown) => store.explain(error),
    );
  expect(refused?.what).toBe('is being changed by other desks just now');
  expect(again).toHaveLength(12);
  const name = await store.read({}, async (queries) => ok(await nameOf(queries)));
  expect(name).toEqual({ ok: true, value: '' });
  await store.close();
  await dropDatabase(address);
});
