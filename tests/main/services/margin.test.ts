import { describe, expect, test } from 'vitest';
import { usesToSetAside, setAsideStand } from '../../../shared-core/cover/set-aside.ts';
import { estimate } from '../../../shared-core/flow/estimate.ts';
import { proposedCutting } from '../../../shared-core/flow/next-cutting.ts';
import { emptySlot } from '../../../shared-core/plan/model/coat-plan.ts';
import { solveHere } from '../../../main/services/threads/solver.ts';
import { layHere } from '../../fixtures/small-workshop.ts';
import { openAsking, receivedFill } from '../asking.ts';

/** Six coats of 70 g of fill each, a quarter of it as margin, from a sack of 640 g. */
async function workshop() {
  const asking = openAsking();
  const fill = await receivedFill(asking, 640);
  const slot = { ...emptySlot('fill', 'fill', 'fill'), itemId: fill.itemId, amountPerCoat: 70 };
  const plan = {
    id: 'new',
    name: 'Fen coat',
    size: 'EU 42',
    coatCount: 6,
    slots: [{ ...slot, margin: { kind: 'share', ratio: 0.25 } as const }],
    pieces: [],
    seams: [],
    quilting: null,
    clearanceMm: 2,
    threadWastageRatio: 0.15,
    sewingMinutesPerCoat: 540,
    notes: '',
  };
  const { planId } = await asking.get('savePlan', { plan, basedOn: null, said: '' });
  const road = async () => {
    const input = await asking.get('flowInput', { planId });
    return { input, ...(await estimate(input, layHere, solveHere)) };
  };
  const cut = async (coatCount: number, releasesRest: boolean) => {
    const { input } = await road();
    const coats = [{ size: 'EU 42', coatCount }];
    const proposed = await proposedCutting(input, coats, layHere);
    const slots = proposed.map(({ slotId, met, lines }) => ({
      slotId,
      met,
      lines: lines.map(({ lotId, lengthId, amount, pieceAreaMm2 }) => ({
        lotId,
        lengthId,
        amount,
        pieceAreaMm2,
        kept: [],
      })),
    }));
    await asking.get('recordCutting', {
      planId,
      basedOn: input.revision,
      coats,
      note: '',
      releasesRest,
      slots,
    });
  };
  const sack = async () => {
    const lot = (await asking.get('readItem', { itemId: fill.itemId })).shelf.lots[0];
    return [lot?.onHand, lot?.reserved];
  };
  return { asking, planId, road, cut, sack };
}

describe('a margin for safety of the fill', () => {
  test('is set aside, is not cut, and is free again when the last coat is cut', async () => {
    const { asking, planId, road, cut, sack } = await workshop();
    await asking.get('setAside', { planId, uses: usesToSetAside((await road()).cover) });
    expect(await sack()).toEqual([640, 420 + 105]);

    await cut(2, false);
    expect(await sack()).toEqual([640 - 140, 525 - 140]);
    const partly = await road();
    expect(partly.requirement).toMatchObject([{ amount: 280 }]);
    expect(partly.cover[0]?.uses).toMatchObject([{ amount: 280, marginAmount: 70 }]);
    expect(setAsideStand(partly.input.setAside, partly.cover).state).toBe('fits');

    await cut(6, true);
    expect(await sack()).toEqual([640 - 420, 0]);
    const { requirement, cover, still, cost } = await road();
    expect(requirement).toMatchObject([{ amount: 0 }]);
    expect(cover).toMatchObject([{ state: 'covered', uses: [], shortage: null }]);
    expect(still).toMatchObject([{ state: 'all cut', needed: 0 }]);
    expect(cost.lines[0]?.parts).toMatchObject([{ isCut: true, amount: 420 }]);
  });
});
