import { describe, expect, test } from 'vitest';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { emptySlot } from '../../../../shared-core/plan/model/coat-plan.ts';
import { newPlan } from '../../../../shared-core/plan/model/new-plan.ts';
import { openAsking, receivedCloth, receivedFill } from '../../asking.ts';

const ring = [0, 0, 700, 0, 700, 500, 0, 500];

/** A plan whose shell and facing come from one cloth, and its fill. */
async function workshop() {
  const asking = openAsking();
  const cloth = await receivedCloth(asking);
  const fill = await receivedFill(asking, 640);
  const plan = {
    ...newPlan('any', 'Fenwalk', '40'),
    coatCount: 6,
    quilting: null,
    slots: [
      { ...emptySlot('shell', 'shell', 'cloth'), itemId: cloth.itemId },
      { ...emptySlot('facing', 'facing', 'cloth'), itemId: cloth.itemId },
      { ...emptySlot('fill', 'fill', 'fill'), itemId: fill.itemId },
    ],
  };
  const { planId } = await asking.get('savePlan', { plan, basedOn: null, said: '' });
  const cut = (coatCount: number, shellMm: number, facingMm: number, fillG: number) => {
    const shapes = {
      kind: 'shapes',
      shapes: [{ pieceId: 'back', size: '40', name: 'Back', ring, count: 1, mirroredCount: 0 }],
    };
    const slots = [
      { slotId: 'shell', met: shapes, amount: shellMm, area: 900_000, place: cloth },
      { slotId: 'facing', met: shapes, amount: facingMm, area: 90_000, place: cloth },
    ].map(({ slotId, met, amount, area }) => ({
      slotId,
      met,
      lines: [{ lotId: cloth.lotId, lengthId: cloth.cutId, amount, pieceAreaMm2: area, kept: [] }],
    }));
    const filled = {
      slotId: 'fill',
      met: { kind: 'amount', amount: fillG },
      lines: [{ lotId: fill.lotId, lengthId: null, amount: fillG, pieceAreaMm2: null, kept: [] }],
    };
    return asking.get('recordCutting', {
      planId,
      basedOn: 1,
      coats: [{ size: '40', coatCount }],
      note: '',
      releasesRest: false,
      slots: [...slots, filled],
    } as CallInput<'recordCutting'>);
  };
  return { asking, planId, cloth, fill, cut };
}

describe('what the coats really took', () => {
  test('is by slot and lot what the ledger lost, to the cent, over several cuttings', async () => {
    const { asking, planId, cloth, fill, cut } = await workshop();
    // The lot length of the first cutting is moved by what it leaves: the second goes on the longest that is there.
    const first = await cut(1, 1017, 211, 73);
    const again = await asking.get('readItem', { itemId: cloth.itemId });
    const longest = again.shelf.lots[0]?.lengths.toSorted((a, b) => b.onHandMm - a.onHandMm)[0];
    cloth.cutId = longest?.id ?? '';
    await asking.get('writeOff', { lotId: fill.lotId, lengthId: null, amount: 3.5, reason: 'moths' });
    const second = await cut(2, 2033, 407, 151);

    const { sheet, before } = await asking.get('readCutSheet', { planId });
    const account = await asking.get('readAccount', {});
    expect(sheet.batchMinor).toBe(account.total.consumedMinor);
    expect(sheet.slots.map(({ slotName, usedMilli }) => [slotName, usedMilli])).toEqual([
      ['shell', 3_050_000],
      ['facing', 618_000],
      ['fill', 224_000],
    ]);
    // 3668 of 8200.5 mm for 123.45; 224 of 640 g for 123.45.
    const [shell, facing, down] = sheet.slots.map(({ costMinor }) => costMinor);
    expect((shell ?? 0) + (facing ?? 0)).toBe(5522);
    expect(down).toBeGreaterThan(4319);
    expect(down).toBeLessThan(4323);
    for (const slot of sheet.slots) {
      expect(slot.lots.reduce((sum, part) => sum + part.costMinor, 0)).toBe(slot.costMinor);
      expect(slot.wasteMinor).toBeLessThan(slot.costMinor);
    }
    expect(sheet.cuttings.map(({ cuttingId, coatCount }) => [cuttingId, coatCount])).toEqual([
      [first.id, 1],
      [second.id, 2],
    ]);
    expect(sheet.cuttings.reduce((sum, { costMinor }) => sum + costMinor, 0)).toBe(sheet.batchMinor);
    expect(sheet.perCoatMinor).toHaveLength(3);
    expect(sheet.perCoatMinor.reduce((sum, each) => sum + each, 0)).toBe(sheet.batchMinor);
    // The estimate is made again for the three coats on the shelf of the day before.
    expect(before?.plan.coatCount).toBe(3);
    const shelf = new Map(before?.shelf.map(({ item, lots }) => [item.id, lots[0]]));
    expect(shelf.get(cloth.itemId)).toMatchObject({ onHand: 8200.5 });
    expect(shelf.get(cloth.itemId)?.lengths.map(({ onHandMm }) => onHandMm)).toEqual([7310.5, 890]);
    expect(shelf.get(fill.itemId)).toMatchObject({ onHand: 640 });
  });

  test('a cutting that was taken back is no cost, and what was not cut has none', async () => {
    const { asking, planId, cut } = await workshop();
    const none = await asking.get('readCutSheet', { planId });
    expect(none).toMatchObject({ sheet: { slots: [], batchMinor: 0, coatCount: 0 }, before: null });
    const { id } = await cut(2, 1503, 97, 61);
    expect((await asking.get('readCutSheet', { planId })).sheet.coatCount).toBe(2);
    await asking.get('undoCutting', { cuttingId: id });
    expect(await asking.get('readCutSheet', { planId })).toEqual(none);
  });

  test('a plan that is not there is said to be so', async () => {
    const [problem] = await openAsking().refusal('readCutSheet', { planId: 'nowhere' });
    expect(problem?.where).toBe('The plan');
  });
});
