import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openWorkshop } from '../../../../main/database/file/connection.ts';
import { databaseProblem } from '../../../../main/database/failures/failure.ts';
import { dump, tempFolder } from '../../asking.ts';

function opened() {
  const result = openWorkshop(join(tempFolder(), 'own.sqlite'), { now: () => new Date(), waitMs: 30 });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
}

const offer = { item_id: 'gone', supplier: 's', unit: '{}', price_minor: 3, priced_on: '2026-03-02' };

test('a full disk is told of as such, nothing of the entry is left, and the next one works', async () => {
  const { queries, connection, file, close } = opened();
  const before = dump(file);
  const pages = connection.pragma('page_count', { simple: true }) as number;
  connection.pragma(`max_page_count = ${pages + 3}`);
  const keep = (jobHash: string, letters: number) =>
    queries.transaction().execute(async (inside) => {
      await inside
        .insertInto('kept_lay')
        .values({ job_hash: `${jobHash} first`, result: '1', kept_at: '' })
        .execute();
      const result = JSON.stringify('x'.repeat(letters));
      await inside.insertInto('kept_lay').values({ job_hash: jobHash, result, kept_at: '' }).execute();
    });
  const failure = await keep('large', 200_000).catch((error: unknown) => error);
  expect(databaseProblem(failure, file)?.what).toBe('does not fit: the disk is full');
  expect(dump(file)).toBe(before);
  await keep('small', 20);
  expect(await queries.selectFrom('kept_lay').select('job_hash').execute()).toHaveLength(2);
  close();
});

test('an entry that refers to nothing is refused whole', async () => {
  const { queries, file, close } = opened();
  const before = dump(file);
  const saving = queries.transaction().execute(async (inside) => {
    await inside.updateTable('workshop').set({ name: 'half' }).execute();
    await inside
      .insertInto('offer')
      .values({ ...offer, id: 'o' })
      .execute();
  });
  await expect(saving).rejects.toThrow('FOREIGN KEY');
  expect(dump(file)).toBe(before);
  close();
});

test('what only reads does not wait for another program that writes, and sees one state throughout', async () => {
  const mine = opened();
  const theirs = openWorkshop(mine.file, { now: () => new Date(), waitMs: 30 });
  if (!theirs.ok) throw new Error('refused');
  await mine.queries
    .transaction()
    .setAccessMode('read only')
    .execute(async (inside) => {
      const first = await inside.selectFrom('workshop').select('name').executeTakeFirstOrThrow();
      theirs.value.connection.exec("UPDATE workshop SET name = 'theirs'");
      const second = await inside.selectFrom('workshop').select('name').executeTakeFirstOrThrow();
      expect([first.name, second.name]).toEqual(['', '']);
    });
  const after = await mine.queries.selectFrom('workshop').select('name').executeTakeFirstOrThrow();
  expect(after.name).toBe('theirs');
  theirs.value.close();
  mine.close();
});

test('each commit reaches the disk, and references are enforced', () => {
  const { connection, close } = opened();
  const pragma = (name: string) => connection.pragma(name, { simple: true });
  expect([pragma('synchronous'), pragma('foreign_keys'), pragma('journal_mode')]).toEqual([2, 1, 'wal']);
  close();
});
