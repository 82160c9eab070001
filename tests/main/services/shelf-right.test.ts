import { describe, expect, test } from 'vitest';
import { emptySlot } from '../../../shared-core/plan/model/coat-plan.ts';
import { fillLot, openAsking, receivedCloth, receivedFill, taffeta } from '../asking.ts';

const page = {
  search: '',
  kinds: [] as never[],
  sortBy: 'name',
  isDescending: false,
  offset: 0,
  limit: 9,
} as const;

describe('a stock-take', () => {
  test('books what differs, many at once, and says how many', async () => {
    const asking = openAsking();
    const cloth = await receivedCloth(asking);
    const fill = await receivedFill(asking, 640);
    const counts = [
      { lotId: cloth.lotId, lengthId: cloth.cutId, counted: 7100 },
      { lotId: cloth.lotId, lengthId: cloth.remnantId, counted: 890 },
      { lotId: fill.lotId, lengthId: null, counted: 655.5 },
    ];
    expect(await asking.get('takeStock', { counts, reason: 'stock-take' })).toEqual({
      correctedCount: 2,
      releasedFrom: [],
    });
    const { shelves } = await asking.get('readShelf', { itemIds: [fill.itemId, cloth.itemId] });
    expect(shelves.map((shelf) => shelf.lots.map((lot) => lot.onHand))).toEqual([[655.5], [7990]]);
    const { movements } = await asking.get('readItem', { itemId: cloth.itemId });
    expect(movements[0]).toMatchObject({ kind: 'corrected', onHandMilli: -210_500, reason: 'stock-take' });
  });

  test('with one count that cannot be is refused whole', async () => {
    const asking = openAsking();
    const cloth = await receivedCloth(asking);
    const counts = [
      { lotId: cloth.lotId, lengthId: cloth.cutId, counted: 5000 },
      { lotId: cloth.lotId, lengthId: cloth.remnantId, counted: 2e6 },
      { lotId: cloth.lotId, lengthId: null, counted: 3 },
    ];
    const problems = await asking.refusal('takeStock', { counts, reason: 'stock-take' });
    expect(problems.map((problem) => problem.what)).toEqual(['is too long to be true', 'is not named']);
  });
});

describe('an item put away', () => {
  test('is out of the list and of what coats are offered, and can be brought back with its lots', async () => {
    const asking = openAsking();
    const cloth = await receivedCloth(asking);
    const fill = await receivedFill(asking, 640);
    const names = async (isPutAway?: boolean) =>
      (await asking.get('listItems', { ...page, ...(isPutAway !== undefined && { isPutAway }) })).rows.map(
        (row) => [row.name, row.onHand],
      );
    await asking.get('archiveItem', { itemId: fill.itemId, isPutAway: true });
    expect(await names()).toEqual([['Peatwater taffeta', 8200.5]]);
    expect(await names(true)).toEqual([['Fenwalk down', 640]]);
    expect((await asking.get('readItem', { itemId: fill.itemId })).isPutAway).toBe(true);
    expect((await asking.refusal('receiveLot', fillLot(fill.itemId, 5)))[0]?.what).toBe(
      'is not in the stash',
    );
    await asking.get('archiveItem', { itemId: fill.itemId, isPutAway: false });
    expect(await names(true)).toEqual([]);
    expect((await asking.get('readItem', { itemId: fill.itemId })).isPutAway).toBe(false);
    await asking.get('receiveLot', fillLot(fill.itemId, 5));
    expect(await names(false)).toHaveLength(2);
    expect(cloth.itemId).not.toBe(fill.itemId);
  });

  test('does not come back beside another of the same name', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    await asking.get('archiveItem', { itemId, isPutAway: true });
    await asking.get('saveItem', { ...taffeta, name: 'PEATWATER taffeta' });
    expect((await asking.refusal('archiveItem', { itemId, isPutAway: false }))[0]?.what).toBe(
      'is that of another cloth by now',
    );
  });

  test('is not put away while a coat has some of it set aside', async () => {
    const asking = openAsking();
    const cloth = await receivedCloth(asking);
    const plan = {
      id: 'new',
      name: 'Fen coat',
      size: '',
      coatCount: 1,
      slots: [{ ...emptySlot('shell', 'shell', 'cloth'), itemId: cloth.itemId }],
      pieces: [],
      seams: [],
      quilting: null,
      clearanceMm: 2,
      threadWastageRatio: 0.15,
      sewingMinutesPerCoat: 540,
      notes: '',
    };
    const { planId } = await asking.get('savePlan', { plan, basedOn: null, said: '' });
    await asking.get('setAside', {
      planId,
      uses: [{ lotId: cloth.lotId, lengthId: cloth.cutId, amount: 40 }],
    });
    const refusal = await asking.refusal('archiveItem', { itemId: cloth.itemId, isPutAway: true });
    expect(refusal[0]?.what).toBe('is set aside for Fen coat');
  });
});
