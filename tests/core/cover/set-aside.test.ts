import { describe, expect, test } from 'vitest';
import { setAsideSentence, setAsideStand, usesToSetAside } from '../../../shared-core/cover/set-aside.ts';
import { stillEnough, stillEnoughSentence } from '../../../shared-core/cover/still-enough.ts';
import { cuttingProposal } from '../../../shared-core/cover/cutting-proposal.ts';
import { estimate, type FlowSources } from '../../../shared-core/flow/estimate.ts';
import { proposedCutting } from '../../../shared-core/flow/next-cutting.ts';
import type { Cutting } from '../../../shared-core/stash/cutting.ts';
import type { LotOnShelf } from '../../../shared-core/stash/stash.ts';
import { clothLot, item, layHere, onShelf, piece, plan, rectangle } from '../../fixtures/small-workshop.ts';

const cloth = item('cloth', 'shell item', { widthMm: 1000 });

/** Backs of 700 x 1000: one after the other on cloth 1 m wide. */
function sources(
  coatCount: number,
  lots: readonly LotOnShelf[],
  more: Partial<FlowSources> = {},
): FlowSources {
  return {
    plan: plan({ coatCount, pieces: [piece('back', rectangle(700, 1000))] }),
    shelf: [onShelf(cloth, ...lots)],
    offers: [],
    suppliers: [],
    ...more,
  };
}

const noProgramme = () => {
  throw new Error('nothing is bought here');
};

async function estimated(given: FlowSources) {
  return estimate(given, layHere, noProgramme as never);
}

const words = (given: FlowSources) => ({ plan: given.plan, shelf: given.shelf, system: 'metric' }) as const;

/** A cutting of the first backs, from the lot. */
function cutFrom(lot: LotOnShelf, count: number): Cutting {
  const met = {
    kind: 'shapes',
    shapes: [
      {
        pieceId: 'back',
        size: '40',
        name: 'back',
        ring: [0, 0, 700, 0, 700, 1000, 0, 1000],
        count,
        mirroredCount: 0,
      },
    ],
  } as const;
  const line = {
    itemId: cloth.id,
    itemName: '',
    lotId: lot.id,
    lengthId: lot.lengths[0]?.id ?? null,
    dyeLot: lot.dyeLot,
    amount: 700 * count,
    kept: [],
    usedMilli: 0,
    costMinor: 0,
    area: null,
  };
  const slot = { slotId: 'shell', slotName: 'shell', kind: 'cloth' } as const;
  return {
    id: 'first',
    planId: 'plan',
    revision: 1,
    at: '2026-11-25T10:00:00.000Z',
    coats: [{ size: '40', coatCount: count }],
    note: '',
    slots: [{ ...slot, met, lines: [line] }],
    undoes: null,
    undoneBy: null,
    movements: [],
  };
}

describe('setting aside', () => {
  test('takes what the cover takes, and says so until the plan takes more', async () => {
    const given = sources(3, [clothLot('shell item', 'P', 1000, [5000], 9000)]);
    const { cover: covers } = await estimated(given);
    const uses = usesToSetAside(covers);
    expect(uses).toEqual([{ lotId: 'P', lengthId: 'P length 1', amount: expect.closeTo(2100, 2) }]);
    expect(setAsideStand([], covers).state).toBe('nothing');
    expect(setAsideStand(uses, covers)).toEqual({ state: 'fits', missing: [] });

    const more = sources(4, [clothLot('shell item', 'P', 1000, [5000], 9000)]);
    const stand = setAsideStand(uses, (await estimated(more)).cover);
    expect(stand).toEqual({
      state: 'changed',
      missing: [{ slotId: 'shell', amount: expect.closeTo(700, 2) }],
    });
    expect(setAsideSentence(stand, more.plan, words(more))).toBe(
      'What was set aside no longer fits the plan. Not set aside yet: 0.7 m for the shell.',
    );
  });
});

describe('still enough', () => {
  const lotP = clothLot('shell item', 'P', 1000, [2900], 9000);
  const lotQ = clothLot('shell item', 'Q', 1000, [6000], 9000);

  async function said(coatCount: number, lots: readonly LotOnShelf[]) {
    const given = sources(coatCount, lots, { cuttings: [cutFrom(lotP, 2)] });
    const found = await estimated(given);
    expect(found.still).toHaveLength(1);
    return stillEnoughSentence(found.still[0]!, words(given));
  }

  test('when what is left of the dye lot carries the coats that are left', async () => {
    expect(await said(6, [lotP])).toBe(
      'What is left is still enough: 2.8 m to go, 2.9 m left of dye lot P, from which the shell was begun.',
    );
  });

  test('no longer, when a coat more must come from another lot', async () => {
    expect(await said(7, [lotP, lotQ])).toMatch(
      /^What is left of dye lot P, from which the shell was begun, is no longer enough: [\d.]+ m must come from another lot\./,
    );
  });

  test('no longer, when the stash has not enough at all', async () => {
    expect(await said(7, [lotP])).toBe(
      'What is left is no longer enough: 3.5 m to go, 2.9 m left of dye lot P, from which the shell was begun. Ask for that dye lot when you buy.',
    );
  });

  test('all is cut', async () => expect(await said(2, [lotP])).toBe('All of the shell is cut.'));

  test('nothing is said before cutting has begun', () => {
    expect(stillEnough([], [], [], [])).toEqual([]);
  });

  test('the rest is cut from the lot it was begun from, even where another is fuller', async () => {
    const given = sources(4, [lotP, lotQ], { cuttings: [cutFrom(lotP, 2)] });
    expect((await estimated(given)).cover[0]?.uses.map((use) => use.lotId)).toEqual(['P']);
  });
});

describe('a proposed cutting', () => {
  test('names the pieces, the length to the millimetre and the rest beside them', async () => {
    const given = sources(2, [clothLot('shell item', 'P', 1000, [5000], 9000)]);
    const narrow = { ...given, plan: plan({ coatCount: 2, pieces: [piece('back', rectangle(700.4, 600))] }) };
    const found = await estimated(narrow);
    const [slot] = cuttingProposal(narrow.plan, found.requirement, found.cover);
    expect(slot).toMatchObject({
      slotId: 'shell',
      isShort: false,
      met: { kind: 'shapes', shapes: [{ count: 2 }] },
    });
    expect(slot?.lines).toMatchObject([
      { lotId: 'P', amount: 1401, free: 5000, pieceAreaMm2: 2 * 700.4 * 600 },
    ]);
    expect(slot?.lines[0]?.rests).toEqual([{ x: 0, y: 600, widthX: 1400, widthY: 400 }]);
  });

  test('for some coats counts those cut before', async () => {
    const lot = clothLot('shell item', 'P', 1000, [5000], 9000);
    const given = sources(6, [lot], { cuttings: [cutFrom(lot, 2)] });
    const [slot] = await proposedCutting(given, [{ size: '40', coatCount: 5 }], layHere);
    expect(slot?.met).toMatchObject({ shapes: [{ count: 3 }] });
    expect(await proposedCutting(given, [{ size: '40', coatCount: 2 }], layHere)).toEqual([]);
  });
});
