import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { proposedCutting, wholeBatch } from '../../../shared-core/flow/next-cutting.ts';
import { emptySlot, type Slot } from '../../../shared-core/plan/model/coat-plan.ts';
import { lotWorth } from '../../../shared-core/stash/stash.ts';
import { layHere, piece, plan, rectangle } from '../../fixtures/small-workshop.ts';
import { releasedFolder } from '../../fixtures/released/make.ts';
import { type Asking, openAsking, tempFolder } from '../asking.ts';

const flannel = {
  itemId: null,
  kind: 'cloth' as const,
  name: 'Tarn flannel',
  colour: '',
  place: '',
  notes: '',
  typed: {},
};
const onRoll = { widthMm: 1400, lengthMm: 4000, form: 'roll' as const, flaws: [], count: 1 };

/** Four metres of a flannel that shrinks, for 80.00, and a coat of one piece of it. */
async function flannelCoat({
  along = 0.05,
  across = 0.05,
  more = {} as Partial<Slot>,
  length = onRoll as typeof onRoll & { isWashed?: true },
} = {}) {
  const asking = openAsking();
  const facts = { widthMm: 1400, shrinkageAlongRatio: along, shrinkageAcrossRatio: across };
  const { itemId } = await asking.get('saveItem', { ...flannel, facts });
  await asking.get('receiveLot', {
    itemId,
    receivedOn: '2026-10-01',
    supplier: '',
    dyeLot: '7',
    priceMinor: 8_000,
    amount: null,
    lengths: [length],
  });
  const coat = plan({
    id: 'new',
    slots: [{ ...emptySlot('shell', 'shell', 'cloth'), itemId, ...more }],
    pieces: [piece('back', rectangle(950, 900))],
  });
  const { planId } = await asking.get('savePlan', { plan: coat, basedOn: null, said: '' });
  return { asking, itemId, planId };
}

/** What the flow proposes to cut, as the cutting room books it. */
async function proposed(asking: Asking, planId: string) {
  const input = await asking.get('flowInput', { planId });
  const slots = await proposedCutting(input, wholeBatch(input.plan), layHere);
  return {
    planId,
    basedOn: input.revision,
    coats: wholeBatch(input.plan),
    note: '',
    releasesRest: true,
    slots: slots.map(({ slotId, met, lines }) => ({
      slotId,
      met,
      lines: lines.map(({ lotId, lengthId, amount, pieceAreaMm2, rests }) => ({
        lotId,
        lengthId,
        amount,
        pieceAreaMm2,
        kept: rests.map(({ x, y, widthX, widthY }) => ({ x, y, lengthMm: widthX, widthMm: widthY })),
      })),
    })),
  };
}

async function lengths(asking: Asking, itemId: string) {
  const { shelf } = await asking.get('readItem', { itemId });
  return shelf.lots.flatMap((lot) => lot.lengths).filter(({ onHandMm }) => onHandMm > 0);
}

test('a rest of cloth that was washed first lies on the shelf as washed cloth, and the next coat takes it as it is', async () => {
  const { asking, itemId, planId } = await flannelCoat();
  const cutting = await asking.get('recordCutting', await proposed(asking, planId));
  expect(cutting.slots[0]?.lines[0]).toMatchObject({
    amount: 1000,
    washed: { alongRatio: 0.05, acrossRatio: 0.05 },
  });
  const [roll, rest] = await lengths(asking, itemId);
  expect(roll).toMatchObject({ onHandMm: 3000, widthMm: 1400 });
  expect(roll?.isWashed).toBeUndefined();
  expect(rest).toMatchObject({ onHandMm: 950, widthMm: 430, form: 'remnant', isWashed: true });

  const yoke = plan({
    id: 'new',
    slots: [{ ...emptySlot('shell', 'shell', 'cloth'), itemId, isSeen: false }],
    pieces: [piece('yoke', rectangle(900, 400))],
  });
  const next = await asking.get('savePlan', { plan: yoke, basedOn: null, said: '' });
  const again = await asking.get('recordCutting', await proposed(asking, next.planId));
  expect(again.slots[0]?.lines[0]).toMatchObject({
    lengthId: rest!.id,
    amount: 900,
    washed: { alongRatio: 0, acrossRatio: 0 },
  });
});

test('a rest of cloth that is cut unwashed is unwashed cloth', async () => {
  const { asking, itemId, planId } = await flannelCoat({ more: { isCutUnwashed: true } });
  await asking.get('recordCutting', await proposed(asking, planId));
  const [, rest] = await lengths(asking, itemId);
  expect(rest?.onHandMm).toBe(1000);
  expect(rest?.isWashed).toBeUndefined();
});

test('what came washed is on the shelf as washed, and its rests are', async () => {
  const { asking, itemId, planId } = await flannelCoat({ length: { ...onRoll, isWashed: true } });
  expect(await lengths(asking, itemId)).toMatchObject([{ isWashed: true }]);
  const cutting = await asking.get('recordCutting', await proposed(asking, planId));
  expect(cutting.slots[0]?.lines[0]?.amount).toBe(950);
  expect(await lengths(asking, itemId)).toMatchObject([
    { isWashed: true, onHandMm: 3050 },
    { isWashed: true, widthMm: 500 },
  ]);
});

test('a rest is refused that no wash leaves so wide', async () => {
  const { asking, planId } = await flannelCoat();
  const asked = await proposed(asking, planId);
  const line = asked.slots[0]!.lines[0]!;
  const wide = { ...line, pieceAreaMm2: 0, kept: [{ x: 0, y: 0, lengthMm: 300, widthMm: 1350 }] };
  const [problem] = await asking.refusal('recordCutting', {
    ...asked,
    slots: [{ ...asked.slots[0], lines: [wide] }],
  });
  expect(problem?.where).toBe('Remnants of Tarn flannel');
  const fitting = { ...wide, kept: [{ x: 0, y: 0, lengthMm: 300, widthMm: 1330 }] };
  await asking.get('recordCutting', { ...asked, slots: [{ ...asked.slots[0]!, lines: [fitting] }] });
});

test('a cutting of washed cloth is taken back as if it had never been', async () => {
  const { asking, itemId, planId } = await flannelCoat();
  const before = await lengths(asking, itemId);
  const { id } = await asking.get('recordCutting', await proposed(asking, planId));
  await asking.get('undoCutting', { cuttingId: id });
  expect(await lengths(asking, itemId)).toEqual(before);
});

test('whatever it shrinks by, what the coat pays and what is left are what was paid', async () => {
  const percent = fc.integer({ min: 0, max: 20 }).map((each) => each / 100);
  await fc.assert(
    fc.asyncProperty(percent, percent, async (along, across) => {
      const { asking, itemId, planId } = await flannelCoat({ along, across });
      const cutting = await asking.get('recordCutting', await proposed(asking, planId));
      const line = cutting.slots[0]!.lines[0]!;
      const { shelf } = await asking.get('readItem', { itemId });
      // To the thousandths of a millimetre that the ledger counts.
      expect(lotWorth(shelf.lots[0]!) + line.usedMilli / 1000).toBeCloseTo(4000, 2);
      const { pieceMm2, keptMm2, wasteMm2 } = line.area!;
      expect(pieceMm2 + keptMm2 + wasteMm2).toBeCloseTo(line.amount * 1400, 3);
      expect(pieceMm2).toBeCloseTo((950 * 900) / ((1 - along) * (1 - across)), 3);
      asking.services.close();
    }),
    { numRuns: 12, seed: 3 },
  );
});

test('a stash file carries washed lengths to another workshop', async () => {
  const { asking, itemId, planId } = await flannelCoat();
  await asking.get('recordCutting', await proposed(asking, planId));
  const file = await asking.get('stashFile', {});
  const there = openAsking();
  await there.get('bringInStashFile', file);
  expect(await there.get('stashFile', {})).toEqual(file);
  expect((await lengths(there, itemId)).map(({ isWashed }) => isWashed ?? false)).toEqual([false, true]);
  expect((await asking.get('lookAtStashFile', file)).changes).toEqual([]);
});

test('a file from before knows of no washed length, and says what its cloth is now laid as', async () => {
  const file = join(tempFolder(), '0011.sqlite');
  copyFileSync(join(releasedFolder, '0011.sqlite'), file);
  const database = new SqliteDatabase(file);
  database.exec(
    "UPDATE item SET facts = json_set(facts, '$.shrinkageAlongRatio', 0.03) WHERE kind = 'cloth'",
  );
  database.close();
  const asking = openAsking({ dataFile: file });
  const { rows } = await asking.get('listItems', {
    search: '',
    kinds: ['cloth'],
    sortBy: 'name',
    isDescending: false,
    offset: 0,
    limit: 9,
  });
  const all = await Promise.all(rows.map(({ id }) => lengths(asking, id)));
  expect(all.flat().length).toBeGreaterThan(0);
  expect(all.flat().every(({ isWashed }) => isWashed === undefined)).toBe(true);
  const { upgradeNotes } = await asking.get('workshopFacts', {});
  expect(upgradeNotes.map(({ note }) => note).join()).toContain('laid as it is after its wash');
});
