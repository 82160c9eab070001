import { describe, expect, it } from 'vitest';
import type { SellingUnit } from '../../../shared-core/stash/offer.ts';
import { item, offer } from '../../fixtures/small-workshop.ts';
import { bought, counts, cutGap } from './small-gaps.ts';

describe('sheets and widths, by real lays', () => {
  const batting = item('batting', 'batting item', { widthMm: 1500 });
  const throwSheet = offer('batting item', 'throw', { kind: 'sheet', widthMm: 1500, lengthMm: 2000 }, 1_290);
  const queenSheet = offer('batting item', 'queen', { kind: 'sheet', widthMm: 2300, lengthMm: 2500 }, 2_270);

  it('one queen sheet instead of two throw sheets', async () => {
    const { cheapest, whys } = await bought(
      [
        cutGap('batting item', [
          [1400, 1000, 2],
          [1200, 900, 2],
        ]),
      ],
      [throwSheet, queenSheet],
      [],
      [batting],
    );
    expect(counts(cheapest)).toEqual({ queen: 1 });
    expect(whys).toMatchObject([
      {
        kind: 'instead',
        bought: [{ unitCount: 1 }],
        instead: [{ unitCount: 2 }],
        cheaperMinor: 310,
        isLeftArea: true,
        left: 2300 * 2500 - 2 * 1400 * 1000 - 2 * 1200 * 900,
      },
    ]);
  });

  it('two sizes of sheet together where one large piece needs the large one', async () => {
    const { cheapest } = await bought(
      [
        cutGap('batting item', [
          [2400, 2200, 1],
          [1900, 1400, 1],
        ]),
      ],
      [throwSheet, queenSheet],
      [],
      [batting],
    );
    expect(counts(cheapest)).toEqual({ throw: 1, queen: 1 });
    expect(cheapest.totalMinor).toBe(3_560);
  });

  it('a sheet that is there for the margin alone is not used up, whatever its size', async () => {
    const panels = cutGap('batting item', [[1200, 2200, 2]]);
    const strip = offer('batting item', 'strip', { kind: 'sheet', widthMm: 2300, lengthMm: 400 }, 310);
    if (panels.needs.kind !== 'cut') throw new Error('not cut');
    const gap = { ...panels, needs: { ...panels.needs, marginMm: 480 } };
    for (const offers of [
      [queenSheet, strip],
      [strip, queenSheet],
    ]) {
      const { cheapest } = await bought([gap], offers, [], [batting]);
      // The panels leave 100 mm of the queen sheet: 380 more are wanted, of which no piece is cut.
      expect(counts(cheapest)).toEqual({ queen: 1, strip: 1 });
      const used = cheapest.buys.map((buy) => [buy.offer.id, buy.boughtAmount, buy.usedAmount]);
      expect(new Set(used)).toEqual(
        new Set([
          ['queen', 2500, 2500],
          ['strip', 400, 0],
        ]),
      );
    }
  });

  it('one sheet is cut for the gaps of two plans', async () => {
    const [first, second] = ['jacket', 'coat'].map((planId) =>
      cutGap('batting item', [[1400, 900, 1]], { id: planId, planId }),
    );
    const { cheapest } = await bought([first!, second!], [throwSheet], [], [batting]);
    expect(counts(cheapest)).toEqual({ throw: 1 });
    expect(cheapest.buys[0]?.gaps.map(({ planId }) => planId)).toEqual(['jacket', 'coat']);
  });

  it('each width gets its own lay', async () => {
    const cloth = item('cloth', 'shell item', { widthMm: 1400 });
    const byLength = (widthMm: number): SellingUnit => ({
      kind: 'by length',
      stepMm: 100,
      widthMm,
      leastMm: 0,
    });
    const { cheapest } = await bought(
      [cutGap('shell item', [[700, 1300, 2]], { isSeen: true })],
      [
        offer('shell item', 'narrow', byLength(1400), 190),
        offer('shell item', 'wide', byLength(2650), 300),
        offer('shell item', 'too narrow', byLength(600), 10),
      ],
      [],
      [cloth],
    );
    // Turned, two fill 1.4 m from selvage to selvage: 1.3 m at 1.90 are 24.70; unturned 0.7 m at 3.00 are 21.00.
    expect(counts(cheapest)).toEqual({ wide: 7 });
    expect(cheapest.buys[0]?.alternatives.map(({ offer: of, unitCount }) => [of.id, unitCount])).toEqual([
      ['narrow', 13],
    ]);
  });
});
