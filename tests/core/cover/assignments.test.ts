import { describe, expect, test } from 'vitest';
import { cover } from '../../../shared-core/cover/cover.ts';
import { endlessLength, layJob } from '../../../shared-core/lay/plan-lay.ts';
import type { ShapesNeed } from '../../../shared-core/requirement/need.ts';
import { requirement } from '../../../shared-core/requirement/requirement.ts';
import type { LotOnShelf } from '../../../shared-core/stash/stash.ts';
import {
  clothLot,
  item,
  layHere,
  onShelf,
  piece,
  plan,
  rectangle,
  slot,
} from '../../fixtures/small-workshop.ts';

const cloth = item('cloth', 'shell item', { widthMm: 1000 });

/** Where backs of 700 x 1000, one after the other on cloth 1 m wide, are cut. */
async function uses(coatCount: number, isSeen: boolean, ...lots: readonly LotOnShelf[]) {
  const coat = plan({
    coatCount,
    slots: [slot('shell', 'cloth', { isSeen })],
    pieces: [piece('back', rectangle(700, 1000))],
  });
  const needs = requirement(coat, new Map([['shell', cloth]]));
  const job = layJob(needs[0] as ShapesNeed, [endlessLength('endless', 1000, cloth)], 0, cloth, 1);
  const lays = new Map([['shell', { slotId: 'shell', job, result: await layHere(job, 'shell') }]]);
  const [found] = await cover(
    { plan: coat, needs, lays, shelf: [onShelf(cloth, ...lots)], offers: [] },
    layHere,
  );
  return {
    state: found?.state,
    from: found?.uses.map((use) => [use.lengthId, Math.round(use.amount)]),
    warnings: found?.warnings,
  };
}

const rolls = (lotId: string, lengthsMm: readonly number[], form: 'roll' | 'remnant' = 'roll') =>
  clothLot('shell item', lotId, 1000, lengthsMm, 9000, { form });

describe('which lengths a slot is cut from', () => {
  test('what is seen stays in one dye lot, though a fuller one would mix', async () => {
    // The fuller lot P has pieces that carry one back each; Q carries all four, on two lengths.
    const found = await uses(4, true, rolls('P', [1390, 1390, 1390]), rolls('Q', [1450, 1450]));
    expect(found.state).not.toBe('short');
    expect(found.from?.map(([length]) => length)).toEqual(['Q length 1', 'Q length 2']);
  });

  test('what is hidden goes to the remnants, and the roll stays whole', async () => {
    const found = await uses(2, false, rolls('P', [6000]), rolls('Q', [760, 820], 'remnant'));
    expect(found).toMatchObject({
      from: [
        ['Q length 1', 700],
        ['Q length 2', 700],
      ],
    });
  });

  test('what is seen is not cut from several remnants where one roll carries it', async () => {
    const found = await uses(2, true, rolls('P', [6000]), rolls('Q', [760, 820], 'remnant'));
    expect(found).toMatchObject({ state: 'covered', from: [['P length 1', 1400]] });
  });

  test('of two ways the one is taken that leaves the longer rest', async () => {
    // Lengths of one lot: with the small ones first the long one keeps 1.1 m in one piece.
    const found = await uses(6, true, rolls('P', [3900, 780, 790]));
    expect(found.from).toEqual([
      ['P length 2', 700],
      ['P length 3', 700],
      ['P length 1', 2800],
    ]);
  });

  test('two dye lots are mixed only where no single one carries it, and that is said', async () => {
    const found = await uses(4, true, rolls('P', [1450]), rolls('Q', [2150]));
    expect(found).toMatchObject({ state: 'covered with care' });
    expect(found.warnings?.[0]).toBe('cut from 2 dye lots: compare them in daylight first');
  });
});
