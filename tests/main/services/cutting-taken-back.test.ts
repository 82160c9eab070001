import { describe, expect, test } from 'vitest';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import { emptySlot } from '../../../shared-core/plan/model/coat-plan.ts';
import { newPlan } from '../../../shared-core/plan/model/new-plan.ts';
import { type Asking, fillLot, openAsking, receivedCloth } from '../asking.ts';
import { cutting, savedPlan, workshop } from './cut-workshop.ts';

describe('a cutting taken back out of order', () => {
  const at = (cloth: { lotId: string; remnantId: string }, amount: number) => [
    { lotId: cloth.lotId, lengthId: cloth.remnantId, amount },
  ];
  /** From the remnant, which has no flaw and so stays one length. */
  function fromRemnant(
    planId: string,
    cloth: { lotId: string; remnantId: string },
    amount: number,
    more: Partial<CallInput<'recordCutting'>> = {},
  ) {
    const input = cutting(planId, { lotId: cloth.lotId, cutId: cloth.remnantId }, more);
    const [slot] = input.slots;
    const lines = slot!.lines.map((line) => ({ ...line, amount, pieceAreaMm2: 9000, kept: [] }));
    return { ...input, slots: [{ ...slot!, lines }] };
  }
  const coats = (coatCount: number) => ({ coats: [{ size: 'EU 42', coatCount }] });

  test('was never consumed: the account is that of a workshop in which it never was', async () => {
    const { asking, cloth, planId } = await workshop();
    const first = await asking.get('recordCutting', fromRemnant(planId, cloth, 137));
    const second = await asking.get('recordCutting', fromRemnant(planId, cloth, 211));
    await asking.get('undoCutting', { cuttingId: first.id });
    const twin = await workshop();
    await twin.asking.get('recordCutting', fromRemnant(twin.planId, twin.cloth, 211));
    const money = async ({ asking: asked }: { asking: Asking }) => {
      const { total, coats: consumers } = await asked.get('readAccount', {});
      return [total, consumers.map(({ consumedMinor }) => consumedMinor)];
    };
    expect(await money({ asking })).toEqual(await money(twin));
    const sheet = async (asked: Asking, id: string) => {
      const { batchMinor, wasteMinor, coatCount } = (await asked.get('readCutSheet', { planId: id })).sheet;
      return { batchMinor, wasteMinor, coatCount };
    };
    expect(await sheet(asking, planId)).toEqual(await sheet(twin.asking, twin.planId));
    await asking.get('undoCutting', { cuttingId: second.id });
    expect((await asking.get('readAccount', {})).total).toMatchObject({
      consumedMinor: 0,
      correctedMinor: 0,
    });
  });

  test('names the rows that it takes back, and no row is taken back twice', async () => {
    const { asking, cloth, planId } = await workshop();
    const booked = await asking.get('recordCutting', cutting(planId, cloth));
    const undone = await asking.get('undoCutting', { cuttingId: booked.id });
    const moved = booked.movements.filter(({ onHandMilli }) => onHandMilli !== 0);
    expect(undone.movements.map(({ kind, reverses }) => [kind, reverses])).toEqual(
      moved.toReversed().map(({ id }) => ['reversed', id]),
    );
  });

  test('takes its own coats back, and leaves those of the other cutting', async () => {
    const { asking, cloth, planId } = await workshop();
    const first = await asking.get('recordCutting', fromRemnant(planId, cloth, 137, coats(2)));
    await asking.get('recordCutting', fromRemnant(planId, cloth, 211, coats(1)));
    const coatCount = async () => (await asking.get('readCutSheet', { planId })).sheet.coatCount;
    expect(await coatCount()).toBe(3);
    await asking.get('undoCutting', { cuttingId: first.id });
    expect(await coatCount()).toBe(1);
  });

  test('sets aside again only what nobody else has set aside since', async () => {
    const { asking, cloth, planId, fill } = await workshop();
    const other = await savedPlan(asking, cloth.itemId, fill.itemId, 'Tarn coat');
    await asking.get('setAside', { planId, uses: at(cloth, 500) });
    const booked = await asking.get('recordCutting', fromRemnant(planId, cloth, 300, { releasesRest: true }));
    await asking.get('setAside', { planId: other, uses: at(cloth, 560) });
    await asking.get('undoCutting', { cuttingId: booked.id });
    const amounts = async (id: string) =>
      (await asking.get('flowInput', { planId: id })).setAside.map(({ amount }) => amount);
    // 890 mm are there; 560 of them are the other coat's.
    expect([await amounts(planId), await amounts(other)]).toEqual([[330], [560]]);
  });
});

describe('a flawed length that was begun and then set aside for another coat', () => {
  test('is not taken from that coat by taking the cutting back, which says so', async () => {
    const { asking, cloth, planId, fill } = await workshop();
    const other = await savedPlan(asking, cloth.itemId, fill.itemId, 'Tarn coat');
    await asking.get('setAside', {
      planId,
      uses: [{ lotId: cloth.lotId, lengthId: cloth.cutId, amount: 2900 }],
    });
    const booked = await asking.get('recordCutting', cutting(planId, cloth));
    // What is left of the flawed length lies on as another, with what the coat had set aside beyond the cut.
    const rest = (await asking.get('flowInput', { planId })).setAside[0];
    expect(rest?.amount).toBe(799.5);
    await asking.get('setAside', { planId, uses: [] });
    await asking.get('setAside', { planId: other, uses: [{ ...rest!, amount: 799.5 }] });
    const problems = await asking.refusal('undoCutting', { cuttingId: booked.id });
    expect(problems.map(({ what }) => what)).toEqual(['was set aside since']);
    expect(asking.logged).toEqual([]);
  });
});

describe('counting less than coats have set aside', () => {
  test('releases what is not there, from the coat that set aside last, and names it', async () => {
    const { asking, cloth, planId, fill } = await workshop();
    const other = await savedPlan(asking, cloth.itemId, fill.itemId, 'Tarn coat');
    const place = { lotId: cloth.lotId, lengthId: cloth.remnantId };
    await asking.get('setAside', { planId, uses: [{ ...place, amount: 400 }] });
    await asking.get('setAside', { planId: other, uses: [{ ...place, amount: 350 }] });
    const counted = await asking.get('correctCount', { ...place, counted: 617, reason: 'measured' });
    expect(counted).toEqual({
      onHand: 617,
      released: [{ planId: other, planName: 'Tarn coat', amount: 133 }],
    });
    const again = await asking.get('takeStock', { counts: [{ ...place, counted: 350 }], reason: 'moths' });
    expect(again).toEqual({ correctedCount: 1, releasedFrom: ['Tarn coat', 'Fen coat'] });
    const { shelf } = await asking.get('readItem', { itemId: cloth.itemId });
    expect(shelf.lots[0]?.lengths[1]).toMatchObject({ onHandMm: 350, reservedMm: 350 });
  });
});

describe('two lines of a cutting on one lot', () => {
  const snap = {
    itemId: null,
    kind: 'fastening',
    name: 'Horn snap',
    colour: '',
    place: '',
    notes: '',
    facts: { form: 'snap' },
    typed: {},
  } as const;

  test('are counted whole, the second too', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', snap);
    const { lotId } = await asking.get('receiveLot', { ...fillLot(itemId, 24), priceMinor: 901 });
    const plan = {
      ...newPlan('any', 'Fen coat', '40'),
      quilting: null,
      slots: [{ ...emptySlot('snaps', 'snaps', 'fastening'), itemId }],
    };
    const { planId } = await asking.get('savePlan', { plan, basedOn: null, said: '' });
    const line = (amount: number) => ({ lotId, lengthId: null, amount, pieceAreaMm2: null, kept: [] });
    const problems = await asking.refusal('recordCutting', {
      planId,
      basedOn: 1,
      coats: [{ size: '40', coatCount: 1 }],
      note: '',
      releasesRest: false,
      slots: [{ slotId: 'snaps', met: { kind: 'amount', amount: 3.5 }, lines: [line(2), line(1.5)] }],
    });
    expect(problems.map(({ what }) => what)).toEqual(['is not a whole number']);
  });

  test('of two items keep the name of each', async () => {
    const { asking, cloth, planId } = await workshop();
    const second = await receivedCloth(asking, 'Rushlight poplin');
    const input = cutting(planId, cloth);
    const [slot] = input.slots;
    const lines = [
      ...slot!.lines,
      { lotId: second.lotId, lengthId: second.cutId, amount: 903, pieceAreaMm2: 9000, kept: [] },
    ];
    await asking.get('recordCutting', { ...input, slots: [{ ...slot!, lines }] });
    const { sheet } = await asking.get('readCutSheet', { planId });
    expect(sheet.slots.map(({ itemNames }) => itemNames)).toEqual([
      ['Peatwater taffeta', 'Rushlight poplin'],
    ]);
  });
});
