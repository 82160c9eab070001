import { describe, expect, test } from 'vitest';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import type { CoatPlan } from '../../../../shared-core/plan/model/coat-plan.ts';
import { emptySlot } from '../../../../shared-core/plan/model/coat-plan.ts';
import { planProblems } from '../../../../shared-core/plan/validation/plan-problems.ts';
import { type Asking, openAsking, receivedCloth, receivedFill } from '../../asking.ts';

const plan: CoatPlan = {
  id: 'not yet',
  name: 'Fen coat',
  size: 'EU 42',
  coatCount: 3,
  slots: [emptySlot('shell', 'shell', 'cloth'), emptySlot('fill', 'chambers', 'fill')],
  pieces: [
    {
      id: 'back',
      name: 'Back',
      outline: {
        start: { x: 0, y: 0 },
        edges: [
          { name: 'side', segments: [{ kind: 'line', to: { x: 730, y: 0 } }], allowanceMm: 12, seam: null },
          { name: 'neck', segments: [{ kind: 'line', to: { x: 690, y: 260 } }], allowanceMm: 10, seam: null },
          { name: 'hem', segments: [{ kind: 'line', to: { x: 0, y: 0 } }], allowanceMm: 35, seam: null },
        ],
      },
      cutCount: 1,
      isMirrored: false,
      foldEdge: null,
      turns: 'grain',
      notches: [],
      cutFrom: [{ slotId: 'shell', plyCount: 1 }],
      quilted: null,
    },
  ],
  seams: [],
  quilting: null,
  clearanceMm: 2,
  threadWastageRatio: 0.15,
  sewingMinutesPerCoat: 540,
  notes: '',
};

async function savedPlan(asking: Asking): Promise<CoatPlan> {
  const { planId, revision } = await asking.get('savePlan', { plan, basedOn: null, said: 'Drafted' });
  expect(revision).toBe(1);
  return { ...plan, id: planId };
}

describe('a plan', () => {
  test('gets an id of its own when it is new, and is read back as it was saved', async () => {
    const asking = openAsking();
    const saved = await savedPlan(asking);
    expect(saved.id).not.toBe(plan.id);
    expect(await asking.get('readPlan', { planId: saved.id })).toEqual({
      plan: saved,
      revision: 1,
      said: 'Drafted',
      canUndo: false,
    });
    const copy = await asking.get('savePlan', { plan: saved, basedOn: null, said: 'Copied' });
    expect(copy.planId).not.toBe(saved.id);
  });

  test('stands in the list with its size, the one last changed first', async () => {
    let minute = 10;
    const asking = openAsking({ now: () => new Date(Date.UTC(2026, 2, 27, 8, minute++)) });
    const saved = await savedPlan(asking);
    const { planId } = await asking.get('savePlan', {
      plan: { ...plan, name: 'Tarn coat' },
      basedOn: null,
      said: '',
    });
    const names = async () => (await asking.get('listPlans', {})).rows.map((row) => row.name);
    expect(await names()).toEqual(['Tarn coat', 'Fen coat']);
    await asking.get('savePlan', { plan: { ...saved, coatCount: 7 }, basedOn: 1, said: 'Seven' });
    expect(await names()).toEqual(['Fen coat', 'Tarn coat']);
    const [first] = (await asking.get('listPlans', {})).rows;
    expect(first).toMatchObject({ id: saved.id, size: 'EU 42', coatCount: 7 });
    expect(first?.changedAt).toMatch(/^2026-03-27T08:1\d/);
    expect((await asking.get('listPlans', {})).rows[1]?.id).toBe(planId);
  });

  test('that was changed meanwhile is not written over', async () => {
    const asking = openAsking();
    const saved = await savedPlan(asking);
    await asking.get('savePlan', { plan: { ...saved, size: 'EU 44' }, basedOn: 1, said: 'Larger' });
    const problems = await asking.refusal('savePlan', {
      plan: { ...saved, coatCount: 9 },
      basedOn: 1,
      said: 'More',
    });
    expect(problems.map(problemSentence)).toEqual([
      'The plan Fen coat was changed meanwhile. Open it again: it then shows the other change, and yours can be made anew.',
    ]);
    expect((await asking.get('readPlan', { planId: saved.id })).plan.size).toBe('EU 44');
  });

  test('saved twelve times at the same instant from one state is saved once', async () => {
    const asking = openAsking();
    const saved = await savedPlan(asking);
    const outcomes = await Promise.all(
      Array.from({ length: 12 }, (_, n) =>
        asking.ask('savePlan', { plan: { ...saved, coatCount: n + 2 }, basedOn: 1, said: `${n}` }),
      ),
    );
    expect(outcomes.filter((outcome) => outcome.ok)).toHaveLength(1);
    const read = await asking.get('readPlan', { planId: saved.id });
    expect(read.revision).toBe(2);
    expect(outcomes[read.plan.coatCount - 2]?.ok).toBe(true);
  });

  // A program that only reads a file takes it into memory; from a database it reads as others do.
  if (process.env.BOLT_TEST_STORE !== 'postgres') {
    test('changed in the window is what the next program that reads it sees, while one that reads goes on with what it began with', async () => {
      const asking = openAsking();
      const saved = await savedPlan(asking);
      const reading = openAsking({ dataFile: asking.dataFile, isReadOnly: true });
      await asking.get('savePlan', { plan: { ...saved, size: 'EU 44' }, basedOn: 1, said: 'Larger' });
      const next = openAsking({ dataFile: asking.dataFile, isReadOnly: true });
      const sizeIn = async (each: Asking) => (await each.get('readPlan', { planId: saved.id })).plan.size;
      expect([await sizeIn(reading), await sizeIn(next)]).toEqual([saved.size, 'EU 44']);
      expect(await next.refusal('savePlan', { plan: saved, basedOn: 2, said: '' })).toMatchObject([
        { what: 'is open for reading only' },
      ]);
      expect(await asking.refusal('savePlan', { plan: saved, basedOn: 1, said: '' })).toHaveLength(1);
    });
  }

  test('is undone step by step back to its first state, and each undo is a further revision', async () => {
    const asking = openAsking();
    const saved = await savedPlan(asking);
    const { id: planId } = saved;
    await asking.get('savePlan', { plan: { ...saved, size: 'EU 44' }, basedOn: 1, said: 'Larger' });
    await asking.get('savePlan', { plan: { ...saved, size: 'EU 46' }, basedOn: 2, said: 'Larger still' });
    expect(await asking.get('undoPlan', { planId })).toMatchObject({
      plan: { size: 'EU 44' },
      revision: 4,
      said: 'Back to before: Larger still',
      canUndo: true,
    });
    expect(await asking.get('undoPlan', { planId })).toMatchObject({
      plan: saved,
      revision: 5,
      canUndo: false,
    });
    expect((await asking.refusal('undoPlan', { planId }))[0]?.what).toBe('has no earlier state');
    await asking.get('savePlan', { plan: { ...saved, size: 'EU 38' }, basedOn: 5, said: 'Smaller' });
    expect((await asking.get('undoPlan', { planId })).plan.size).toBe('EU 42');
    const [row] = (await asking.get('listPlans', {})).rows;
    expect(row?.size).toBe('EU 42');
  });

  test('keeps every revision: none can be changed or removed', async () => {
    const asking = openAsking();
    await savedPlan(asking);
    await expect(asking.beside("UPDATE plan_revision SET said = ''")).rejects.toThrow(/never changed/);
    await expect(asking.beside('DELETE FROM plan_revision')).rejects.toThrow(/never removed/);
  });

  test('is filled from the stash only, with items of the right kind', async () => {
    const asking = openAsking();
    const saved = await savedPlan(asking);
    const { itemId } = await receivedFill(asking, 640);
    const slots = [
      { ...saved.slots[0]!, itemId },
      { ...saved.slots[1]!, itemId: 'gone' },
    ];
    const problems = await asking.refusal('savePlan', { plan: { ...saved, slots }, basedOn: 1, said: '' });
    expect(problems.map(problemSentence)).toEqual([
      'Slot shell is filled with Fenwalk down, which is not cloth. Choose cloth.',
      'Slot chambers names an item that is not in the stash. Choose an item, or leave it open.',
    ]);
  });

  test('whose pieces do not hold together is refused by the plan\u2019s own checks', async () => {
    const asking = openAsking();
    const saved = await savedPlan(asking);
    const pieces = [{ ...saved.pieces[0]!, cutFrom: [{ slotId: 'gone', plyCount: 1 }] }];
    const broken = { ...saved, pieces };
    const problems = await asking.refusal('savePlan', { plan: broken, basedOn: 1, said: '' });
    expect(problems).toEqual(planProblems(broken));
    expect(problems.length).toBeGreaterThan(0);
  });

  test('that is not there is neither read, saved, undone nor reckoned', async () => {
    const asking = openAsking();
    for (const [call, input] of [
      ['readPlan', { planId: 'gone' }],
      ['undoPlan', { planId: 'gone' }],
      ['flowInput', { planId: 'gone' }],
      ['savePlan', { plan: { ...plan, id: 'gone' }, basedOn: 3, said: '' }],
    ] as const) {
      expect((await asking.refusal(call, input)).map((problem) => problem.where)).toEqual(['The plan']);
    }
  });
});

describe('what the flow reads', () => {
  test('is the plan, the shelf of the kinds it uses with what is still there, offers and settings', async () => {
    const asking = openAsking();
    const cloth = await receivedCloth(asking);
    const fill = await receivedFill(asking, 640);
    const notion = { itemId: null, colour: '', place: '', notes: '', facts: {}, typed: {} };
    const { itemId: threadId } = await asking.get('saveItem', {
      ...notion,
      kind: 'thread',
      name: 'Core olive',
    });
    const offer = { offerId: null, supplier: 'Tarn', priceMinor: 1790, pricedOn: '2026-03-02' };
    const unit = { kind: 'by length', stepMm: 100, widthMm: 1470, leastMm: 500 } as const;
    const { offerId } = await asking.get('saveOffer', { ...offer, itemId: cloth.itemId, unit });
    await asking.get('saveOffer', { ...offer, itemId: threadId, unit: { kind: 'spool', threadM: 950 } });
    await asking.get('writeOff', {
      lotId: cloth.lotId,
      lengthId: cloth.remnantId,
      amount: 890,
      reason: 'moth',
    });
    await asking.get('writeOff', { lotId: fill.lotId, lengthId: null, amount: 640, reason: 'damp' });
    const saved = await savedPlan(asking);

    const flow = await asking.get('flowInput', { planId: saved.id });
    expect([flow.plan, flow.revision]).toEqual([saved, 1]);
    expect(flow.settings).toEqual({ workshopName: '', system: 'metric', currency: 'EUR' });
    expect(flow.offers).toEqual([{ ...offer, offerId: undefined, id: offerId, itemId: cloth.itemId, unit }]);
    expect(flow.shelf.map(({ item, lots }) => [item.id, lots.length])).toEqual([
      [fill.itemId, 0],
      [cloth.itemId, 1],
    ]);
    expect(flow.shelf[1]?.lots[0]?.lengths.map((length) => length.id)).toEqual([cloth.cutId]);
  });

  test('has the oldest lot first, whichever was entered first', async () => {
    const asking = openAsking();
    const { itemId } = await receivedFill(asking, 640);
    for (const [receivedOn, amount] of [
      ['2025-11-30', 31],
      ['2026-03-27', 57],
    ] as const) {
      const lot = { itemId, receivedOn, amount, supplier: '', dyeLot: '', priceMinor: 1, lengths: [] };
      await asking.get('receiveLot', lot);
    }
    const saved = await savedPlan(asking);
    const { shelf } = await asking.get('flowInput', { planId: saved.id });
    expect(shelf[0]?.lots.map((lot) => lot.onHand)).toEqual([31, 640, 57]);
  });
});
