import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveHere } from '../../../main/services/threads/solver.ts';
import { estimate, type Estimate, type FlowSources } from '../../../shared-core/flow/estimate.ts';
import { estimateChange } from '../../../shared-core/flow/estimate-change.ts';
import type { SlotCover } from '../../../shared-core/cover/slot-cover.ts';
import { type RunLay, totalUsedMm } from '../../../shared-core/lay/plan-lay.ts';
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

const taffeta = item('cloth', 'shell item', { widthMm: 1400, arealMassGPerM2: 54 });

/** Three panels of 700 x 1300 on 1400 mm cloth: nothing fits beside them, so the lay is 2100 mm long. */
const threePanels = plan({ pieces: [piece('panel', rectangle(700, 1300), { cutCount: 3 })] });

/** Lays are exact to some thousandths of a millimetre; a maker reads tenths. */
const tenths = (mm: number | null | undefined) => (mm == null ? mm : Math.round(mm * 10) / 10);

async function coverOf(sources: Partial<FlowSources>, slotId = 'shell'): Promise<SlotCover> {
  const result = await estimate(
    { plan: threePanels, shelf: [], offers: [], suppliers: [], ...sources },
    layHere,
    solveHere,
  );
  return result.cover.find((slotCover) => slotCover.slotId === slotId)!;
}

describe('which lengths cover the coat', () => {
  it('takes the shortest roll that holds the whole lay, and leaves the long one', async () => {
    const shelf = [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [5000, 2300, 9000], 9000))];
    const cover = await coverOf({ shelf });
    expect(cover.state).toBe('covered');
    expect(cover.uses.map((use) => ({ ...use, amount: tenths(use.amount) }))).toEqual([
      { lotId: 'autumn', lengthId: 'autumn length 2', amount: 2100, free: 2300, layLength: 0 },
    ]);
  });

  it('says by how much the cloth is short and how many pieces are missing', async () => {
    const shelf = [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [1510], 3000))];
    const cover = await coverOf({ shelf });
    expect(cover.state).toBe('short');
    expect(cover.uses.map((use) => tenths(use.amount))).toEqual([1400]);
    expect({ ...cover.shortage, amount: tenths(cover.shortage?.amount) }).toEqual({
      amount: 700,
      widthMm: 1400,
      wantedLengthMm: null,
      missingPieceCount: 1,
    });
  });

  it('asks for just what the coat needs where the shelf is empty, and looks for no second lay', async () => {
    const asked: string[] = [];
    const runLay: RunLay = async (job, what) => {
      asked.push(what);
      return layHere(job, what);
    };
    const sources = { plan: threePanels, shelf: [onShelf(taffeta)], offers: [], suppliers: [] };
    const { lays, cover } = await estimate(sources, runLay, solveHere);
    expect(asked).toHaveLength(1);
    expect(cover[0]!.shortage!.amount).toBe(totalUsedMm(lays[0]!.result));
    expect(cover[0]!.lay!.result).toBe(lays[0]!.result);
  });

  it('never asks for more cloth beside a scrap than without it, however the lays come out', async () => {
    const shelf = [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [750], 3000))];
    // A search that finds nothing good once the scrap is in the lay: the pieces end up far along the cloth to buy.
    const runLay: RunLay = async (job, what) => {
      const result = await layHere(job, what);
      if (job.lengths.length === 1) return result;
      return { ...result, usedLengthMm: [0, 5000] };
    };
    const sources = { plan: threePanels, shelf, offers: [], suppliers: [] };
    const { cover } = await estimate(sources, runLay, solveHere);
    expect(tenths(cover[0]!.shortage!.amount)).toBe(2100);
    expect(cover[0]!.uses).toEqual([]);
  });

  it('does not touch what another plan has reserved', async () => {
    const shelf = [
      onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [2350], 3000, { reservedMm: 900 })),
    ];
    expect(tenths((await coverOf({ shelf })).shortage?.amount)).toBe(700);
  });

  it('asks for care when a seen cloth must come from two dye lots', async () => {
    const shelf = [
      onShelf(
        taffeta,
        clothLot('shell item', 'autumn', 1400, [1600], 3000, { dyeLot: 'A7' }),
        clothLot('shell item', 'winter', 1400, [1100], 3000, { dyeLot: 'B2' }),
      ),
    ];
    const cover = await coverOf({ shelf });
    expect(cover.state).toBe('covered with care');
    expect(cover.warnings[0]).toContain('2 dye lots');
  });

  it('cuts what nobody sees from remnants first', async () => {
    const pocketing = item('cloth', 'pocketing item', { widthMm: 1100 });
    const bags = plan({
      slots: [slot('pocketing', 'cloth', { isSeen: false })],
      pieces: [
        piece('pocket bag', rectangle(320, 240), {
          cutCount: 4,
          cutFrom: [{ slotId: 'pocketing', plyCount: 1 }],
        }),
      ],
    });
    const shelf = [
      onShelf(
        pocketing,
        clothLot('pocketing item', 'roll', 1100, [6000], 4000),
        clothLot('pocketing item', 'scraps', 1100, [350], 400, { form: 'remnant' }),
      ),
    ];
    const cover = await coverOf({ plan: bags, shelf }, 'pocketing');
    expect(cover.state).toBe('covered');
    expect(cover.uses.map((use) => use.lengthId)).toEqual(['scraps length 1']);
    expect(cover.remnants).toEqual([
      { lengthId: 'scraps length 1', lengthMm: 350, pieceNames: ['pocket bag'] },
    ]);
  });

  it('lets a second slot have only what the first one left of the same cloth', async () => {
    const two = plan({
      slots: [slot('shell', 'cloth'), slot('facing', 'cloth', { itemId: 'shell item' })],
      pieces: [
        piece('panel', rectangle(700, 1300), { cutCount: 2 }),
        piece('front facing', rectangle(800, 1200), { cutFrom: [{ slotId: 'facing', plyCount: 1 }] }),
      ],
    });
    const shelf = [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [2000], 3000))];
    const result = await estimate({ plan: two, shelf, offers: [], suppliers: [] }, layHere, solveHere);
    expect(result.cover.map((slotCover) => slotCover.state)).toEqual(['covered', 'short']);
    expect(tenths(result.cover[1]?.shortage?.amount)).toBe(800);
  });

  it('does not take a zip that is shorter than the front edge', async () => {
    const zipped = plan({
      slots: [
        slot('zip', 'fastening', { amountPerCoat: 1, alongEdges: [{ pieceId: 'front', edge: 'front' }] }),
      ],
      pieces: [piece('front', rectangle(730, 300), { cutFrom: [] })],
      coatCount: 3,
    });
    const zip = (lengthMm: number) =>
      item('fastening', 'zip item', { form: 'zip', lengthMm, opening: 'separating' });
    const shelfOf = (lengthMm: number) => [onShelf(zip(lengthMm), lot('zip item', 'zips', 5, 5, 2500))];
    expect(
      (await coverOf({ plan: zipped, shelf: shelfOf(650) }, 'zip')).shortage?.wantedLengthMm,
    ).toBeCloseTo(730, 6);
    expect((await coverOf({ plan: zipped, shelf: shelfOf(750) }, 'zip')).state).toBe('covered');
  });

  it('names another cloth of like weight that would cover the slot', async () => {
    const twill = item('cloth', 'spare twill', { widthMm: 1500, arealMassGPerM2: 61 });
    const canvas = item('cloth', 'heavy canvas', { widthMm: 1500, arealMassGPerM2: 260 });
    const shelf = [
      onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [700], 3000)),
      onShelf(twill, clothLot('spare twill', 'spare', 1500, [4000], 3000)),
      onShelf(canvas, clothLot('heavy canvas', 'heavy', 1500, [4000], 3000)),
    ];
    expect((await coverOf({ shelf })).substitutes).toEqual(['spare twill']);
  });

  it('leaves a slot open when no item was chosen for it', async () => {
    const open = plan({ slots: [slot('shell', 'cloth', { itemId: null })] });
    expect((await coverOf({ plan: open })).state).toBe('open');
  });

  it('more cloth on the shelf never makes a shortage worse', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.integer({ min: 100, max: 2500 }),
        fc.integer({ min: 0, max: 2500 }),
        async (onHandMm, moreMm) => {
          const shortWith = async (lengthMm: number) =>
            (
              await coverOf({
                shelf: [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [lengthMm], 3000))],
              })
            ).shortage?.amount ?? 0;
          expect(await shortWith(onHandMm + moreMm)).toBeLessThanOrEqual(await shortWith(onHandMm));
        },
      ),
      { numRuns: 25, seed: 11 },
    );
  });
});

describe('what a change of the plan does', () => {
  const shelf = [onShelf(taffeta, clothLot('shell item', 'autumn', 1400, [2300], 3000))];
  const offers = [
    offer('shell item', 'by metre', { kind: 'by length', stepMm: 100, widthMm: 1400, leastMm: 0 }, 190),
  ];
  const estimated = (panelLengthMm: number): Promise<Estimate> =>
    estimate(
      {
        plan: plan({ pieces: [piece('panel', rectangle(panelLengthMm, 1300), { cutCount: 3 })] }),
        shelf,
        offers,
        suppliers: [],
      },
      layHere,
      solveHere,
    );

  it('lengthening each panel by 90 mm leaves the shell short by a panel', async () => {
    const change = estimateChange(await estimated(700), await estimated(790));
    expect(change.isEnough).toBe(false);
    expect(change.slots).toHaveLength(1);
    expect(change.slots[0]).toMatchObject({ slotId: 'shell', stateBefore: 'covered', stateAfter: 'short' });
    expect(tenths(change.slots[0]?.before)).toBe(2100);
    expect(tenths(change.slots[0]?.after)).toBe(2370);
    // Two panels of 790 fit the 2300; the third is bought, in tenths of a metre.
    expect(change.toBuyMinor).toBe(8 * 190);
  });

  it('shortening them says that what is there is still enough', async () => {
    const change = estimateChange(await estimated(700), await estimated(650));
    expect(change.isEnough).toBe(true);
    expect(tenths(change.slots[0]?.before)).toBe(2100);
    expect(tenths(change.slots[0]?.after)).toBe(1950);
  });

  it('says nothing of slots that need the same', async () => {
    expect(estimateChange(await estimated(700), await estimated(700)).slots).toEqual([]);
  });
});
