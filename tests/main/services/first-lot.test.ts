import { describe, expect, test } from 'vitest';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { type Asking, clothLot, down, fillLot, openAsking, taffeta } from '../asking.ts';

const { itemId: _cloth, ...roll } = clothLot('');
const { itemId: _fill, ...bag } = fillLot('', 640);

async function onShelf(asking: Asking, itemId: string) {
  const { shelf, movements } = await asking.get('readItem', { itemId });
  return { lots: shelf.lots, movements };
}

describe('a new item with its first purchase', () => {
  test('lies on the shelf at once, with its lot, its lengths and their ledger', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', { ...taffeta, firstLot: roll });
    const { lots, movements } = await onShelf(asking, itemId);
    expect(lots).toMatchObject([
      { receivedOn: '2026-03-27', supplier: 'Quillstone Cloth', dyeLot: 'P-2207', priceMinor: 12_345 },
    ]);
    expect(lots[0]!.lengths.map(({ onHandMm }) => onHandMm)).toEqual([7310.5, 890]);
    expect(movements.map(({ kind }) => kind)).toEqual(['received', 'received']);
  });

  test('of a kind without lengths has an amount', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', { ...down, firstLot: bag });
    expect((await onShelf(asking, itemId)).movements).toMatchObject([{ onHandMilli: 640_000 }]);
  });

  test('is there whole or not at all, and every problem of both is told at once', async () => {
    const asking = openAsking();
    const problems = await asking.refusal('saveItem', {
      ...taffeta,
      facts: { widthMm: 1470, arealMassGPerM2: 9000 },
      firstLot: { ...roll, amount: 3 },
    });
    expect(problems.map(({ where }) => where)).toEqual([
      'Weight of Peatwater taffeta',
      'Amount of Peatwater taffeta',
    ]);
    expect((await asking.get('workshopFacts', {})).itemCount).toBe(0);
    const [misread] = await asking.refusal('saveItem', {
      ...taffeta,
      firstLot: { ...roll, receivedOn: '31.2.2026' },
    });
    expect(problemSentence(misread!)).toContain('Date received is not a date');
  });

  test('is no way to receive more of an item that is there', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    const [problem] = await asking.refusal('saveItem', { ...taffeta, itemId, firstLot: roll });
    expect(problem).toMatchObject({ where: 'First purchase of Peatwater taffeta' });
  });
});
