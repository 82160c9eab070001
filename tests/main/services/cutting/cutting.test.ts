import { describe, expect, test } from 'vitest';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import type { Asking } from '../../asking.ts';
import { cutting, savedPlan, workshop } from '../cut-workshop.ts';

async function stand(asking: Asking, itemId: string) {
  const { shelf, movements } = await asking.get('readItem', { itemId });
  const { rows } = await asking.get('listItems', {
    search: '',
    kinds: [],
    sortBy: 'name',
    isDescending: false,
    offset: 0,
    limit: 9,
  });
  const row = rows.find((each) => each.id === itemId);
  return {
    row,
    lengths: shelf.lots
      .flatMap((lot) => lot.lengths)
      .filter((length) => length.onHandMm > 0)
      .map(({ onHandMm, reservedMm, widthMm, form, flaws }) => ({
        onHandMm,
        reservedMm,
        widthMm,
        form,
        flaws,
      })),
    movementCount: movements.length,
  };
}

describe('a coat sets aside what it will be cut from', () => {
  test('it is reserved, seen by the item with the name of the coat, and free to that coat alone', async () => {
    const { asking, cloth, planId, fill } = await workshop();
    const uses = [
      { lotId: cloth.lotId, lengthId: cloth.cutId, amount: 4310.25 },
      { lotId: fill.lotId, lengthId: null, amount: 512 },
    ];
    expect((await asking.get('setAside', { planId, uses })).setAside).toHaveLength(2);
    const item = await asking.get('readItem', { itemId: cloth.itemId });
    expect(item.shelf.lots[0]).toMatchObject({ onHand: 8200.5, reserved: 4310.25 });
    expect(item.setAside).toEqual([
      { lotId: cloth.lotId, lengthId: cloth.cutId, amount: 4310.25, planId, planName: 'Fen coat' },
    ]);
    const own = await asking.get('flowInput', { planId });
    expect(own.shelf.find(({ item: { id } }) => id === cloth.itemId)?.lots[0]?.lengths[0]).toMatchObject({
      onHandMm: 7310.5,
      reservedMm: 0,
    });
    const other = await savedPlan(asking, cloth.itemId, fill.itemId, 'Tarn coat');
    const seen = await asking.get('flowInput', { planId: other });
    expect(seen.setAside).toEqual([]);
    expect(seen.shelf.find(({ item: { id } }) => id === cloth.itemId)?.lots[0]?.lengths[0]?.reservedMm).toBe(
      4310.25,
    );
    const [problem] = await asking.refusal('setAside', {
      planId: other,
      uses: [{ lotId: cloth.lotId, lengthId: cloth.cutId, amount: 3001 }],
    });
    expect(problem?.what).toBe('is no longer free there: 3 m of the 3 m wanted');
  });

  test('setting aside again books only the difference, and nothing releases all', async () => {
    const { asking, cloth, planId } = await workshop();
    const at = (amount: number) => [{ lotId: cloth.lotId, lengthId: cloth.cutId, amount }];
    const kinds = async () =>
      (await asking.get('readItem', { itemId: cloth.itemId })).movements
        .filter((movement) => movement.kind !== 'received')
        .map((movement) => [movement.kind, movement.reservedMilli]);
    await asking.get('setAside', { planId, uses: at(4000) });
    await asking.get('setAside', { planId, uses: at(4000) });
    await asking.get('setAside', { planId, uses: at(3500) });
    await asking.get('setAside', { planId, uses: at(3700.5) });
    await asking.get('setAside', { planId, uses: [] });
    expect(await kinds()).toEqual([
      ['released', -3_700_500],
      ['reserved', 200_500],
      ['released', -500_000],
      ['reserved', 4_000_000],
    ]);
  });
});

describe('a cutting', () => {
  test('keeps what is trimmed off quilted pieces as waste of its own, also on the sheet, and refuses more than was cut', async () => {
    const { asking, cloth, planId } = await workshop();
    const base = cutting(planId, cloth);
    const [slot] = base.slots;
    const [line] = slot!.lines;
    const trimmed = (trimmedMm2: number) => ({
      ...base,
      slots: [{ ...slot!, lines: [{ ...line!, trimmedMm2 }] }],
    });
    const refused = await asking.ask('recordCutting', trimmed(700_100));
    expect(refused.ok ? '' : problemSentence(refused.problems[0]!)).toMatch(
      /^Trimmings of .+ are more than its pieces/,
    );
    const booked = (await asking.get('recordCutting', trimmed(90_000))).slots[0]?.lines[0];
    const wasteMm2 = 2100.5 * 1470 - 700_000 - 1400 * 490;
    expect(booked?.area).toMatchObject({ pieceMm2: 610_000, trimmedMm2: 90_000 });
    expect(booked?.area?.wasteMm2).toBeCloseTo(wasteMm2, 6);
    const share = (mm2: number) => Math.round(((booked?.costMinor ?? 0) * mm2) / (wasteMm2 + 700_000));
    expect(booked?.area?.trimmedMinor).toBe(share(90_000));
    const { sheet } = await asking.get('readCutSheet', { planId });
    expect(sheet.slots[0]).toMatchObject({
      wasteMinor: share(wasteMm2),
      trimmings: { areaMm2: 90_000, costMinor: share(90_000) },
    });
  });

  test('takes the cut off its length, brings the remnant back and says what fell away and what it cost', async () => {
    const { asking, cloth, planId } = await workshop();
    await asking.get('saveItem', {
      itemId: cloth.itemId,
      kind: 'cloth',
      name: 'Peatwater taffeta',
      colour: 'moss',
      place: '',
      notes: '',
      facts: { widthMm: 1470, arealMassGPerM2: 54 },
      typed: {},
    });
    const booked = await asking.get('recordCutting', cutting(planId, cloth));
    const line = booked.slots[0]?.lines[0];
    // 2100.5 mm of 1470 mm, of it 1400 x 490 back: as long as 466.667 mm of the whole width.
    expect(line).toMatchObject({ amount: 2100.5, usedMilli: 1_633_833 });
    // 123.45 for 8200.5 mm.
    expect(line?.costMinor).toBe(Math.round((12_345 * 1633.833) / 8200.5));
    const wasteMm2 = 2100.5 * 1470 - 700_000 - 1400 * 490;
    expect(line?.area?.wasteMm2).toBeCloseTo(wasteMm2, 6);
    expect(line?.area?.wasteG).toBeCloseTo((wasteMm2 / 1e6) * 54, 9);
    expect(line?.area?.wasteMinor).toBe(
      Math.round(((line?.costMinor ?? 0) * wasteMm2) / (wasteMm2 + 700_000)),
    );
    const { lengths, row } = await stand(asking, cloth.itemId);
    // The length had a flaw at 2140 mm: what is left of it lies on as a length of its own, the flaw measured anew.
    expect(lengths).toEqual([
      { onHandMm: 890, reservedMm: 0, widthMm: 1465, form: 'remnant', flaws: [] },
      { onHandMm: 1400, reservedMm: 0, widthMm: 490, form: 'remnant', flaws: [] },
      {
        onHandMm: 5210,
        reservedMm: 0,
        widthMm: 1470,
        form: 'cut',
        flaws: [{ x: 39.5, y: 930, widthX: 65, widthY: 40 }],
      },
    ]);
    // What is left is worth what was paid less what the coats cost, to the cent.
    expect((row?.valueMinor ?? 0) + (line?.costMinor ?? 0)).toBe(12_345);
    expect((await asking.get('listCuttings', { planId })).rows).toEqual([booked]);
    expect(await asking.get('readCutting', { cuttingId: booked.id })).toEqual(booked);
    expect((await asking.get('flowInput', { planId })).cuttings).toEqual([booked]);
  });

  test('uses what the coat had set aside, and releases what is left of it when asked', async () => {
    const { asking, cloth, planId } = await workshop();
    const uses = [
      { lotId: cloth.lotId, lengthId: cloth.cutId, amount: 3000 },
      { lotId: cloth.lotId, lengthId: cloth.remnantId, amount: 800 },
    ];
    await asking.get('setAside', { planId, uses });
    const booked = await asking.get('recordCutting', cutting(planId, cloth, { releasesRest: true }));
    expect((await asking.get('flowInput', { planId })).setAside).toEqual([]);
    expect((await stand(asking, cloth.itemId)).row?.reserved).toBe(0);
    await asking.get('undoCutting', { cuttingId: booked.id });
    expect(new Set((await asking.get('flowInput', { planId })).setAside)).toEqual(new Set(uses));
  });

  test('taken back, everything is as it was, and the ledger has only grown', async () => {
    const { asking, cloth, planId } = await workshop();
    const before = await stand(asking, cloth.itemId);
    const booked = await asking.get('recordCutting', cutting(planId, cloth));
    const cut = await stand(asking, cloth.itemId);
    expect(cut.lengths).not.toEqual(before.lengths);
    const undone = await asking.get('undoCutting', { cuttingId: booked.id });
    const after = await stand(asking, cloth.itemId);
    expect([after.row, after.lengths]).toEqual([before.row, before.lengths]);
    expect(after.movementCount).toBe(cut.movementCount + booked.movements.length);
    expect(undone.undoes).toBe(booked.id);
    const rows = (await asking.get('listCuttings', { planId })).rows;
    expect(rows.map((row) => [row.undoes, row.undoneBy])).toEqual([
      [booked.id, null],
      [null, undone.id],
    ]);
    expect((await asking.get('flowInput', { planId })).cuttings).toEqual([]);
    expect((await asking.refusal('undoCutting', { cuttingId: booked.id }))[0]?.what).toBe(
      'was taken back already',
    );
    expect((await asking.refusal('undoCutting', { cuttingId: undone.id }))[0]?.what).toBe(
      'is itself a taking back',
    );
  });

  test('is not taken back where its remnant was used or set aside since', async () => {
    const { asking, cloth, planId, fill } = await workshop();
    const booked = await asking.get('recordCutting', cutting(planId, cloth));
    const remnantId = booked.slots[0]?.lines[0]?.kept[0]?.lengthId ?? '';
    const other = await savedPlan(asking, cloth.itemId, fill.itemId, 'Tarn coat');
    const uses = [{ lotId: cloth.lotId, lengthId: remnantId, amount: 300 }];
    await asking.get('setAside', { planId: other, uses });
    expect((await asking.refusal('undoCutting', { cuttingId: booked.id }))[0]?.what).toBe(
      'was set aside since',
    );
    await asking.get('setAside', { planId: other, uses: [] });
    await asking.get('writeOff', { lotId: cloth.lotId, lengthId: remnantId, amount: 10, reason: 'moth' });
    expect((await asking.refusal('undoCutting', { cuttingId: booked.id }))[0]?.what).toBe('was used since');
  });

  test.each([
    ['more than lies there', { amount: 7311 }, 'is more than is there: 7.31 m is on hand'],
    [
      'a remnant wider than the cloth',
      { kept: [{ x: 0, y: 0, lengthMm: 500, widthMm: 1480 }] },
      'are more than is left beside the pieces',
    ],
    [
      'remnants where the pieces lie',
      { kept: [{ x: 0, y: 0, lengthMm: 2100, widthMm: 1400 }] },
      'are more than is left beside the pieces',
    ],
    ['a lot without its length', { lengthId: null, kept: [] }, 'is not named'],
  ])('%s is refused and nothing is booked', async (_, wrong, what) => {
    const { asking, cloth, planId } = await workshop();
    const input = cutting(planId, cloth);
    const [slot] = input.slots;
    const lines = slot!.lines.map((line) => ({ ...line, ...wrong }));
    const problems = await asking.refusal('recordCutting', { ...input, slots: [{ ...slot!, lines }] });
    expect(problems.map((problem) => problem.what)).toEqual([what]);
  });

  test('what another coat set aside is not cut', async () => {
    const { asking, cloth, planId, fill } = await workshop();
    const other = await savedPlan(asking, cloth.itemId, fill.itemId, 'Tarn coat');
    const uses = [{ lotId: cloth.lotId, lengthId: cloth.cutId, amount: 5300 }];
    await asking.get('setAside', { planId: other, uses });
    expect((await asking.refusal('recordCutting', cutting(planId, cloth)))[0]?.what).toBe(
      'is more than is there: 7.31 m is on hand, 5.3 m of it set aside for other coats',
    );
  });

  test('a plan changed meanwhile, a slot or size that is not in it are refused', async () => {
    const { asking, cloth, planId } = await workshop();
    const input = cutting(planId, cloth);
    const what = async (wrong: Partial<typeof input>) =>
      (await asking.refusal('recordCutting', { ...input, ...wrong })).map((problem) => problem.what);
    expect(await what({ basedOn: 2 })).toEqual(['was changed meanwhile']);
    expect(await what({ coats: [{ size: 'EU 44', coatCount: 2 }] })).toEqual(['is not in the plan']);
    expect(await what({ slots: [{ ...input.slots[0]!, slotId: 'hood' }] })).toEqual([
      'is not in the plan, or is named twice',
    ]);
    expect(await what({ slots: [{ ...input.slots[0]!, slotId: 'fill' }] })).toEqual([
      'cannot be cut from Peatwater taffeta',
    ]);
    expect(await what({ slots: [{ ...input.slots[0]!, lines: [] }] })).toEqual(['takes nothing']);
  });
});
