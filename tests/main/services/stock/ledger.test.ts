import SqliteDatabase from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openWorkshop } from '../../../../main/database/file/connection.ts';
import { shareMinor } from '../../../../shared-core/measure/money/money.ts';
import { fillLargeStash } from '../../../fixtures/large-stash.ts';
import { clothLot, fillLot, openAsking, receivedCloth, receivedFill, tempFolder } from '../../asking.ts';

const differing = `
  WITH lots AS (
    SELECT lot.item_id, lot.id, lot.price_minor, lot.received_milli,
      coalesce(sum(on_hand_milli), 0) AS on_hand, coalesce(sum(reserved_milli), 0) AS reserved
    FROM lot LEFT JOIN movement ON movement.lot_id = lot.id GROUP BY lot.id
  ), lengths AS (
    SELECT length.lot_id, length.id, coalesce(sum(on_hand_milli), 0) AS on_hand,
      coalesce(sum(reserved_milli), 0) AS reserved
    FROM length LEFT JOIN movement ON movement.length_id = length.id GROUP BY length.id
  ), items AS (
    SELECT item.id, coalesce(sum(on_hand), 0) AS on_hand, coalesce(sum(reserved), 0) AS reserved,
      count(CASE WHEN on_hand > 0 THEN 1 END) AS lot_count,
      (SELECT count(*) FROM lengths JOIN lot ON lot.id = lengths.lot_id WHERE lot.item_id = item.id AND on_hand > 0)
        AS length_count
    FROM item LEFT JOIN lots ON lots.item_id = item.id GROUP BY item.id
  )
  SELECT 'lot' AS what, id FROM lots LEFT JOIN lot_balance ON lot_id = id
    WHERE on_hand IS NOT on_hand_milli OR reserved IS NOT reserved_milli OR on_hand < 0
  UNION ALL SELECT 'length', id FROM lengths LEFT JOIN length_balance ON length_id = id
    WHERE on_hand IS NOT on_hand_milli OR reserved IS NOT reserved_milli OR on_hand < 0
  UNION ALL SELECT 'item', id FROM items LEFT JOIN item_balance AS b ON b.item_id = id
    WHERE on_hand IS NOT on_hand_milli OR reserved IS NOT reserved_milli
      OR items.lot_count IS NOT b.lot_count OR items.length_count IS NOT b.length_count`;

/** Lots, lengths and items whose balance is not the sum of their movements, or worth something else. */
function wrongBalances(file: string): unknown[] {
  const database = new SqliteDatabase(file, { readonly: true });
  try {
    const wrong: unknown[] = database.prepare(differing).all();
    const worth = new Map<string, number>();
    const lots = database
      .prepare(
        `WITH places AS (
           SELECT movement.lot_id, round(sum(on_hand_milli) * coalesce(worth_ratio, 1)) AS worth
           FROM movement LEFT JOIN length ON length.id = length_id GROUP BY movement.lot_id, length_id)
         SELECT item_id, price_minor, received_milli, coalesce(sum(worth), 0) AS worth
         FROM lot LEFT JOIN places ON places.lot_id = lot.id GROUP BY lot.id`,
      )
      .all() as { item_id: string; price_minor: number; received_milli: number; worth: number }[];
    for (const lot of lots) {
      const value = shareMinor(lot.price_minor, lot.worth, lot.received_milli);
      worth.set(lot.item_id, (worth.get(lot.item_id) ?? 0) + value);
    }
    const items = database.prepare('SELECT item_id, value_minor FROM item_balance').all() as {
      item_id: string;
      value_minor: number;
    }[];
    return [...wrong, ...items.filter((item) => item.value_minor !== (worth.get(item.item_id) ?? 0))];
  } finally {
    database.close();
  }
}

describe('the ledger', () => {
  test('agrees with its balances over a large stash', () => {
    const file = `${tempFolder()}/large.sqlite`;
    const opened = openWorkshop(file, { now: () => new Date() });
    if (!opened.ok) throw new Error('not opened');
    fillLargeStash(opened.value.connection, {
      seed: 71,
      itemCount: 150,
      lotCount: 700,
      movementCount: 9_000,
    });
    opened.value.close();
    expect(wrongBalances(file)).toEqual([]);
  });

  test('agrees with what is on hand after any sequence of purchases, write-offs and counts, and is never negative', async () => {
    const step = fc.record({
      what: fc.constantFrom('receive', 'write off', 'count'),
      onCloth: fc.boolean(),
      lot: fc.nat({ max: 9 }),
      length: fc.nat({ max: 9 }),
      amount: fc.oneof(
        fc.integer({ min: 0, max: 9_000_000 }).map((milli) => milli / 1000),
        fc.double({ min: 0, max: 9_000, noNaN: true }),
      ),
    });
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 5, maxLength: 30 }), async (steps) => {
        const asking = openAsking();
        const cloth = await receivedCloth(asking);
        const fill = await receivedFill(asking, 4321);
        let rowCount = 3;
        for (const { what, onCloth, lot, length, amount } of steps) {
          const { itemId } = onCloth ? cloth : fill;
          const { shelf } = await asking.get('readItem', { itemId });
          const onLot = shelf.lots[lot % shelf.lots.length]!;
          const onLength = onLot.lengths[length % (onLot.lengths.length || 1)];
          const place = { lotId: onLot.id, lengthId: onLength?.id ?? null };
          const here = onLength?.onHandMm ?? onLot.onHand;
          let shouldBe = true;
          let outcome: { readonly ok: boolean };
          if (what === 'receive') {
            outcome = await asking.ask('receiveLot', onCloth ? clothLot(itemId) : fillLot(itemId, 77));
          } else if (what === 'write off') {
            shouldBe = amount <= here && Math.round(amount * 1000) > 0;
            // What rounds to just what is there may go either way.
            if (Math.abs(amount - here) < 0.001) continue;
            outcome = await asking.ask('writeOff', { ...place, amount, reason: 'gone' });
          } else {
            shouldBe = amount === 0 || Math.round(amount * 1000) > 0;
            outcome = await asking.ask('correctCount', { ...place, counted: amount, reason: 'counted' });
          }
          expect([what, amount, here, outcome.ok]).toEqual([what, amount, here, shouldBe]);
          const rows =
            (await asking.get('readItem', { itemId: cloth.itemId })).movements.length +
            (await asking.get('readItem', { itemId: fill.itemId })).movements.length;
          expect(rows).toBeGreaterThanOrEqual(rowCount);
          rowCount = rows;
        }
        asking.services.close();
        expect(wrongBalances(asking.dataFile)).toEqual([]);
      }),
      { numRuns: 12, seed: 4711 },
    );
  });

  test('only grows: no row is changed, removed or replaced, not even past the services', async () => {
    const asking = openAsking();
    const { lotId } = await receivedFill(asking, 640);
    asking.services.close();
    const database = new SqliteDatabase(asking.dataFile);
    for (const [sql, why] of [
      ['UPDATE movement SET on_hand_milli = 5', /the ledger only grows/],
      ["UPDATE movement SET reason = 'other'", /the ledger only grows/],
      ['DELETE FROM movement', /the ledger only grows/],
      ['INSERT OR REPLACE INTO movement SELECT * FROM movement', /the ledger only grows/],
      [
        "REPLACE INTO movement SELECT 99, id, at, kind, lot_id, length_id, 7, 0, plan_id, 'x', NULL, NULL FROM movement",
        /the ledger only grows/,
      ],
      ['UPDATE lot SET received_milli = 7', /stays as it was/],
      ['DELETE FROM lot', /stays as it was/],
      ['DELETE FROM item', /FOREIGN KEY/],
      [
        `INSERT INTO movement VALUES (NULL, 'n', '', 'written off', '${lotId}', NULL, -640001, 0, NULL, '', NULL, NULL)`,
        /CHECK/,
      ],
      [
        `INSERT INTO movement VALUES (NULL, 'n', '', 'written off', '${lotId}', NULL, 5, 0, NULL, '', NULL, NULL)`,
        /CHECK/,
      ],
      [
        `INSERT INTO movement VALUES (NULL, 'n', '', 'released', '${lotId}', NULL, 0, -5, NULL, '', NULL, NULL)`,
        /CHECK/,
      ],
      [
        `INSERT INTO movement VALUES (NULL, 'n', '', 'lost', '${lotId}', NULL, -5, 0, NULL, '', NULL, NULL)`,
        /CHECK/,
      ],
      [
        `INSERT INTO movement VALUES (NULL, 'n', '', 'cut', '${lotId}', NULL, -5.5, 0, NULL, '', NULL, NULL)`,
        /INTEGER/,
      ],
      [
        `INSERT INTO movement VALUES (NULL, 'n', '', 'cut', '${lotId}', 'gone', -5, 0, NULL, '', NULL, NULL)`,
        /FOREIGN KEY/,
      ],
    ] as const) {
      expect(() => database.prepare(sql).run(), sql).toThrow(why);
    }
    database.close();
    expect(wrongBalances(asking.dataFile)).toEqual([]);
  });
});
