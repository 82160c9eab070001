import { describe, expect, test } from 'vitest';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { down, fillLot, openAsking, receivedCloth } from '../../asking.ts';

const everything: CallInput<'listItems'> = {
  search: '',
  kinds: [],
  sortBy: 'name',
  isDescending: false,
  offset: 0,
  limit: 500,
};

describe('the list', () => {
  async function threeItems() {
    const asking = openAsking();
    const { itemId: zip10 } = await asking.get('saveItem', {
      ...down,
      kind: 'fastening',
      name: 'Zip 10',
      place: '',
      facts: {},
    });
    const { itemId: zip9 } = await asking.get('saveItem', {
      ...down,
      kind: 'fastening',
      name: 'zip 9',
      place: 'bin 20',
      facts: {},
    });
    const cloth = await receivedCloth(asking);
    await asking.get('receiveLot', fillLot(zip10, 7));
    const names = async (asked: Partial<CallInput<'listItems'>>) =>
      (await asking.get('listItems', { ...everything, ...asked })).rows.map((row) => row.name);
    return { asking, names, zip9, zip10, cloth };
  }

  test('gives what is on hand, how it lies and what it is worth at what it cost', async () => {
    const { asking, cloth } = await threeItems();
    await asking.get('writeOff', {
      lotId: cloth.lotId,
      lengthId: cloth.remnantId,
      amount: 890,
      reason: 'used',
    });
    const { rows, total } = await asking.get('listItems', { ...everything, kinds: ['cloth'] });
    expect(total).toBe(1);
    expect(rows).toEqual([
      {
        id: cloth.itemId,
        kind: 'cloth',
        name: 'Peatwater taffeta',
        colour: 'moss',
        place: 'shelf B, left',
        onHand: 7310.5,
        reserved: 0,
        lotCount: 1,
        lengthCount: 1,
        valueMinor: 11_005, // 123.45 x 7310.5 / 8200.5
      },
    ]);
  });

  test('is sorted as a maker reads: numbers by size, capitals alike, no place last', async () => {
    const { names } = await threeItems();
    expect(await names({})).toEqual(['Peatwater taffeta', 'zip 9', 'Zip 10']);
    expect(await names({ isDescending: true })).toEqual(['Zip 10', 'zip 9', 'Peatwater taffeta']);
    expect(await names({ sortBy: 'place' })).toEqual(['zip 9', 'Peatwater taffeta', 'Zip 10']);
    expect(await names({ sortBy: 'place', isDescending: true })).toEqual([
      'Peatwater taffeta',
      'zip 9',
      'Zip 10',
    ]);
    expect(await names({ sortBy: 'kind', isDescending: true })).toEqual([
      'zip 9',
      'Zip 10',
      'Peatwater taffeta',
    ]);
    expect(await names({ sortBy: 'onHand' })).toEqual(['zip 9', 'Zip 10', 'Peatwater taffeta']);
    expect(await names({ sortBy: 'value', isDescending: true })).toEqual([
      'Peatwater taffeta',
      'Zip 10',
      'zip 9',
    ]);
  });

  test('is cut to a window, and the total stays whole', async () => {
    const { asking } = await threeItems();
    const { rows, total } = await asking.get('listItems', { ...everything, offset: 1, limit: 1 });
    expect([rows.map((row) => row.name), total]).toEqual([['zip 9'], 3]);
    expect(await asking.get('listItems', { ...everything, offset: 30 })).toEqual({ rows: [], total: 3 });
  });

  test('is searched in name, colour, place, supplier and dye lot, every word, with or without accents', async () => {
    const { names } = await threeItems();
    for (const search of ['PEATWATER', 'taff moss', 'shelf b', 'quillstöne', 'p-2207', 'Móss p-22']) {
      expect([search, await names({ search, kinds: ['cloth'] })]).toEqual([search, ['Peatwater taffeta']]);
    }
    expect(await names({ search: 'taffeta rust' })).toEqual([]);
    expect(await names({ search: '%' })).toEqual([]);
    expect(await names({ search: 'moss shelf', kinds: ['fastening'] })).toEqual([]);
    expect(await names({ search: 'Quillstone' })).toEqual(['Peatwater taffeta', 'Zip 10']);
  });
});
