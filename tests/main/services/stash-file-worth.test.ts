import SqliteDatabase from 'better-sqlite3';
import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { type Asking, clothLot, down, fillLot, openAsking, receivedCloth, taffeta } from '../asking.ts';

interface Step {
  readonly kind: 'cut' | 'remnant' | 'corrected' | 'written off';
  /** Which of the places there are. */
  readonly place: number;
  readonly share: number;
}

const step: fc.Arbitrary<Step> = fc.record({
  kind: fc.constantFrom('cut', 'remnant', 'corrected', 'written off'),
  place: fc.nat(),
  share: fc.double({ min: 0.001, max: 1, noNaN: true }),
});

const purchase = fc.record({
  isCloth: fc.boolean(),
  priceMinor: fc.integer({ min: 0, max: 4_000_000 }),
  amounts: fc.array(fc.integer({ min: 2, max: 9_000_000 }), { minLength: 1, maxLength: 3 }),
});

/** Movements as a day at the table writes them; remnants are narrower than their cloth. */
function work(asking: Asking, steps: readonly Step[]): void {
  const database = new SqliteDatabase(asking.dataFile);
  const move = database.prepare(
    `INSERT INTO movement (id, at, kind, lot_id, length_id, on_hand_milli, reserved_milli, plan_id, reason)
     VALUES (hex(randomblob(16)), '2026-10-04T08:00:00Z', ?, ?, ?, ?, 0, NULL, 'work')`,
  );
  const places = () =>
    database
      .prepare(
        `SELECT lot.id AS lotId, length.id AS lengthId, width_mm AS widthMm,
           coalesce(length_balance.on_hand_milli, lot_balance.on_hand_milli) AS milli
         FROM lot JOIN lot_balance ON lot_balance.lot_id = lot.id LEFT JOIN length ON length.lot_id = lot.id
         LEFT JOIN length_balance ON length_balance.length_id = length.id ORDER BY lot.entry, length.entry`,
      )
      .all() as { lotId: string; lengthId: string | null; widthMm: number | null; milli: number }[];
  for (const { kind, place, share } of steps) {
    const all = places();
    const { lotId, lengthId, widthMm, milli } = all[place % all.length]!;
    const part = Math.floor(milli * share);
    if (kind === 'corrected') {
      const found = Math.round(6_000_000 * share) - milli;
      if (found !== 0) move.run(kind, lotId, lengthId, found);
    } else if (part > 0) {
      move.run(kind === 'written off' ? kind : 'cut', lotId, lengthId, -part);
      if (kind !== 'remnant' || lengthId === null) continue;
      const id = `rest ${all.length}`;
      database
        .prepare(
          `INSERT INTO length (id, lot_id, width_mm, form, flaws, worth_ratio) VALUES (?, ?, ?, 'remnant', '[]', ?)`,
        )
        .run(id, lotId, Math.max(20, widthMm! * share), share);
      move.run('returned', lotId, id, part);
    }
  }
  database.close();
}

/** What is on the shelf and what it is worth, place by place; what is used up is in no file. */
function balances(asking: Asking): unknown {
  const database = new SqliteDatabase(asking.dataFile, { readonly: true });
  const all = (sql: string) => database.prepare(sql).all();
  const read = [
    all(
      'SELECT item_id, on_hand_milli, lot_count, length_count, value_minor FROM item_balance ORDER BY item_id',
    ),
    all('SELECT lot_id, on_hand_milli, worth_milli FROM lot_balance WHERE on_hand_milli > 0 ORDER BY lot_id'),
    all(
      `SELECT length_id, on_hand_milli, worth_ratio, width_mm FROM length_balance
       JOIN length ON length.id = length_id WHERE on_hand_milli > 0 ORDER BY length_id`,
    ),
  ];
  database.close();
  return read;
}

describe('a stash that goes through a file', () => {
  test('is worth the same in an empty workshop, narrow remnants and all', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(purchase, { minLength: 1, maxLength: 3 }),
        fc.array(step, { maxLength: 10 }),
        async (purchases, steps) => {
          const here = openAsking();
          for (const [index, { isCloth, priceMinor, amounts }] of purchases.entries()) {
            const of = isCloth ? taffeta : down;
            const { itemId } = await here.get('saveItem', { ...of, name: `${of.name} ${index}` });
            const lengths = amounts.map((milli) => ({
              widthMm: 1470,
              lengthMm: milli / 1000,
              form: 'cut' as const,
              flaws: [],
              count: 1,
            }));
            const lot = isCloth ? { ...clothLot(itemId), lengths } : fillLot(itemId, amounts[0]! / 1000);
            await here.get('receiveLot', { ...lot, priceMinor });
          }
          work(here, steps);
          const there = openAsking();
          const file = await here.get('stashFile', {});
          await there.get('bringInStashFile', file);
          expect(balances(there)).toEqual(balances(here));
          expect(await there.get('stashFile', {})).toEqual(file);
          // Read where it was written, it changes nothing.
          expect((await here.get('lookAtStashFile', file)).changes).toEqual([]);
          here.services.close();
          there.services.close();
        },
      ),
      { numRuns: 25, seed: 13, endOnFailure: true },
    );
  });

  test('worth 90.00 arrives worth 90.00', async () => {
    const here = openAsking();
    const { itemId } = await here.get('saveItem', taffeta);
    const lengths = [{ widthMm: 1500, lengthMm: 5000, form: 'roll' as const, flaws: [], count: 1 }];
    await here.get('receiveLot', { ...clothLot(itemId), priceMinor: 10_000, lengths });
    // A fifth is cut off, and half its width comes back.
    work(here, [{ kind: 'remnant', place: 0, share: 0.2 }]);
    const database = new SqliteDatabase(here.dataFile);
    database.exec("DROP TRIGGER length_worth_stays; UPDATE length SET worth_ratio = 0.5 WHERE id = 'rest 1'");
    database.exec('UPDATE lot_balance SET worth_milli = 4500000');
    database.close();
    const there = openAsking();
    await there.get('bringInStashFile', await here.get('stashFile', {}));
    const { rows } = await there.get('listItems', {
      search: '',
      kinds: [],
      sortBy: 'name',
      isDescending: false,
      offset: 0,
      limit: 9,
    });
    expect(rows.map(({ onHand, valueMinor }) => [onHand, valueMinor])).toEqual([[5000, 9_000]]);
  });

  const heading = 'cost share of this length (1 is all of it)';

  test('without the column of cost shares is read as before: each millimetre carries all of its price', async () => {
    const here = openAsking();
    await receivedCloth(here);
    work(here, [{ kind: 'remnant', place: 0, share: 0.25 }]);
    const table = Papa.parse<string[]>((await here.get('stashFile', {})).text, { skipEmptyLines: true }).data;
    const at = table[0]!.indexOf(heading);
    expect(table.map((row) => row[at])).toEqual([heading, '', '', '0.25']);
    const older = Papa.unparse(table.map((row) => row.filter((_, index) => index !== at)));
    expect((await here.get('lookAtStashFile', { text: older })).changes).toEqual([]);
    const there = openAsking();
    await there.get('bringInStashFile', { text: older });
    const again = Papa.parse<string[]>((await there.get('stashFile', {})).text, {
      skipEmptyLines: true,
    }).data;
    expect(again.map((row) => row[at])).toEqual([heading, '', '', '']);
  });

  test.each([
    ['0', 'is not above 0 and at most 1. Write 1 for all of the price, 0.5 or 50 % for half of it.'],
    ['1.5', 'is not above 0 and at most 1. Write 1 for all of the price, 0.5 or 50 % for half of it.'],
    ['half', 'says "half", which is not a share. Write 1 for all of the price, 0.5 or 50 % for half of it.'],
    [
      '0.75',
      'is another than was booked: 1. Put it back as it was; what was received is never changed by a file.',
    ],
  ])('is refused with a cost share of %s', async (cell, sentence) => {
    const here = openAsking();
    await receivedCloth(here);
    const table = Papa.parse<string[]>((await here.get('stashFile', {})).text, { skipEmptyLines: true }).data;
    table[1]![table[0]!.indexOf(heading)] = cell;
    const problems = await here.refusal('bringInStashFile', { text: Papa.unparse(table) });
    expect(problems.map(problemSentence)).toEqual([`Line 2, column "${heading}" ${sentence}`]);
  });
});

describe('the marks of an item that was put away', () => {
  test.each([
    ['lot mark', 'is a lot of an item that was put away'],
    ['length mark', 'is a length of an item that was put away'],
  ])('are not given to another: %s', async (kept, what) => {
    const asking = openAsking();
    const { itemId } = await receivedCloth(asking);
    const table = Papa.parse<string[]>((await asking.get('stashFile', {})).text, {
      skipEmptyLines: true,
    }).data;
    const put = (heading: string, value: string) => {
      table[1]![table[0]!.indexOf(heading)] = value;
    };
    put('name', 'Fenny lawn');
    for (const mark of ['item mark', 'lot mark', 'length mark']) if (mark !== kept) put(mark, '');
    await asking.get('archiveItem', { itemId, isPutAway: true });
    const problems = await asking.refusal('bringInStashFile', { text: Papa.unparse(table.slice(0, 2)) });
    expect(problems.map(problemSentence)).toEqual([
      `Line 2, column "${kept}" ${what}. Bring it back to the shelf first, or leave the mark empty.`,
    ]);
    expect(asking.logged).toEqual([]);
  });
});
