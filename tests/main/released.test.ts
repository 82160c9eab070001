import { copyFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { makeReleased, releasedFolder } from '../fixtures/released/make.ts';
import { openAsking, tempFolder } from './asking.ts';

const released = readdirSync(releasedFolder).filter((name) => /^\d{4}\.sqlite$/.test(name));

/** What a maker would find in the file, whichever version it comes from. */
async function expectFenAndTarn(dataFile: string): Promise<void> {
  const asking = openAsking({ dataFile });
  expect(await asking.get('workshopFacts', {})).toMatchObject({
    settings: { workshopName: 'Fen & Tarn', system: 'imperial', currency: 'GBP' },
    itemCount: 1,
    planCount: 1,
  });
  const page = {
    search: 'ecru ost p-2207',
    sortBy: 'name',
    isDescending: false,
    offset: 0,
    limit: 9,
  } as const;
  const { rows } = await asking.get('listItems', { ...page, kinds: ['cloth'] });
  expect(
    rows.map(({ name, onHand, reserved, lengthCount, valueMinor }) => [
      name,
      onHand,
      reserved,
      lengthCount,
      valueMinor,
    ]),
  ).toEqual([
    ['Écru taffeta', 6566, 0, 3, 8917], // 7310.5 + 890 + 890 - 2600 + 75.5; 123.45 x 6566 / 9090.5, rounded
  ]);
  const { shelf, movements } = await asking.get('readItem', { itemId: rows[0]!.id });
  expect(shelf.item).toMatchObject({ facts: { widthMm: 1473.2, hasNap: true }, typed: { widthMm: '58 in' } });
  expect(shelf.lots[0]?.lengths[0]?.flaws).toEqual([{ x: 2140, y: 930, widthX: 65, widthY: 40 }]);
  const kinds = ['returned', 'cut', 'released', 'reserved', 'received', 'received', 'received'];
  expect(movements.map((movement) => movement.kind)).toEqual(kinds);
  const [planRow] = (await asking.get('listPlans', {})).rows;
  const { plan, revision, canUndo } = await asking.get('readPlan', { planId: planRow!.id });
  expect([plan.size, revision, canUndo, plan.slots[0]?.itemId]).toEqual(['EU 42', 3, false, rows[0]!.id]);
  expect((await asking.get('readLay', { jobHash: '5'.repeat(64) })).result?.floorMm).toBe(701);
  asking.services.close();
}

function schemaOf(file: string): unknown[] {
  const database = new SqliteDatabase(file, { readonly: true });
  const rows = database.prepare('SELECT type, name, sql FROM sqlite_schema ORDER BY type, name').all();
  database.close();
  return rows;
}

test('the file that is made for a release holds what it should', async () => {
  const file = join(tempFolder(), '0001.sqlite');
  await makeReleased(file);
  await expectFenAndTarn(file);
  await expect(makeReleased(file)).rejects.toThrow('is there already');
});

describe.skipIf(released.length === 0)(
  'a file of every released schema (skipped while none is released)',
  () => {
    for (const name of released) {
      test(`${name} is opened, brought forward and loses nothing`, async () => {
        const file = join(tempFolder(), name);
        copyFileSync(join(releasedFolder, name), file);
        await expectFenAndTarn(file);
        const fresh = openAsking();
        fresh.services.close();
        expect(schemaOf(file)).toEqual(schemaOf(fresh.dataFile));
      });
    }
  },
);
