import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { imbalanceMinor } from '../../../../shared-core/cost/valuation.ts';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { emptySlot } from '../../../../shared-core/plan/model/coat-plan.ts';
import { newPlan } from '../../../../shared-core/plan/model/new-plan.ts';
import { toMilli } from '../../../../shared-core/stash/stash.ts';
import { type Asking, clothLot, down, fillLot, openAsking, taffeta } from '../../asking.ts';

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
        if (part > 0) await book(asking, lotId, 'cut', -toMilli(part), planId);
        cutMilli += toMilli(part);
        break;
      case 'returned': {
        const backMilli = Math.floor(cutMilli * share);
        if (backMilli > 0) await book(asking, lotId, 'returned', backMilli, planId);
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
function book(asking: Asking, lotId: string, kind: string, onHandMilli: number, planId: string) {
  return asking.beside(
    `INSERT INTO movement (id, at, kind, lot_id, length_id, on_hand_milli, reserved_milli, plan_id, reason)
     VALUES (?, '2026-10-04T08:00:00Z', ?, ?, NULL, ?, 0, ?, '')`,
    randomUUID(),
    kind,
    lotId,
    onHandMilli,
    planId,
  );
}

const everything = {
  search: '',
  kinds: [],
  sortBy: 'name',
  isDescending: false,
  offset: 0,
  limit: 500,
} satisfies CallInput<'listItems'>;

describe('the money of the stash', () => {
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
        const { rows } = await asking.get('listItems', everything);
        for (const row of rows) {
          expect(items.find((item) => item.itemId === row.id)?.account.onHandMinor).toBe(row.valueMinor);
        }
      }),
      { seed: 41, numRuns: 20 },
    );
  });

  test('cuttings of cloth with remnants kept, and taken back in any order, add up as well', async () => {
    const asking = openAsking();
    const ring = [0, 0, 700, 0, 700, 500, 0, 500];
    const act = fc.record({
      kind: fc.constantFrom('cut', 'cut', 'undo', 'written off', 'corrected'),
      which: fc.nat(),
      share: fc.double({ min: 0.02, max: 0.98, noNaN: true }),
      keptShare: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
    });
    let count = 0;
    let keptCount = 0;
    let undoneCount = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.array(act, { minLength: 1, maxLength: 14 }),
        fc.integer({ min: 1, max: 900_000 }),
        async (acts, priceMinor) => {
          const { itemId } = await asking.get('saveItem', { ...taffeta, name: `taffeta ${count}` });
          const { lotId } = await asking.get('receiveLot', { ...clothLot(itemId), priceMinor });
          const slots = [{ ...emptySlot('shell', 'shell', 'cloth'), itemId }];
          const plan = { ...newPlan('any', `coat ${count++}`, '40'), slots, quilting: null };
          const { planId } = await asking.get('savePlan', { plan, basedOn: null, said: '' });
          const standing: string[] = [];
          for (const { kind, which, share, keptShare } of acts) {
            const { shelf } = await asking.get('readItem', { itemId });
            const there = shelf.lots[0]?.lengths.filter((length) => length.onHandMm > 60) ?? [];
            const length = there[which % Math.max(1, there.length)];
            if (kind === 'undo') {
              const cuttingId = standing.splice(which % Math.max(1, standing.length), 1)[0];
              // One whose remnants were cut since is refused, and that changes nothing.
              if (cuttingId && (await asking.ask('undoCutting', { cuttingId })).ok) undoneCount++;
              continue;
            }
            if (!length) continue;
            const amount = Math.round(length.onHandMm * share * 1000) / 1000;
            const place = { lotId, lengthId: length.id };
            if (kind === 'written off') await asking.get('writeOff', { ...place, amount, reason: 'moths' });
            else if (kind === 'corrected')
              await asking.get('correctCount', { ...place, counted: amount, reason: 'measured' });
            else {
              const kept = [
                { x: 0, y: 0, lengthMm: amount, widthMm: Math.round(length.widthMm * keptShare * 10) / 10 },
              ];
              const cutting = await asking.get('recordCutting', {
                planId,
                basedOn: 1,
                coats: [{ size: '40', coatCount: 1 }],
                note: '',
                releasesRest: false,
                slots: [
                  {
                    slotId: 'shell',
                    met: {
                      kind: 'shapes',
                      shapes: [
                        { pieceId: 'back', size: '40', name: 'Back', ring, count: 1, mirroredCount: 0 },
                      ],
                    },
                    lines: [{ ...place, amount, pieceAreaMm2: 0, kept: share < 0.5 ? kept : [] }],
                  },
                ],
              });
              if (share < 0.5) keptCount++;
              standing.push(cutting.id);
            }
          }
          const { items, total, coats } = await asking.get('readAccount', {});
          const own = items.find((item) => item.itemId === itemId)?.account;
          expect(own?.receivedMinor).toBe(priceMinor);
          expect(imbalanceMinor(total)).toBe(0);
          expect(coats.reduce((sum, coat) => sum + coat.consumedMinor, 0)).toBe(total.consumedMinor);
          const { rows } = await asking.get('listItems', { ...everything, search: `taffeta ${count - 1}` });
          expect(own?.onHandMinor).toBe(rows.find((row) => row.id === itemId)?.valueMinor);
        },
      ),
      { seed: 43, numRuns: 20 },
    );
    expect(keptCount).toBeGreaterThan(10);
    expect(undoneCount).toBeGreaterThan(5);
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
