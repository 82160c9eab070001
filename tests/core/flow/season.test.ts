import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import {
  season,
  seasonBasket,
  type SeasonSources,
  shelfAfter,
} from '../../../shared-core/flow/season/season.ts';
import { plannedFor } from '../../../shared-core/plan/model/season-entry.ts';
import type { SlotCover } from '../../../shared-core/cover/slot-cover.ts';
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
const thread = item('thread', 'thread item');

function coat(id: string, lengthMm: number, threadM: number) {
  return plan({
    id,
    name: id,
    slots: [slot('shell', 'cloth'), slot('thread', 'thread', { amountPerCoat: threadM })],
    pieces: [piece('panel', rectangle(lengthMm, 1050))],
  });
}

const sources: SeasonSources = {
  entries: [
    { plan: coat('Lapwing', 700, 300), coatCount: 2 },
    { plan: coat('Plover', 900, 450), coatCount: null },
  ],
  shelf: [
    onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [2100], 4200)),
    onShelf(thread, lot('thread item', 'spring', 1000, 1000, 700)),
  ],
  offers: [
    offer('shell item', 'by the 10 cm', { kind: 'by length', stepMm: 100, widthMm: 1400, leastMm: 0 }, 230),
    offer('thread item', 'spool', { kind: 'spool', threadM: 500 }, 380),
  ],
  suppliers: [],
};
const unwatched = { signal: { aborted: false }, onDone: () => {} };

describe('a season of several coats on one stash', () => {
  it('gives the first plan the stash and the next what is left of it', async () => {
    const [first, second] = await season(sources, layHere, solveHere, unwatched);
    // Two panels of 700 of 2100 mm, 600 of 1000 m; then 900 mm and 450 m on 700 mm and 400 m.
    expect(first?.estimate.cover.map(({ state }) => state)).toEqual(['covered', 'covered']);
    expect(second?.shelf.map(({ lots }) => lots[0]?.onHand)).toEqual([700, 400]);
    expect(second?.estimate.cover.map(({ state, shortage }) => [state, shortage?.amount ?? 0])).toEqual([
      ['short', 900],
      ['short', 50],
    ]);
  });

  it('in the other order the other coat goes short', async () => {
    const turned = { ...sources, entries: [...sources.entries].reverse() };
    const [plover, lapwing] = await season(turned, layHere, solveHere, unwatched);
    expect(plover?.estimate.cover.map(({ state }) => state)).toEqual(['covered', 'covered']);
    expect(lapwing?.estimate.cover[0]?.shortage?.amount).toBeCloseTo(700, 6);
    expect(lapwing?.estimate.cover[1]?.shortage?.amount).toBeCloseTo(50, 6);
  });

  it('buys what all plans lack together: steps and spools are rounded once', async () => {
    const more = {
      ...sources,
      entries: [
        { plan: coat('Lapwing', 700, 300), coatCount: 2 },
        { plan: coat('Plover', 930, 450), coatCount: null },
        { plan: coat('Curlew', 610, 70), coatCount: 3 },
      ],
    };
    const plans = await season(more, layHere, solveHere, unwatched);
    // One panel of 610 goes on the rest of 700. Alone, 930 and 2 x 610 mm take 10 + 13 steps, and 50 and 210 m a spool each.
    expect(plans.slice(1).map(({ estimate }) => estimate.toBuy.lines.map((line) => line.unitCount))).toEqual([
      [10, 1],
      [13, 1],
    ]);
    const { basket, unbuyable } = await seasonBasket(more, plans, layHere, solveHere);
    expect(unbuyable).toEqual([]);
    expect(basket.buys.map(({ itemId, unitCount, gaps }) => [itemId, unitCount, gaps.length])).toEqual([
      ['shell item', 22, 2],
      ['thread item', 1, 2],
    ]);
    expect(basket.totalMinor).toBe(22 * 230 + 380);
  });

  it('takes the coats of the season, and a plan in several sizes as it is', () => {
    const two = plan({ sizes: [{ size: '44', coatCount: 3, pieces: [] }] });
    expect(plannedFor({ plan: plan({ coatCount: 4 }), coatCount: 7 }).coatCount).toBe(7);
    expect(plannedFor({ plan: plan({ coatCount: 4 }), coatCount: null }).coatCount).toBe(4);
    expect(plannedFor({ plan: two, coatCount: 9 })).toBe(two);
  });

  it('keeps what the second has set aside from the first, and what it does not need of that is free', async () => {
    const setAside = [{ lotId: 'spring', lengthId: null, amount: 520 }];
    const [, spool] = sources.shelf;
    const [lapwing, plover] = sources.entries;
    if (!spool || !lapwing || !plover) throw new Error('the season is not as it was');
    const reserved = { ...spool, lots: spool.lots.map((each) => ({ ...each, reserved: 520 })) };
    const entries = [lapwing, { ...plover, setAside }, { plan: coat('Curlew', 20, 100), coatCount: null }];
    const done = await season({ ...sources, shelf: [reserved], entries }, layHere, solveHere, unwatched);
    // Of 1000 m the first has 480 for its 600; the second needs 450 of its 520; 70 are left for the third.
    expect(done.map(({ estimate }) => estimate.cover[1]?.shortage?.amount ?? 0)).toEqual([120, 0, 30]);
  });

  it('keeps what a plan holds back as margin from the plans after it', async () => {
    const margin = { kind: 'length', lengthMm: 300 } as const;
    const share = { kind: 'share', ratio: 0.4 } as const;
    const lapwing = plan({
      id: 'Lapwing',
      slots: [
        slot('shell', 'cloth', { margin }),
        slot('thread', 'thread', { amountPerCoat: 500, margin: share }),
      ],
      pieces: [piece('panel', rectangle(1400, 1050))],
    });
    const entries = [
      { plan: lapwing, coatCount: null },
      { plan: coat('Plover', 650, 350), coatCount: null },
    ];
    const [first, second] = await season({ ...sources, entries }, layHere, solveHere, unwatched);
    expect(first?.estimate.cover.map(({ uses }) => uses[0]?.marginAmount)).toEqual([300, 200]);
    // Of 2100 mm 1400 are cut and 300 held; of 1000 m 500 are sewn and 200 held.
    expect(second?.shelf.map(({ lots }) => lots[0]?.onHand)).toEqual([400, 300]);
    expect(second?.shelf[0]?.lots[0]?.lengths[0]?.onHandMm).toBe(400);
    expect(second?.estimate.cover.map(({ state, shortage }) => [state, shortage?.amount ?? 0])).toEqual([
      ['short', 650],
      ['short', 50],
    ]);
  });

  it('a cut length begins anew behind the cut, and its flaws with it', () => {
    const before = clothLot('shell item', 'autumn', 1400, [5000], 100);
    const flawed = {
      ...before,
      lengths: before.lengths.map((length) => ({
        ...length,
        flaws: [
          { x: 300, y: 0, widthX: 100, widthY: 90 },
          { x: 1150, y: 10, widthX: 200, widthY: 80 },
          { x: 2600, y: 20, widthX: 60, widthY: 70 },
        ],
      })),
    };
    const use = { lotId: 'autumn', lengthId: 'autumn length 1', amount: 1200, free: 5000, layLength: 0 };
    const [after] = shelfAfter([onShelf(taffeta, flawed)], [{ uses: [use] } as unknown as SlotCover]);
    expect(after?.lots[0]?.lengths[0]).toMatchObject({
      onHandMm: 3800,
      flaws: [
        { x: 0, y: 10, widthX: 150, widthY: 80 },
        { x: 1400, y: 20, widthX: 60, widthY: 70 },
      ],
    });
    const withMargin = { ...use, marginAmount: 250 };
    const [held] = shelfAfter([onShelf(taffeta, flawed)], [{ uses: [withMargin] } as unknown as SlotCover]);
    expect(held?.lots[0]?.lengths[0]).toMatchObject({
      onHandMm: 3550,
      flaws: [{ x: 1150, y: 20, widthX: 60, widthY: 70 }],
    });
  });

  it('stopped, it gives the plans that are whole', async () => {
    const signal = { aborted: false };
    const done = await season(sources, layHere, solveHere, {
      signal,
      onDone: (_, doneCount) => {
        signal.aborted = doneCount === 1;
      },
    });
    expect(done.map((each) => each.plan.id)).toEqual(['Lapwing']);
  });

  it('what plans take and hold back is never more than lies there, whatever their margins', async () => {
    const want = fc.record({
      threadM: fc.integer({ min: 1, max: 900 }),
      lengthMm: fc.integer({ min: 100, max: 900 }),
      ratio: fc.integer({ min: 0, max: 100 }),
      marginMm: fc.integer({ min: 0, max: 600 }),
    });
    const lots = fc.array(fc.integer({ min: 1, max: 900 }), { minLength: 1, maxLength: 4 });
    const rolls = fc.array(fc.integer({ min: 300, max: 2400 }), { minLength: 1, maxLength: 3 });
    await fc.assert(
      fc.asyncProperty(
        lots,
        rolls,
        fc.array(want, { minLength: 2, maxLength: 4 }),
        async (spools, cloth, wants) => {
          const shelf = [
            onShelf(
              taffeta,
              ...cloth.map((each, i) => clothLot('shell item', `roll ${i}`, 1400, [each], 700)),
            ),
            onShelf(thread, ...spools.map((each, i) => lot('thread item', `spool ${i}`, each, each, 100))),
          ];
          const entries = wants.map(({ threadM, lengthMm, ratio, marginMm }, index) => ({
            plan: plan({
              id: `plan ${index}`,
              slots: [
                slot('shell', 'cloth', { margin: { kind: 'length', lengthMm: marginMm } }),
                slot('thread', 'thread', {
                  amountPerCoat: threadM,
                  margin: { kind: 'share', ratio: ratio / 100 },
                }),
              ],
              pieces: [piece('panel', rectangle(lengthMm, 1050))],
            }),
            coatCount: null,
          }));
          const done = await season(
            { entries, shelf, offers: [], suppliers: [] },
            layHere,
            solveHere,
            unwatched,
          );
          const uses = done.flatMap(({ estimate }) => estimate.cover.flatMap((each) => each.uses));
          for (const onHand of shelf.flatMap((each) => each.lots)) {
            const kept = uses
              .filter(({ lotId }) => lotId === onHand.id)
              .reduce((sum, { amount, marginAmount = 0 }) => sum + amount + marginAmount, 0);
            expect(kept).toBeLessThanOrEqual(onHand.onHand + 0.01);
          }
        },
      ),
      { seed: 52, numRuns: 40 },
    );
  });

  it('no plan ever takes what an earlier one took, whatever the stash and the order', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 1, max: 900 }), { minLength: 1, maxLength: 5 }),
        fc.array(fc.integer({ min: 1, max: 1200 }), { minLength: 1, maxLength: 6 }),
        async (lots, wants) => {
          const shelf = [
            onShelf(thread, ...lots.map((amount, i) => lot('thread item', `lot ${i}`, amount, amount, 100))),
          ];
          const entries = wants.map((amountPerCoat, index) => ({
            plan: plan({
              id: `plan ${index}`,
              pieces: [],
              slots: [slot('thread', 'thread', { amountPerCoat })],
            }),
            coatCount: null,
          }));
          const done = await season(
            { entries, shelf, offers: [], suppliers: [] },
            layHere,
            solveHere,
            unwatched,
          );
          const used = new Map<string, number>();
          for (const { estimate } of done) {
            for (const use of estimate.cover.flatMap(({ uses }) => uses)) {
              used.set(use.lotId, (used.get(use.lotId) ?? 0) + use.amount);
            }
          }
          for (const [i, amount] of lots.entries()) {
            expect(used.get(`lot ${i}`) ?? 0).toBeLessThanOrEqual(amount);
          }
          const all = lots.reduce((sum, amount) => sum + amount, 0);
          const wanted = wants.reduce((sum, amount) => sum + amount, 0);
          const short = done.flatMap(({ estimate }) =>
            estimate.cover.map(({ shortage }) => shortage?.amount ?? 0),
          );
          // What the stash has is used to the last metre before anything is short.
          expect(short.reduce((sum, amount) => sum + amount, 0)).toBeCloseTo(Math.max(0, wanted - all), 6);
        },
      ),
      { seed: 51 },
    );
  });
});
