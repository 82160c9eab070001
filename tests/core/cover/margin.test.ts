import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import { coverSentences } from '../../../shared-core/cover/cover-words.ts';
import { setAsideStand, usesToSetAside } from '../../../shared-core/cover/set-aside.ts';
import { estimate, type FlowSources } from '../../../shared-core/flow/estimate.ts';
import { proposedCutting, wholeBatch } from '../../../shared-core/flow/next-cutting.ts';
import type { CoatPlan, Margin } from '../../../shared-core/plan/model/coat-plan.ts';
import { marginOfLength, setMargin } from '../../../shared-core/plan/model/margin.ts';
import type { LotOnShelf } from '../../../shared-core/stash/stash.ts';
import {
  clothLot,
  item,
  layHere,
  offer,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../../fixtures/small-workshop.ts';

const taffeta = item('cloth', 'shell item', { widthMm: 1400 });
/** Three panels below one another: 2100 mm of cloth. */
const panels = (margin?: Margin): CoatPlan =>
  plan({
    slots: [slot('shell', 'cloth', margin ? { margin } : {})],
    pieces: [piece('panel', rectangle(700, 1300), { cutCount: 3 })],
  });
const byTenth = offer(
  'shell item',
  'by tenth',
  { kind: 'by length', stepMm: 100, widthMm: 1400, leastMm: 0 },
  190,
);

async function road(coat: CoatPlan, ...lots: LotOnShelf[]) {
  const sources = { plan: coat, shelf: [onShelf(taffeta, ...lots)], offers: [byTenth], suppliers: [] };
  const result = await estimate(sources, layHere, solveHere);
  return { ...result, shell: result.cover[0]!, shelf: sources.shelf };
}
/** A lay ends within a hair of its panels. */
const mm = (value: number) => expect.closeTo(value, 2) as unknown as number;
const fifteen: Margin = { kind: 'share', ratio: 0.15 };

describe('a margin for safety', () => {
  it('is held back of the length that is cut, beside what is cut, and costs nothing', async () => {
    const roll = clothLot('shell item', 'autumn', 1400, [3000], 6_000);
    const without = await road(panels(), roll);
    const { shell, cost } = await road(panels(fifteen), roll);
    expect(shell).toMatchObject({ state: 'covered', uses: [{ amount: mm(2100), marginAmount: mm(315) }] });
    expect(cost.batchMinor).toBe(without.cost.batchMinor);
  });

  it('is set aside with what is cut', async () => {
    const { cover } = await road(panels(fifteen), clothLot('shell item', 'autumn', 1400, [3000], 6_000));
    const aside = usesToSetAside(cover);
    expect(aside).toEqual([{ lotId: 'autumn', lengthId: 'autumn length 1', amount: mm(2415) }]);
    expect(setAsideStand(aside, cover).state).toBe('fits');
    expect(setAsideStand([{ ...aside[0]!, amount: 2100 }], cover).state).toBe('changed');
  });

  it('passes over a roll that holds the lay but not the margin', async () => {
    const { shell } = await road(
      panels(fifteen),
      clothLot('shell item', 'short', 1400, [2200], 4_000),
      clothLot('shell item', 'long', 1400, [2500], 5_000),
    );
    expect(shell.uses).toMatchObject([{ lotId: 'long', amount: mm(2100), marginAmount: mm(315) }]);
  });

  it('is bought where every piece has room but not the margin', async () => {
    const { shell, toBuy, shelf, cost } = await road(
      panels({ kind: 'length', lengthMm: 400 }),
      clothLot('shell item', 'autumn', 1400, [2250], 4_500),
    );
    expect(shell).toMatchObject({
      state: 'short',
      uses: [{ amount: mm(2100), marginAmount: mm(150) }],
      shortage: { amount: 0, marginAmount: mm(250), missingPieceCount: 0 },
    });
    expect(toBuy.lines).toMatchObject([{ unitCount: 3, usedAmount: 0, priceMinor: 570 }]);
    expect(cost.batchMinor).toBe(4_200);
    expect(coverSentences(shell, { plan: panels(), shelf, system: 'metric' })[0]).toContain(
      'every piece has room, but not the margin for safety',
    );
  });

  it('is counted once: with the length off the roll, whatever shrinkage made of it', async () => {
    const shrinking = item('cloth', 'shell item', {
      widthMm: 1400,
      shrinkageAlongRatio: 0.125,
      shrinkageAcrossRatio: 0,
    });
    const sources = { plan: panels(fifteen), shelf: [onShelf(shrinking)], offers: [byTenth], suppliers: [] };
    const { lays, toBuy } = await estimate(sources, layHere, solveHere);
    // Laid washed, 700 for each panel: 2100 / 0.875 = 2400 off the roll; 15 % of that with it are 2760.
    expect(lays[0]?.result.usedLengthMm).toEqual([mm(2100)]);
    expect(toBuy.lines).toMatchObject([{ unitCount: 28, usedAmount: mm(2400) }]);
  });

  it('of sheets is a rest that the lay leaves', async () => {
    const batting = item('batting', 'batting item', { widthMm: 1400 });
    const sheet = offer('batting item', 'sheet', { kind: 'sheet', widthMm: 1400, lengthMm: 2200 }, 1_500);
    const coat = (margin: Margin) =>
      plan({
        slots: [slot('batting', 'batting', { margin, isQuilted: false })],
        pieces: [
          piece('panel', rectangle(700, 1300), {
            cutCount: 3,
            turns: 'one way',
            cutFrom: [{ slotId: 'batting', plyCount: 1 }],
          }),
        ],
      });
    const sheets = async (lengthMm: number) => {
      const sources = {
        plan: coat({ kind: 'length', lengthMm }),
        shelf: [onShelf(batting)],
        offers: [sheet],
        suppliers: [],
      };
      return (await estimate(sources, layHere, solveHere)).toBuy.lines[0]?.unitCount;
    };
    expect([await sheets(90), await sheets(400)]).toEqual([1, 2]);
  });

  it('of sheets costs the coat nothing: the sheet that is bought for it is left over', async () => {
    const batting = item('batting', 'batting item', { widthMm: 1400 });
    const sheet = offer('batting item', 'sheet', { kind: 'sheet', widthMm: 1400, lengthMm: 2200 }, 1_500);
    const costMinor = async (lengthMm: number) => {
      const coat = plan({
        slots: [slot('batting', 'batting', { margin: { kind: 'length', lengthMm }, isQuilted: false })],
        pieces: [
          piece('panel', rectangle(700, 1300), {
            cutCount: 3,
            turns: 'one way',
            cutFrom: [{ slotId: 'batting', plyCount: 1 }],
          }),
        ],
      });
      const sources = { plan: coat, shelf: [onShelf(batting)], offers: [sheet], suppliers: [] };
      const { toBuy, cost } = await estimate(sources, layHere, solveHere);
      return [toBuy.payMinor, cost.batchMinor, toBuy.lines[0]?.usedAmount];
    };
    expect(await costMinor(90)).toEqual([1_500, 1_500, 2_200]);
    expect(await costMinor(400)).toEqual([3_000, 1_500, 2_200]);
  });

  it('of one slot does not charge the other that is bought with it', async () => {
    const coat = (margin?: Margin) =>
      plan({
        slots: [
          slot('shell', 'cloth', margin ? { margin } : {}),
          slot('facing', 'cloth', { itemId: 'shell item' }),
        ],
        pieces: [
          piece('panel', rectangle(700, 1300), { cutCount: 3 }),
          piece('strip', rectangle(600, 1300), { cutFrom: [{ slotId: 'facing', plyCount: 1 }] }),
        ],
      });
    const costs = async (margin?: Margin) => {
      const sources = { plan: coat(margin), shelf: [onShelf(taffeta)], offers: [byTenth], suppliers: [] };
      return (await estimate(sources, layHere, solveHere)).cost.lines.map(({ costMinor }) => costMinor);
    };
    expect(await costs({ kind: 'length', lengthMm: 900 })).toEqual(await costs());
  });

  it('asks of a substitute that it holds the margin too', async () => {
    const cloth = (id: string) => item('cloth', id, { widthMm: 1300, arealMassGPerM2: 60 });
    const substitutes = async (margin: Margin, lengthMm: number) => {
      const shelf = [
        onShelf(cloth('shell item')),
        onShelf(cloth('poplin'), clothLot('poplin', 'spring', 1300, [lengthMm], 900)),
      ];
      const sources = { plan: panels(margin), shelf, offers: [], suppliers: [] };
      return (await estimate(sources, layHere, solveHere)).cover[0]?.substitutes;
    };
    // Three panels of 700 x 1300 mm fill 2100 mm.
    const short: Margin = { kind: 'length', lengthMm: 400 };
    expect([await substitutes(short, 2499), await substitutes(short, 2501)]).toEqual([[], ['poplin']]);
    expect([await substitutes(fifteen, 2414), await substitutes(fifteen, 2416)]).toEqual([[], ['poplin']]);
  });

  it('is neither proposed to be cut nor still to be cut', async () => {
    const shelf = [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [3000], 6_000))];
    const sources = { shelf, offers: [byTenth], suppliers: [] };
    // The need beside a lay says what margin was asked for; what is cut does not hang on it.
    const propose = async (coat: CoatPlan) =>
      (await proposedCutting({ ...sources, plan: coat }, wholeBatch(coat), layHere)).map(
        ({ laid, ...each }) => ({ ...each, placements: laid?.lay.result.placements }),
      );
    const coat = panels({ kind: 'length', lengthMm: 400 });
    const proposed = await propose(coat);
    expect(proposed).toEqual(await propose(panels()));
    const cuttings = [{ slots: proposed.map((each) => ({ ...each, lines: [] })), coats: [] }];
    const after = await estimate(
      { ...sources, plan: coat, cuttings: cuttings as unknown as FlowSources['cuttings'] & {} },
      layHere,
      solveHere,
    );
    expect(after.requirement).toMatchObject([{ shapes: [], areaMm2: 0 }]);
    expect(after.cover).toMatchObject([{ state: 'covered', uses: [], shortage: null }]);
    expect(after.finished).toEqual((await road(panels(), ...shelf[0]!.lots)).finished);
  });

  it('alone missing does not call the cutting short', async () => {
    const coat = panels({ kind: 'length', lengthMm: 400 });
    const shelf = [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [2250], 4_500))];
    const sources = { plan: coat, shelf, offers: [byTenth], suppliers: [] };
    expect(await proposedCutting(sources, wholeBatch(coat), layHere)).toMatchObject([{ isShort: false }]);
  });

  it('falls away with the last piece that is cut', () => {
    expect(marginOfLength({ kind: 'length', lengthMm: 400 }, 0)).toBe(0);
    expect(marginOfLength({ kind: 'length', lengthMm: 400 }, 700)).toBe(400);
    expect(marginOfLength({ kind: 'share', ratio: 0.2 }, 700)).toBe(140);
  });
});

describe('giving a margin', () => {
  const coat = plan({ slots: [slot('shell', 'cloth'), slot('snaps', 'fastening')] });
  it('says so, and 0 takes it away', () => {
    const given = setMargin(coat, 'shell', { kind: 'length', lengthMm: 200 });
    expect(given).toMatchObject({ ok: true, value: { said: 'A margin of 200 mm for the shell.' } });
    if (!given.ok) return;
    expect(given.value.plan.slots[0]?.margin).toEqual({ kind: 'length', lengthMm: 200 });
    const taken = setMargin(given.value.plan, 'shell', { kind: 'share', ratio: 0 });
    expect(taken).toMatchObject({ ok: true, value: { plan: coat, said: 'No margin for the shell.' } });
  });
  it.each<[string, Margin, string]>([
    ['snaps', { kind: 'length', lengthMm: 50 }, 'is a length'],
    ['shell', { kind: 'share', ratio: 1.2 }, 'is not from 0 to as much again'],
    ['shell', { kind: 'length', lengthMm: -3 }, 'is not from 0 to as much again'],
  ])('that cannot be is refused: %s %o', (slotId, margin, what) => {
    const refusal = setMargin(coat, slotId, margin);
    expect(refusal.ok ? '' : refusal.problems[0]?.what).toContain(what);
  });
});
