/** Random histories of a workshop: purchases, set-asides, cuttings, taking back, write-offs and counts, on a real file. */
import SqliteDatabase from 'better-sqlite3';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { emptySlot } from '../../../shared-core/plan/coat-plan.ts';
import { type Asking, clothLot, openAsking, receivedCloth, receivedFill } from '../asking.ts';

const step = fc.record({
  what: fc.constantFrom('receive', 'set aside', 'release', 'cut', 'cut', 'take back', 'write off', 'count'),
  plan: fc.nat({ max: 1 }),
  place: fc.nat({ max: 30 }),
  otherPlace: fc.nat({ max: 30 }),
  share: fc.double({ min: 0.05, max: 1.1, noNaN: true }),
  keeps: fc.boolean(),
  releasesRest: fc.boolean(),
});

interface Balances {
  readonly lots: readonly unknown[];
  readonly lengths: readonly unknown[];
  readonly items: readonly unknown[];
}

/** What is on hand and reserved everywhere; lengths that hold nothing are left out. */
function balances(file: string): Balances {
  const database = new SqliteDatabase(file, { readonly: true });
  const all = (sql: string) => database.prepare(sql).raw().all();
  const read = {
    lots: all('SELECT * FROM lot_balance ORDER BY lot_id'),
    lengths: all(
      'SELECT * FROM length_balance WHERE on_hand_milli <> 0 OR reserved_milli <> 0 ORDER BY length_id',
    ),
    items: all('SELECT * FROM item_balance ORDER BY item_id'),
  };
  database.close();
  return read;
}

/** Rows that are not what the ledger adds up to, or say what cannot be. */
function wrong(file: string): unknown[] {
  const database = new SqliteDatabase(file, { readonly: true });
  const rows = database
    .prepare(
      `SELECT 'lot' AS what, lot_id AS id FROM lot_balance AS b WHERE on_hand_milli < 0 OR reserved_milli < 0
         OR on_hand_milli <> (SELECT coalesce(sum(on_hand_milli), 0) FROM movement AS m WHERE m.lot_id = b.lot_id)
         OR reserved_milli <> (SELECT coalesce(sum(reserved_milli), 0) FROM movement AS m WHERE m.lot_id = b.lot_id)
       UNION ALL SELECT 'length', length_id FROM length_balance AS b WHERE on_hand_milli < 0 OR reserved_milli < 0
         OR on_hand_milli <> (SELECT coalesce(sum(on_hand_milli), 0) FROM movement AS m WHERE m.length_id = b.length_id)
         OR reserved_milli <> (SELECT coalesce(sum(reserved_milli), 0) FROM movement AS m WHERE m.length_id = b.length_id)
       UNION ALL SELECT 'lengths of lot', lot.id FROM lot JOIN lot_balance ON lot_id = lot.id
         WHERE EXISTS (SELECT 1 FROM length WHERE length.lot_id = lot.id) AND on_hand_milli <>
           (SELECT sum(b.on_hand_milli) FROM length JOIN length_balance AS b ON b.length_id = length.id
            WHERE length.lot_id = lot.id)
       UNION ALL SELECT 'plan', plan_id FROM (SELECT plan_id, sum(reserved_milli) AS reserved FROM movement
         WHERE plan_id IS NOT NULL GROUP BY plan_id, lot_id, length_id) WHERE reserved < 0`,
    )
    .all();
  database.close();
  return rows;
}

/** Every row of the tables that only grow, by its key, so that a later state can be held against it. */
function written(file: string): Map<string, string> {
  const database = new SqliteDatabase(file, { readonly: true });
  const rows = ['movement', 'cutting', 'lot', 'length'].flatMap((table) =>
    (database.prepare(`SELECT * FROM ${table}`).all() as { id: string }[]).map(
      (row) => [`${table} ${row.id}`, JSON.stringify(row)] as const,
    ),
  );
  database.close();
  return new Map(rows);
}

async function savedPlan(asking: Asking, clothId: string, name: string): Promise<string> {
  const plan = {
    id: 'new',
    name,
    size: '40',
    coatCount: 6,
    slots: [{ ...emptySlot('shell', 'shell', 'cloth'), itemId: clothId }],
    pieces: [],
    seams: [],
    quilting: null,
    clearanceMm: 2,
    threadWastageRatio: 0.15,
    sewingMinutesPerCoat: 540,
    notes: '',
  };
  return (await asking.get('savePlan', { plan, basedOn: null, said: '' })).planId;
}

async function places(asking: Asking, itemId: string) {
  const { shelf } = await asking.get('readItem', { itemId });
  return shelf.lots.flatMap((lot) => lot.lengths.map((length) => ({ lotId: lot.id, length })));
}

test('after any history the balances are the sums, nothing written is changed, and a cutting taken back leaves no trace in them', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 8, maxLength: 22 }), async (steps) => {
      const asking = openAsking();
      const cloth = await receivedCloth(asking);
      await receivedFill(asking, 640);
      const planIds = [
        await savedPlan(asking, cloth.itemId, 'Fen coat'),
        await savedPlan(asking, cloth.itemId, 'Tarn coat'),
      ];
      let before = written(asking.dataFile);
      let cutCount = 0;
      for (const { what, plan, place, otherPlace, share, keeps, releasesRest } of steps) {
        const planId = planIds[plan]!;
        const all = await places(asking, cloth.itemId);
        const at = all[place % all.length]!;
        const other = all[otherPlace % all.length]!;
        const amount = Math.round(at.length.onHandMm * share * 1000) / 1000;
        const on = { lotId: at.lotId, lengthId: at.length.id };
        switch (what) {
          case 'receive':
            await asking.get('receiveLot', clothLot(cloth.itemId));
            break;
          case 'set aside':
            if (amount > 0) await asking.ask('setAside', { planId, uses: [{ ...on, amount }] });
            break;
          case 'release':
            await asking.get('setAside', { planId, uses: [] });
            break;
          case 'write off':
            if (amount > 0) await asking.ask('writeOff', { ...on, amount, reason: 'moth' });
            break;
          case 'count':
            await asking.get('takeStock', { counts: [{ ...on, counted: amount }], reason: 'counted' });
            break;
          case 'take back': {
            const { rows } = await asking.get('listCuttings', { planId });
            const last = rows.find((row) => row.undoes === null && row.undoneBy === null);
            if (last) await asking.ask('undoCutting', { cuttingId: last.id });
            break;
          }
          case 'cut': {
            if (amount <= 0) break;
            const standing = balances(asking.dataFile);
            const kept = keeps ? [{ x: 0, y: 0, lengthMm: amount / 2, widthMm: at.length.widthMm / 3 }] : [];
            const lines = [
              { ...on, amount, pieceAreaMm2: (amount * at.length.widthMm) / 2, kept },
              ...(other.length.id !== at.length.id && other.length.onHandMm > 60
                ? [
                    {
                      lotId: other.lotId,
                      lengthId: other.length.id,
                      amount: 55.5,
                      pieceAreaMm2: 9,
                      kept: [],
                    },
                  ]
                : []),
            ];
            const booked = await asking.ask('recordCutting', {
              planId,
              basedOn: 1,
              coats: [{ size: '40', coatCount: 1 }],
              note: '',
              releasesRest,
              slots: [{ slotId: 'shell', met: { kind: 'shapes', shapes: [] }, lines }],
            });
            if (!booked.ok) break;
            cutCount += 1;
            await asking.get('undoCutting', { cuttingId: booked.value.id });
            expect(balances(asking.dataFile)).toEqual(standing);
            if (releasesRest) break;
            await asking.get('recordCutting', {
              planId,
              basedOn: 1,
              coats: [{ size: '40', coatCount: 1 }],
              note: '',
              releasesRest,
              slots: [{ slotId: 'shell', met: { kind: 'shapes', shapes: [] }, lines }],
            });
            break;
          }
          default:
            what satisfies never;
        }
        const after = written(asking.dataFile);
        for (const [key, row] of before) expect(after.get(key), `${key} after: ${what}`).toBe(row);
        before = after;
        expect(wrong(asking.dataFile), `after: ${what}`).toEqual([]);
      }
      fc.pre(cutCount > 0);
      expect(asking.logged).toEqual([]);
      asking.services.close();
    }),
    { numRuns: 14, seed: 2207 },
  );
}, 180_000);
