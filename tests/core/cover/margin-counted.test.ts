import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import { coverSentences } from '../../../shared-core/cover/cover-words.ts';
import type { ProposedSlot } from '../../../shared-core/cover/cutting-proposal.ts';
import { setAsideStand, usesToSetAside } from '../../../shared-core/cover/set-aside.ts';
import { estimate, type FlowSources } from '../../../shared-core/flow/estimate.ts';
import { proposedCutting, wholeBatch } from '../../../shared-core/flow/next-cutting.ts';
import type { CoatPlan, Margin } from '../../../shared-core/plan/model/coat-plan.ts';
import type { Cutting } from '../../../shared-core/stash/cutting.ts';
import { toMilli } from '../../../shared-core/stash/stash.ts';
import { item, layHere, lot, offer, onShelf, plan, slot } from '../../fixtures/small-workshop.ts';

/** Three coats: 21 snaps, 300 g of down and 1,230 m of thread, of which the tin, the sack and the spools hold more. */
const half: Margin = { kind: 'share', ratio: 0.5 };
const counted = (margin?: Margin, more: Partial<CoatPlan> = {}): CoatPlan =>
  plan({
    coatCount: 3,
    pieces: [],
    slots: [
      slot('snaps', 'fastening', { amountPerCoat: 7, ...(margin && { margin }) }),
      slot('down', 'fill', { amountPerCoat: 100, ...(margin && { margin }) }),
      slot('thread', 'thread', { amountPerCoat: 410, ...(margin && { margin }) }),
    ],
    ...more,
  });
const drawer = () => [
  onShelf(item('fastening', 'snaps item', { massG: 3 }), lot('snaps item', 'tin', 40, 40, 800)),
  onShelf(item('fill', 'down item'), lot('down item', 'sack', 600, 600, 9_000)),
  onShelf(
    item('thread', 'thread item', { sizeTex: 40 }),
    lot('thread item', 'spring', 2000, 1500, 1_400, '2026-03-02'),
    lot('thread item', 'summer', 1000, 700, 950, '2026-07-09'),
  ),
];
async function countedRoad(coat: CoatPlan, more: Partial<FlowSources> = {}) {
  return estimate({ plan: coat, shelf: drawer(), offers: [], suppliers: [], ...more }, layHere, solveHere);
}
const cutAll = (proposed: readonly ProposedSlot[]): Cutting => ({
  id: 'cutting',
  planId: 'plan',
  revision: 1,
  at: '2026-11-25T10:00:00.000Z',
  coats: [],
  note: '',
  undoes: null,
  undoneBy: null,
  movements: [],
  slots: proposed.map(({ slotId, itemId, met, lines }) => ({
    slotId,
    slotName: slotId,
    kind: 'thread',
    met,
    lines: lines.map(({ lotId, amount }) => ({
      itemId,
      itemName: itemId,
      lotId,
      lengthId: null,
      dyeLot: '',
      amount,
      kept: [],
      usedMilli: toMilli(amount),
      costMinor: 0,
      area: null,
    })),
  })),
});

describe('a margin for safety of what is counted or weighed', () => {
  it('stands beside what the coats take, in whole pieces', async () => {
    const { requirement, cover } = await countedRoad(counted({ kind: 'share', ratio: 0.1 }));
    expect(requirement).toMatchObject([
      { amount: 21, parts: [{ amount: 21 }], margin: { ratio: 0.1 } },
      { amount: 300, margin: { ratio: 0.1 } },
      { amount: 1230, margin: { ratio: 0.1 } },
    ]);
    expect(requirement[0]?.basis.at(-1)).toMatchObject({ kind: 'rule of thumb' });
    expect(cover.map(({ uses }) => uses.map((use) => [use.lotId, use.amount, use.marginAmount]))).toEqual([
      [['tin', 21, 3]],
      [['sack', 300, 30]],
      [['spring', 1230, 123]],
    ]);
  });

  it('is in no coat: neither its weight nor its cost', async () => {
    const without = await countedRoad(counted());
    const withHalf = await countedRoad(counted(half));
    // 7 x 3 g of snaps, 100 g of down, 410 m of 40 tex.
    expect(withHalf.finished.coats[0]?.massG).toBeCloseTo(21 + 100 + 16.4, 9);
    expect(withHalf.cost).toEqual(without.cost);
    // 21 of 40 at 8.00, 300 g of 600 at 90.00, 1,230 m of 2,000 at 14.00.
    expect(withHalf.cost.batchMinor).toBe(420 + 4_500 + 861);
  });

  it('is set aside with what the coats take, from another lot where the first runs out', async () => {
    const { cover } = await countedRoad(counted(half));
    const aside = usesToSetAside(cover);
    expect(aside).toEqual([
      { lotId: 'tin', lengthId: null, amount: 32 },
      { lotId: 'sack', lengthId: null, amount: 450 },
      { lotId: 'spring', lengthId: null, amount: 1500 },
      { lotId: 'summer', lengthId: null, amount: 345 },
    ]);
    expect(setAsideStand(aside, cover).state).toBe('fits');
    const context = { plan: counted(half), shelf: drawer(), system: 'metric' } as const;
    expect(coverSentences(cover[2]!, context)[0]).toBe(
      'The thread is covered by thread item: 1230 m and 270 m held back as margin of the 1500 m free in the lot of 2 Mar 2026 and 345 m held back as margin of the 700 m free in the lot of 9 Jul 2026.',
    );
  });

  it('is not proposed to be cut, and nothing of it is still to be cut', async () => {
    const sources = { plan: counted(half), shelf: drawer(), offers: [], suppliers: [] };
    const proposed = await proposedCutting(sources, wholeBatch(sources.plan), layHere);
    expect(
      proposed.map(({ met, lines }) => [met, lines.map(({ lotId, amount }) => [lotId, amount])]),
    ).toEqual([
      [{ kind: 'amount', amount: 21 }, [['tin', 21]]],
      [{ kind: 'amount', amount: 300 }, [['sack', 300]]],
      [{ kind: 'amount', amount: 1230 }, [['spring', 1230]]],
    ]);
    const { requirement, cover, still } = await countedRoad(sources.plan, { cuttings: [cutAll(proposed)] });
    expect(requirement).toMatchObject([{ amount: 0 }, { amount: 0 }, { amount: 0 }]);
    expect(cover.map(({ state, uses }) => [state, uses])).toEqual(Array(3).fill(['covered', []]));
    expect(still.map(({ state }) => state)).toEqual(['all cut', 'all cut', 'all cut']);
  });

  it('of a batch that is partly cut is held for the coats that are left', async () => {
    const sources = { plan: counted(half), shelf: drawer(), offers: [], suppliers: [] };
    const two = await proposedCutting(sources, [{ size: '40', coatCount: 2 }], layHere);
    const { cover, still } = await countedRoad(sources.plan, { cuttings: [cutAll(two)] });
    // 7 snaps are left to take: 3.5 beside them are four.
    expect(cover.map(({ uses }) => uses.map((use) => [use.amount, use.marginAmount]))).toEqual([
      [[7, 4]],
      [[100, 50]],
      [[410, 205]],
    ]);
    expect(still.map(({ state, needed }) => [state, needed])).toEqual([
      ['enough', 7],
      ['enough', 100],
      ['enough', 410],
    ]);
  });

  it('is bought where the stash has only what the coats take, and the coat pays for none of it', async () => {
    const plan = counted(half);
    const [snaps, down] = [
      onShelf(item('fastening', 'snaps item', { massG: 3 }), lot('snaps item', 'tin', 40, 24, 800)),
      onShelf(item('fill', 'down item'), lot('down item', 'sack', 600, 240, 9_000)),
    ];
    const offers = [
      offer('snaps item', 'card', { kind: 'pack', pieceCount: 8 }, 190),
      offer('down item', 'bag', { kind: 'by mass', stepG: 70, leastG: 0 }, 1_300),
    ];
    const shelf = [snaps, down, drawer()[2]!];
    const { cover, toBuy, cost } = await countedRoad(plan, { shelf, offers });
    expect(cover.map(({ state, shortage }) => [state, shortage])).toMatchObject([
      ['short', { amount: 0, marginAmount: 8, missingPieceCount: 0 }],
      ['short', { amount: 60, marginAmount: 150 }],
      ['covered', null],
    ]);
    expect(toBuy.lines.map(({ unitCount, usedAmount }) => [unitCount, usedAmount])).toEqual([
      [1, 0],
      [3, 60],
    ]);
    expect(toBuy.payMinor).toBe(190 + 3_900);
    // 21 snaps of the tin; 240 g of the sack and 60 of the 210 g bought.
    expect(cost.lines.slice(0, 2).map(({ costMinor, isIncomplete }) => [costMinor, isIncomplete])).toEqual([
      [420, false],
      [3_600 + 1_114, false],
    ]);
    const words = (index: number) =>
      coverSentences(cover[index]!, { plan, shelf, system: 'metric' })[0] ?? '';
    expect(words(0)).toBe(
      'The snaps are short by 8 pieces (snaps item): the coats are covered, but not the margin for safety.',
    );
    expect(words(1)).toBe('The down is short by 210 g (down item), including 150 g of margin for safety.');
  });

  it('without an offer leaves the cost of the coat complete', async () => {
    const shelf = [onShelf(item('fill', 'down item'), lot('down item', 'sack', 600, 300, 9_000))];
    const coat = counted(half, { slots: [slot('down', 'fill', { amountPerCoat: 100, margin: half })] });
    const { cost, toBuy } = await countedRoad(coat, { shelf });
    expect(toBuy.unbuyable).toMatchObject([{ slotIds: ['down'], why: 'no offer' }]);
    expect(cost).toMatchObject({ batchMinor: 4_500, isIncomplete: false });
  });

  it('of one slot takes nothing from what another slot needs', async () => {
    const coat = counted(undefined, {
      slots: [
        slot('sewing', 'thread', { itemId: 'thread item', amountPerCoat: 400, margin: half }),
        slot('quilting', 'thread', { itemId: 'thread item', amountPerCoat: 300 }),
      ],
    });
    const { cover } = await countedRoad(coat);
    expect(
      cover.map(({ state, uses, shortage }) => [state, uses.map(({ amount }) => amount), shortage]),
    ).toEqual([
      ['short', [1200, 0], expect.objectContaining({ amount: 0, marginAmount: 500 })],
      ['covered', [300, 600], null],
    ]);
  });

  it('asks of a substitute that it holds the margin too', async () => {
    const other = (onHand: number) => [
      onShelf(item('fill', 'down item')),
      onShelf(item('fill', 'feathers'), lot('feathers', 'bale', 500, onHand, 2_000)),
    ];
    const coat = counted(half, { slots: [slot('down', 'fill', { amountPerCoat: 100, margin: half })] });
    const substitutes = async (onHand: number) =>
      (await countedRoad(coat, { shelf: other(onHand) })).cover[0]?.substitutes;
    expect([await substitutes(449), await substitutes(450)]).toEqual([[], ['feathers']]);
  });

  it('however large, changes neither coat nor cost nor what is cut, and cutting that leaves nothing to cut', async () => {
    const amount = fc.integer({ min: 1, max: 400_000 }).map((milli) => milli / 1000);
    await fc.assert(
      fc.asyncProperty(
        fc.record({
          perCoat: fc.tuple(fc.integer({ min: 1, max: 9 }), amount, amount),
          coatCount: fc.integer({ min: 1, max: 4 }),
          ratio: fc.double({ min: 0.001, max: 1, noNaN: true }),
          lots: fc.array(amount, { minLength: 1, maxLength: 4 }),
        }),
        async ({ perCoat: [snaps, down, thread], coatCount, ratio, lots }) => {
          const coat = (margin?: Margin) =>
            plan({
              coatCount,
              pieces: [],
              slots: [
                slot('snaps', 'fastening', { amountPerCoat: snaps, ...(margin && { margin }) }),
                slot('down', 'fill', { amountPerCoat: down, ...(margin && { margin }) }),
                slot('sewing', 'thread', {
                  itemId: 'thread item',
                  amountPerCoat: thread,
                  ...(margin && { margin }),
                }),
                slot('quilting', 'thread', { itemId: 'thread item', amountPerCoat: down }),
              ],
            });
          const shelf = [
            onShelf(item('fastening', 'snaps item', { massG: 3 }), lot('snaps item', 'tin', 40, 40, 800)),
            onShelf(item('fill', 'down item'), lot('down item', 'sack', 900, 900, 9_000)),
            onShelf(
              item('thread', 'thread item', { sizeTex: 40 }),
              ...lots.map((each, index) => lot('thread item', `lot ${index}`, each, each, 100 + 37 * index)),
            ),
          ];
          const offers = [
            offer('snaps item', 'card', { kind: 'pack', pieceCount: 5 }, 190),
            offer('down item', 'bag', { kind: 'by mass', stepG: 70, leastG: 0 }, 1_300),
            offer('thread item', 'spool', { kind: 'spool', threadM: 500 }, 385),
          ];
          const road = async (margin?: Margin) => {
            const sources = { plan: coat(margin), shelf, offers, suppliers: [] };
            const result = await estimate(sources, layHere, solveHere);
            const proposed = await proposedCutting(sources, wholeBatch(sources.plan), layHere);
            return { result, proposed, sources };
          };
          const without = await road();
          const { result, proposed, sources } = await road({ kind: 'share', ratio });
          expect(result.finished).toEqual(without.result.finished);
          expect(result.cost).toEqual(without.result.cost);
          expect(proposed).toEqual(without.proposed);
          for (const each of result.cover) {
            for (const use of each.uses) {
              expect(use.amount + (use.marginAmount ?? 0)).toBeLessThanOrEqual(use.free + 1e-9);
            }
          }
          const cuttings = [cutAll(proposed)];
          const after = await estimate({ ...sources, cuttings }, layHere, solveHere);
          for (const slotCover of result.cover) {
            if ((slotCover.shortage?.amount ?? 0) > 0) continue;
            const rest = after.requirement.find(({ slotId }) => slotId === slotCover.slotId);
            expect(rest).toMatchObject({ amount: 0 });
          }
        },
      ),
      { seed: 77, numRuns: 60 },
    );
  });
});
