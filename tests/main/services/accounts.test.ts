import SqliteDatabase from 'better-sqlite3';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { imbalanceMinor } from '../../../shared-core/cost/valuation.ts';
import { newPlan } from '../../../shared-core/plan/new-plan.ts';
import { toMilli } from '../../../shared-core/stash/stash.ts';
import { type Asking, down, fillLot, openAsking } from '../asking.ts';

interface Step {
  readonly kind: 'cut' | 'returned' | 'written off' | 'corrected' | 'received';
  /** Of what is on hand; of what was cut for returned. */
  readonly share: number;
  readonly priceMinor: number;
}

const step: fc.Arbitrary<Step> = fc.record({
  kind: fc.constantFrom('cut', 'returned', 'written off', 'corrected', 'received'),
  share: fc.double({ min: 0.01, max: 1, noNaN: true }),
  priceMinor: fc.integer({ min: 0, max: 4_000_000 }),
});

/** One item of loose fill that is received, cut for the plan, returned, written off and counted as the steps say. */
async function live(asking: Asking, name: string, steps: readonly Step[], planId: string) {
  const { itemId } = await asking.get('saveItem', { ...down, name });
  const receive = async (priceMinor: number, amount: number) =>
    (await asking.get('receiveLot', { ...fillLot(itemId, amount), priceMinor })).lotId;
  let lotId = await receive(steps[0]?.priceMinor ?? 1, 911);
  let receivedMinor = steps[0]?.priceMinor ?? 1;
  let cutMilli = 0;
  for (const { kind, share, priceMinor } of steps) {
    const { shelf } = await asking.get('readItem', { itemId });
    const onHand = shelf.lots.find((lot) => lot.id === lotId)?.onHand ?? 0;
    const part = Math.floor(onHand * share * 1000) / 1000;
    switch (kind) {
      case 'received':
        lotId = await receive(priceMinor, 13 + 700 * share);
        receivedMinor += priceMinor;
        cutMilli = 0;
        break;
      case 'written off':
        if (part > 0) await asking.get('writeOff', { lotId, lengthId: null, amount: part, reason: 'moths' });
        break;
      case 'corrected':
        await asking.get('correctCount', { lotId, lengthId: null, counted: 1700 * share, reason: 'weighed' });
        break;
      case 'cut':
        if (part > 0) book(asking, lotId, 'cut', -toMilli(part), planId);
        cutMilli += toMilli(part);
        break;
      case 'returned': {
        const backMilli = Math.floor(cutMilli * share);
        if (backMilli > 0) book(asking, lotId, 'returned', backMilli, planId);
        cutMilli -= backMilli;
        break;
      }
      default:
        kind satisfies never;
    }
  }
  return { itemId, receivedMinor };
}

/** A row of the ledger as a cutting writes it. */
function book(asking: Asking, lotId: string, kind: string, onHandMilli: number, planId: string): void {
  const database = new SqliteDatabase(asking.dataFile);
  database
    .prepare(
      `INSERT INTO movement (id, at, kind, lot_id, length_id, on_hand_milli, reserved_milli, plan_id, reason)
       VALUES (hex(randomblob(16)), '2026-10-04T08:00:00Z', ?, ?, NULL, ?, 0, ?, '')`,
    )
    .run(kind, lotId, onHandMilli, planId);
  database.close();
}

describe('the money of the stash', { timeout: 120_000 }, () => {
  test('what was received is what was consumed, written off, lost and is on hand, to the last cent', async () => {
    const asking = openAsking();
    const { planId } = await asking.get('savePlan', {
      plan: newPlan('any', 'Fenwalk', '40'),
      basedOn: null,
      said: '',
    });
    let count = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 12 }), async (steps) => {
        const { itemId, receivedMinor } = await live(asking, `down ${count++}`, steps, planId);
        const { items, total, coats } = await asking.get('readAccount', {});
        const own = items.find((item) => item.itemId === itemId)?.account;
        expect(own?.receivedMinor).toBe(receivedMinor);
        for (const account of [total, ...items.map((item) => item.account)]) {
          expect(imbalanceMinor(account)).toBe(0);
        }
        expect(coats.reduce((sum, coat) => sum + coat.consumedMinor, 0)).toBe(total.consumedMinor);
        // The stash's own list, which its triggers keep, says the same of what is on hand.
        const { rows } = await asking.get('listItems', {
          search: '',
          kinds: [],
          sortBy: 'name',
          isDescending: false,
          offset: 0,
          limit: 500,
        });
        for (const row of rows) {
          expect(items.find((item) => item.itemId === row.id)?.account.onHandMinor).toBe(row.valueMinor);
        }
      }),
      { seed: 41, numRuns: 40 },
    );
  });

  test('the demo adds up too, and names its coats', async () => {
    const asking = openAsking();
    await asking.get('openDemo', {}, 'demo');
    const { items, total } = await asking.get('readAccount', {}, 'demo');
    expect(items.length).toBeGreaterThan(20);
    expect(total.receivedMinor).toBeGreaterThan(100_000);
    expect(imbalanceMinor(total)).toBe(0);
  });

  test('a workshop without a stash has an empty account', async () => {
    expect(await openAsking().get('readAccount', {})).toMatchObject({ items: [], coats: [] });
  });
});
