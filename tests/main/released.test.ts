import { copyFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { migrations } from '../../main/database/schema/migrations.ts';
import { coatsCut } from '../../shared-core/stash/cutting.ts';
import { makeReleased, releasedFolder } from '../fixtures/released/make.ts';
import { openAsking, tempFolder } from './asking.ts';

const released = readdirSync(releasedFolder).filter((name) => /^\d{4}\.sqlite$/.test(name));

/** What a maker would find in the file, whichever version it comes from. */
async function expectFenAndTarn(
  dataFile: string,
  counts: { itemCount?: number; planCount?: number } = {},
): Promise<void> {
  const asking = openAsking({ dataFile });
  expect(await asking.get('workshopFacts', {})).toMatchObject({
    settings: { workshopName: 'Fen & Tarn', system: 'imperial', currency: 'GBP' },
    itemCount: 1,
    planCount: 1,
    ...counts,
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
  const planRow = (await asking.get('listPlans', {})).rows.find((row) => row.name === 'Fen coat');
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

describe('a file of every released schema', () => {
  for (const name of released) {
    test(`${name} is opened, brought forward and loses nothing`, async () => {
      const file = join(tempFolder(), name);
      copyFileSync(join(releasedFolder, name), file);
      const before = rowsOf(file);
      await expectFenAndTarn(file, name === '0006.sqlite' ? { itemCount: 4, planCount: 3 } : {});
      const fresh = openAsking();
      fresh.services.close();
      expect(schemaOf(file)).toEqual(schemaOf(fresh.dataFile));
      const after = rowsOf(file);
      for (const [key, row] of before) {
        expect(after.get(key), key).toMatchObject(unchanged(key, row));
        if (key.startsWith('item ')) expect(factsOf(after.get(key)!)).toMatchObject(keptFacts(row));
      }
    });
  }

  test('are all there, from the first to the one before today’s', () => {
    const numbers = migrations.slice(0, released.length).map(({ number }) => number);
    expect(released.map((name) => Number(name.slice(0, 4)))).toEqual(numbers);
    expect(released.length).toBeGreaterThanOrEqual(migrations.length - 2);
  });
});

/** Rows by table and key, columns by name. Balances are sums of the others, and tests of their own hold them to that. */
function rowsOf(file: string): Map<string, Record<string, unknown>> {
  const database = new SqliteDatabase(file, { readonly: true });
  const tables = database
    .prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE '%\\_balance' ESCAPE '\\'",
    )
    .pluck()
    .all() as string[];
  const rows = tables.flatMap((table) =>
    (database.prepare(`SELECT * FROM ${table}`).all() as Record<string, unknown>[]).map(
      (row) =>
        [`${table} ${row.id ?? row.only_row ?? Object.values(row).slice(0, 2).join(' ')}`, row] as const,
    ),
  );
  database.close();
  return new Map(rows);
}

/** What bringing a file forward may put into other words: a cutting's coats and slots, and how it was taken back. */
function unchanged(key: string, row: Record<string, unknown>): Record<string, unknown> {
  const { coats, slots, ...cutting } = row;
  if (key.startsWith('cutting ')) return cutting;
  const { facts: _, ...item } = row;
  if (key.startsWith('item ')) return item;
  if (!key.startsWith('movement ') || row.kind !== 'corrected' || row.cutting_id === null) return row;
  const { kind, ...movement } = row;
  return movement;
}

function factsOf(item: Record<string, unknown>): Record<string, unknown> {
  return JSON.parse(String(item.facts)) as Record<string, unknown>;
}

/** Facts of an item but for those that have other names now (0010). */
function keptFacts(item: Record<string, unknown>): Record<string, unknown> {
  const { care: _, isSeparating: __, ...kept } = factsOf(item);
  return kept;
}

describe('a file in which earlier versions booked what could not be', () => {
  async function heron(change: (database: SqliteDatabase.Database) => void = () => {}) {
    const file = join(tempFolder(), '0006.sqlite');
    copyFileSync(join(releasedFolder, '0006.sqlite'), file);
    const database = new SqliteDatabase(file);
    change(database);
    database.close();
    const asking = openAsking({ dataFile: file });
    const { rows } = await asking.get('listPlans', {});
    const planOf = (name: string) => rows.find((row) => row.name === name)?.id ?? '';
    const { upgradeNotes } = await asking.get('workshopFacts', {});
    return { asking, planOf, notes: upgradeNotes.map(({ note }) => note) };
  }

  test('counts each cutting’s own coats, in the size they were cut in, without those taken back', async () => {
    const { asking, planOf } = await heron();
    const { cuttings } = await asking.get('flowInput', { planId: planOf('Heron coat') });
    // Two were cut, then four in all; the first cutting was taken back: two are left, where four were counted.
    expect(coatsCut(cuttings)).toEqual([
      { size: '40', coatCount: 2 },
      { size: '42', coatCount: 0 },
    ]);
    const [slot] = cuttings[0]?.slots ?? [];
    expect(
      slot?.met.kind === 'shapes' && slot.met.shapes.map(({ pieceId, size }) => [pieceId, size]),
    ).toEqual([
      ['back', '40'],
      ['back', '42'],
    ]);
    expect(slot?.lines.map(({ itemName }) => itemName)).toEqual(['Heron ripstop']);
  });

  test('shows what was taken back as never cut: nothing of it is consumed, and nothing was found by counting', async () => {
    const { asking } = await heron();
    const { items } = await asking.get('readAccount', {});
    const account = (name: string) => items.find((item) => item.itemName === name)?.account;
    // 3.5 snaps of 24 for 9.01 were cut and taken back.
    expect(account('Horn snap')).toMatchObject({ consumedMinor: 0, correctedMinor: 0, onHandMinor: 901 });
    // 1409 + 503 + 307 of 10 000 mm for 100.00 are cut; 1301 and 3001 mm were taken back.
    expect(account('Heron ripstop')).toMatchObject({
      consumedMinor: 2219,
      correctedMinor: 0,
      onHandMinor: 7781,
    });
  });

  test('releases what was set aside beyond what is there, from the coat that set aside last, and says so', async () => {
    const { asking, planOf, notes } = await heron();
    const own = async (name: string) =>
      (await asking.get('flowInput', { planId: planOf(name) })).setAside.map(({ amount }) => amount);
    // 7781 mm are there; Rook has 4000 and Heron, whose 5000 came back with its cutting, what is left.
    expect([await own('Rook coat'), await own('Heron coat')]).toEqual([[4000], [3781]]);
    expect(notes).toEqual([
      'More of Heron ripstop was set aside than is on hand. The coat Heron coat set aside last, so 1219 mm of it was released. Look at its cover again.',
      'The cutting of 2026-11-26 for Rook coat names fewer coats than were cut before it (2 of size 40 in all after 3). It was taken to cut none of that size.',
    ]);
  });

  test('says what it could not repair: a taking back that answers nothing, and half a snap', async () => {
    const { asking, notes } = await heron((database) => {
      const last = database
        .prepare(
          'SELECT * FROM cutting WHERE undoes IS NULL AND id NOT IN (SELECT undoes FROM cutting WHERE undoes IS NOT NULL) ORDER BY entry DESC',
        )
        .get() as { id: string; plan_id: string };
      const lot = database.prepare('SELECT id FROM lot WHERE price_minor = 901').pluck().get();
      const move = database.prepare(
        `INSERT INTO movement (id, at, kind, lot_id, length_id, on_hand_milli, reserved_milli, plan_id, reason, cutting_id)
         VALUES (?, '2026-11-26T10:00:00.000Z', ?, ?, NULL, ?, 0, ?, '', ?)`,
      );
      database
        .prepare(
          "INSERT INTO cutting (id, plan_id, revision, at, coats, slots, note, undoes) VALUES ('odd', ?, 1, '2026-11-26T10:00:00.000Z', '[]', '[]', '', ?)",
        )
        .run(last.plan_id, last.id);
      move.run('odd row', 'corrected', lot, -1500, last.plan_id, 'odd');
    });
    expect(notes.join(' ')).toContain('Of Horn snap, 22.5 is on hand by the ledger');
    expect(notes.join(' ')).toContain('was taken back by entries that do not answer it one by one');
    const facts = await asking.get('markUpgradeNotesSeen', {});
    expect(facts.upgradeNotes.every(({ isSeen }) => isSeen)).toBe(true);
  });
});
