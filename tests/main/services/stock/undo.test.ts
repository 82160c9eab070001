/** The last change of the stash, undone: whole, by rows of its own, and only where nothing stands on it. */
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { type Asking, clothLot, down, fillLot, openAsking, receivedCloth, taffeta } from '../../asking.ts';
import { cutting, savedPlan, workshop } from '../cut-workshop.ts';

async function undo(asking: Asking) {
  const { change } = await asking.get('readLastChange', {});
  if (!change) throw new Error('there is nothing to undo');
  return asking.get('undoLastChange', { changeId: change.id });
}

async function refused(asking: Asking): Promise<readonly string[]> {
  const { change } = await asking.get('readLastChange', {});
  const problems = await asking.refusal('undoLastChange', { changeId: change?.id });
  return problems.map(({ where, what, fix }) => `${where} ${what}. ${fix}`);
}

const account = async (asking: Asking) => (await asking.get('readAccount', {})).total;
const onHand = async (asking: Asking, itemId: string) =>
  (await asking.get('readItem', { itemId })).shelf.lots.flatMap((lot) =>
    lot.lengths.length > 0 ? lot.lengths.map((length) => length.onHandMm) : [lot.onHand],
  );
const movementRows = (asking: Asking) => asking.beside('SELECT * FROM movement ORDER BY entry');

const offer = (itemId: string): CallInput<'saveOffer'> => ({
  offerId: null,
  itemId,
  supplier: 'Quillstone Cloth',
  unit: { kind: 'by length', widthMm: 1470, stepMm: 100, leastMm: 100 },
  priceMinor: 1190,
  pricedOn: '2026-05-01',
});

describe('a lot that was received by mistake', () => {
  test('is off the shelf again with its money, its dye lot finds nothing, and the ledger has grown', async () => {
    const asking = openAsking();
    const cloth = await receivedCloth(asking);
    const before = await account(asking);
    const rows = await movementRows(asking);
    await asking.get('receiveLot', { ...clothLot(cloth.itemId), dyeLot: 'Q-88', priceMinor: 7003 });
    const found = async () => (await asking.get('find', { text: 'Q-88' })).finds.length;
    expect(await found()).toBe(1);
    expect(await undo(asking)).toEqual({ said: 'Received 8.2 m of Peatwater taffeta, 27 Mar 2026' });
    expect(await account(asking)).toEqual(before);
    expect(await found()).toBe(0);
    expect(await onHand(asking, cloth.itemId)).toEqual([7310.5, 890]);
    expect((await movementRows(asking)).slice(0, rows.length)).toEqual(rows);
    const { movements } = await asking.get('readItem', { itemId: cloth.itemId });
    expect(movements.slice(0, 4).map(({ kind, onHandMilli }) => [kind, onHandMilli])).toEqual([
      ['reversed', -7_310_500],
      ['reversed', -890_000],
      ['received', 890_000],
      ['received', 7_310_500],
    ]);
    expect((await asking.get('readLastChange', {})).change).toBeNull();
  });

  test('stays once a coat was cut from it, until the cutting is taken back', async () => {
    const { asking, cloth, planId } = await workshop();
    const { lotId } = await asking.get('receiveLot', clothLot(cloth.itemId));
    const { shelf } = await asking.get('readItem', { itemId: cloth.itemId });
    const cutId = shelf.lots.find((lot) => lot.id === lotId)!.lengths[0]!.id;
    const { id: cuttingId } = await asking.get('recordCutting', cutting(planId, { lotId, cutId }));
    expect(await refused(asking)).toEqual([
      'Peatwater taffeta was cut since. Take the cutting back first, or count what lies there.',
    ]);
    await asking.get('undoCutting', { cuttingId });
    await undo(asking);
    expect(await onHand(asking, cloth.itemId)).toEqual([7310.5, 890]);
  });

  test('stays while a coat has set it aside', async () => {
    const { asking, fill, planId } = await workshop();
    const { lotId } = await asking.get('receiveLot', fillLot(fill.itemId, 35));
    const uses = [{ lotId, lengthId: null, amount: 30 }];
    await asking.get('setAside', { planId, uses });
    expect(await refused(asking)).toEqual([
      'Fenwalk down is set aside for Fen coat. Release it in the cover of that coat first.',
    ]);
    await asking.get('setAside', { planId, uses: [] });
    await undo(asking);
    expect(await onHand(asking, fill.itemId)).toEqual([640]);
  });
});

test('what was written off by mistake lies there again, and is worth what it was', async () => {
  const { asking, cloth } = await workshop();
  const before = await account(asking);
  const place = { lotId: cloth.lotId, lengthId: cloth.cutId };
  await asking.get('writeOff', { ...place, amount: 1510, reason: 'moths' });
  expect((await account(asking)).writtenOffMinor).toBeGreaterThan(0);
  expect(await undo(asking)).toEqual({ said: 'Wrote off 1.51 m of Peatwater taffeta' });
  expect(await account(asking)).toEqual(before);
  expect(await onHand(asking, cloth.itemId)).toEqual([7310.5, 890]);
});

describe('a count that was wrong', () => {
  test('is undone, and the coat has again what it lost by it', async () => {
    const { asking, fill, planId } = await workshop();
    const place = { lotId: fill.lotId, lengthId: null };
    await asking.get('setAside', { planId, uses: [{ ...place, amount: 500 }] });
    await asking.get('correctCount', { ...place, counted: 420, reason: 'weighed' });
    await undo(asking);
    const { shelf, setAside } = await asking.get('readItem', { itemId: fill.itemId });
    expect(shelf.lots[0]).toMatchObject({ onHand: 640, reserved: 500 });
    expect(setAside).toMatchObject([{ planName: 'Fen coat', amount: 500 }]);
  });

  test('stays where the coat has set aside anew since', async () => {
    const { asking, fill, planId } = await workshop();
    const place = { lotId: fill.lotId, lengthId: null };
    await asking.get('setAside', { planId, uses: [{ ...place, amount: 500 }] });
    await asking.get('correctCount', { ...place, counted: 420, reason: 'weighed' });
    await asking.get('setAside', { planId, uses: [{ ...place, amount: 410 }] });
    expect(await refused(asking)).toEqual([
      'Fenwalk down was set aside anew for Fen coat since. Count what lies there instead.',
    ]);
  });

  test('of more than there was stays while the more is set aside', async () => {
    const { asking, fill, planId } = await workshop();
    const place = { lotId: fill.lotId, lengthId: null };
    await asking.get('correctCount', { ...place, counted: 700, reason: 'found' });
    await asking.get('setAside', { planId, uses: [{ ...place, amount: 650 }] });
    expect(await refused(asking)).toEqual([
      'Fenwalk down is set aside for Fen coat. Release it in the cover of that coat first.',
    ]);
    await asking.get('setAside', { planId, uses: [{ ...place, amount: 640 }] });
    await undo(asking);
    expect(await onHand(asking, fill.itemId)).toEqual([640]);
  });

  test('of the whole shelf is undone at once', async () => {
    const { asking, cloth, fill } = await workshop();
    await asking.get('takeStock', {
      reason: 'stock-take',
      counts: [
        { lotId: cloth.lotId, lengthId: cloth.cutId, counted: 7000 },
        { lotId: fill.lotId, lengthId: null, counted: 650 },
      ],
    });
    expect(await undo(asking)).toEqual({ said: 'Took stock and corrected 2 counts' });
    expect([await onHand(asking, cloth.itemId), await onHand(asking, fill.itemId)]).toEqual([
      [7310.5, 890],
      [640],
    ]);
  });

  test('of the whole shelf stays whole where one place was cut since', async () => {
    const { asking, cloth, fill, planId } = await workshop();
    await asking.get('takeStock', {
      reason: 'stock-take',
      counts: [
        { lotId: cloth.lotId, lengthId: cloth.cutId, counted: 7000 },
        { lotId: fill.lotId, lengthId: null, counted: 650 },
      ],
    });
    await asking.get('recordCutting', cutting(planId, cloth));
    expect(await refused(asking)).toEqual([
      'Peatwater taffeta was cut since. Take the cutting back first, or count what lies there.',
    ]);
    expect(await onHand(asking, fill.itemId)).toEqual([650]);
  });
});

describe('a change of an item', () => {
  test('is undone to the word, and it is found by its old name', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    const before = (await asking.get('readItem', { itemId })).shelf;
    await asking.get('saveItem', {
      ...taffeta,
      itemId,
      name: 'Bog taffeta',
      facts: { widthMm: 1400 },
      typed: {},
    });
    expect(await undo(asking)).toEqual({ said: 'Changed Bog taffeta' });
    expect((await asking.get('readItem', { itemId })).shelf).toEqual(before);
    expect((await asking.get('find', { text: 'Peatwater' })).finds).toHaveLength(1);
  });

  test('stays once something else was changed', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    await asking.get('saveItem', { ...taffeta, itemId, name: 'Bog taffeta' });
    const { change } = await asking.get('readLastChange', {});
    await asking.get('saveItem', down);
    expect((await asking.refusal('undoLastChange', { changeId: change?.id }))[0]?.what).toBe(
      'is no longer the last one, or was undone already',
    );
  });

  test('that changes nothing leaves what can be undone as it was', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    await asking.get('receiveLot', clothLot(itemId));
    const { change } = await asking.get('readLastChange', {});
    await asking.get('saveItem', { ...taffeta, itemId });
    expect((await asking.get('readLastChange', {})).change).toEqual(change);
  });
});

test('a new item with its first purchase is put away with nothing on hand, and its name is free', async () => {
  const asking = openAsking();
  const { itemId: _, ...firstLot } = fillLot('', 300);
  const { itemId } = await asking.get('saveItem', { ...down, firstLot });
  await undo(asking);
  expect(await asking.get('readItem', { itemId })).toMatchObject({ isPutAway: true, shelf: { lots: [] } });
  expect((await account(asking)).receivedMinor).toBe(0);
  await asking.get('saveItem', down);
});

test('what was put away is back in the list', async () => {
  const asking = openAsking();
  const { itemId } = await asking.get('saveItem', taffeta);
  await asking.get('archiveItem', { itemId, isPutAway: true });
  expect(await undo(asking)).toEqual({ said: 'Put Peatwater taffeta away' });
  expect((await asking.get('readItem', { itemId })).isPutAway).toBe(false);
});

describe('an offer', () => {
  test('that was added, changed or removed is as it was', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    const offers = async () => (await asking.get('readItem', { itemId })).offers;
    await asking.get('saveOffer', offer(itemId));
    await undo(asking);
    expect(await offers()).toEqual([]);
    const { offerId } = await asking.get('saveOffer', offer(itemId));
    const before = await offers();
    await asking.get('saveOffer', { ...offer(itemId), offerId, priceMinor: 1490, supplier: 'Tarn Drapery' });
    expect(await undo(asking)).toEqual({ said: 'Changed the offer of Tarn Drapery for Peatwater taffeta' });
    expect(await offers()).toEqual(before);
    await asking.get('removeOffer', { offerId });
    await undo(asking);
    expect(await offers()).toEqual(before);
  });

  test('that a price list has changed since stays', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    await asking.get('saveOffer', offer(itemId));
    const { text } = await asking.get('priceList', {});
    expect(text).toContain('11.90');
    await asking.get('bringInPriceList', { text: text.replace('11.90', '12.40') });
    expect((await refused(asking))[0]).toContain('The offer of Quillstone Cloth was changed since');
  });
});

test('rows that were pasted are undone together: items, lots and counts', async () => {
  const asking = openAsking();
  const cloth = await receivedCloth(asking);
  const { text } = await asking.get('stashFile', {});
  const shelf = await onHand(asking, cloth.itemId);
  const other = openAsking();
  const { itemId } = await other.get('saveItem', down);
  await other.get('receiveLot', fillLot(itemId, 250));
  const table = (csv: string) => Papa.parse<string[]>(csv, { skipEmptyLines: true }).data;
  const [heads = [], ...rows] = table(text);
  const put = (row: number, head: string, value: string) => {
    rows[row]![heads.findIndex((each) => each.startsWith(head))] = value;
  };
  for (const row of [0, 1]) put(row, 'place', 'shelf D');
  put(1, 'on hand', '850');
  put(1, 'reason', 'measured');
  rows.push(...table((await other.get('stashFile', {})).text).slice(1));
  const before = await account(asking);
  const changes = await asking.get('bringInStashFile', { text: Papa.unparse([heads, ...rows]) });
  expect(changes).toMatchObject({ newItemCount: 1, changedItemCount: 1, newLotCount: 1, correctionCount: 1 });
  expect(await undo(asking)).toEqual({
    said: 'Brought rows into the stash: 1 new item, 1 changed item, 1 new lot, 1 correction',
  });
  expect(await account(asking)).toEqual(before);
  expect(await onHand(asking, cloth.itemId)).toEqual(shelf);
  expect((await asking.get('readItem', { itemId: cloth.itemId })).shelf.item.place).toBe('shelf B, left');
  expect((await asking.get('stashFile', {})).text).toBe(text);
});

test('an undone write-off can be written off again, and undone again', async () => {
  const { asking, fill, cloth } = await workshop();
  await savedPlan(asking, cloth.itemId, fill.itemId, 'Tarn coat');
  const before = await account(asking);
  const input = { lotId: fill.lotId, lengthId: null, amount: 640, reason: 'damp' };
  for (const _ of [1, 2, 3]) {
    await asking.get('writeOff', input);
    expect(await onHand(asking, fill.itemId)).toEqual([0]);
    await undo(asking);
  }
  expect(await account(asking)).toEqual(before);
});
