import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import type { Cutting } from '../../../shared-core/stash/cutting.ts';
import type { CostSheet } from '../../../shared-core/cost/cost.ts';
import { estimate, type FlowSources } from '../../../shared-core/flow/estimate.ts';
import {
  clothLot,
  item,
  layHere,
  lot,
  offer,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../../fixtures/small-workshop.ts';

const taffeta = item('cloth', 'shell item', { widthMm: 1400 });

async function costOf(sources: FlowSources): Promise<CostSheet> {
  return (await estimate(sources, layHere, solveHere)).cost;
}

describe('what the coat costs', () => {
  it('takes thread from the oldest lot first, at what that lot cost', async () => {
    const sheet = await costOf({
      plan: plan({ coatCount: 2, pieces: [], slots: [slot('thread', 'thread', { amountPerCoat: 600 })] }),
      shelf: [
        onShelf(
          item('thread', 'thread item'),
          lot('thread item', 'spring', 1000, 700, 500, '2026-03-02'),
          lot('thread item', 'autumn', 2000, 2000, 1400, '2026-09-20'),
        ),
      ],
      offers: [],
      suppliers: [],
    });
    // 700 m of 1000 m for 5.00, then 500 m of 2000 m for 14.00.
    expect(sheet.lines[0]?.parts).toEqual([
      { lotId: 'spring', amount: 700, costMinor: 350 },
      { lotId: 'autumn', amount: 500, costMinor: 350 },
    ]);
    expect(sheet.batchMinor).toBe(700);
    expect(sheet.perCoatMinor).toEqual([350, 350]);
  });

  it('charges the length used, the waste between the pieces included, and says what the waste is', async () => {
    const sheet = await costOf({
      plan: plan({ pieces: [piece('panel', rectangle(700, 1050))] }),
      shelf: [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [3500], 7000))],
      offers: [],
      suppliers: [],
    });
    // 700 of 3500 mm for 70.00; a quarter of the width lies beside the panel.
    expect(sheet.lines[0]).toMatchObject({ costMinor: 1400, wasteMinor: 350, isIncomplete: false });
  });

  it('charges only the part of a purchase that the coats use up', async () => {
    const sheet = await costOf({
      plan: plan({ coatCount: 3, pieces: [], slots: [slot('snaps', 'fastening', { amountPerCoat: 7 })] }),
      shelf: [onShelf(item('fastening', 'snaps item'), lot('snaps item', 'tin', 10, 4, 300))],
      offers: [offer('snaps item', 'pack', { kind: 'pack', pieceCount: 20 }, 700)],
      suppliers: [],
    });
    // 4 of 10 snaps for 3.00, then 17 of 20 for 7.00.
    expect(sheet.lines[0]?.parts.map((part) => part.costMinor)).toEqual([120, 595]);
  });

  it('stays that of the whole batch once cutting has begun: what was cut, and the rest as it is covered', async () => {
    const cutSnaps = (amount: number, costMinor: number): Cutting => ({
      id: 'first',
      planId: 'plan',
      revision: 1,
      at: '2026-10-04T08:00:00Z',
      coats: [{ size: '40', coatCount: 1 }],
      note: '',
      slots: [
        {
          slotId: 'snaps',
          slotName: 'snaps',
          kind: 'fastening',
          met: { kind: 'amount', amount },
          lines: [
            {
              itemId: 'snaps item',
              itemName: 'snaps',
              lotId: 'gone',
              dyeLot: '',
              lengthId: null,
              amount,
              kept: [],
              usedMilli: amount * 1000,
              costMinor,
              area: null,
            },
          ],
        },
      ],
      undoes: null,
      undoneBy: null,
      movements: [],
    });
    const sheet = await costOf({
      plan: plan({ coatCount: 3, pieces: [], slots: [slot('snaps', 'fastening', { amountPerCoat: 7 })] }),
      shelf: [onShelf(item('fastening', 'snaps item'), lot('snaps item', 'tin', 20, 20, 500))],
      offers: [],
      suppliers: [],
      cuttings: [cutSnaps(7, 310)],
    });
    // 7 of a lot that is used up, for 3.10; then 14 of 20 for 5.00.
    expect(sheet.lines[0]?.parts).toEqual([
      { lotId: 'gone', isCut: true, amount: 7, costMinor: 310 },
      { lotId: 'tin', amount: 14, costMinor: 350 },
    ]);
    expect(sheet.batchMinor).toBe(660);
    expect(sheet.perCoatMinor).toEqual([220, 220, 220]);
  });

  it('says that the cost is not complete while a gap has no price', async () => {
    const sheet = await costOf({ plan: plan(), shelf: [onShelf(taffeta)], offers: [], suppliers: [] });
    expect(sheet.isIncomplete).toBe(true);
  });

  it('the coats of a batch add up to the batch to the last cent', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 1, max: 23 }),
        fc.integer({ min: 1, max: 99_999 }),
        async (coatCount, priceMinor) => {
          const sheet = await costOf({
            plan: plan({ coatCount, pieces: [], slots: [slot('thread', 'thread', { amountPerCoat: 13 })] }),
            shelf: [
              onShelf(item('thread', 'thread item'), lot('thread item', 'spring', 301, 301, priceMinor)),
            ],
            offers: [],
            suppliers: [],
          });
          expect(sheet.perCoatMinor).toHaveLength(coatCount);
          expect(sheet.perCoatMinor.reduce((sum, coat) => sum + coat, 0)).toBe(sheet.batchMinor);
          expect(Math.max(...sheet.perCoatMinor) - Math.min(...sheet.perCoatMinor)).toBeLessThanOrEqual(1);
        },
      ),
      { seed: 5 },
    );
  });
});
