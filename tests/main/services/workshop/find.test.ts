import { describe, expect, test } from 'vitest';
import { newPlan } from '../../../../shared-core/plan/model/new-plan.ts';
import { itemCode } from '../../../../shared-core/stash/item-code.ts';
import { openAsking, taffeta } from '../../asking.ts';

const offer = {
  offerId: null,
  supplier: 'Quillstone Cloth',
  unit: { kind: 'by length', stepMm: 100, widthMm: 1470, leastMm: 300 },
  priceMinor: 1_730,
  pricedOn: '2026-04-02',
} as const;

async function workshop() {
  const asking = openAsking();
  const { itemId } = await asking.get('saveItem', taffeta);
  await asking.get('saveOffer', { ...offer, itemId });
  const plan = newPlan('plan-1', 'Taffrail coat', '40');
  await asking.get('savePlan', { plan, basedOn: null, said: 'Made.' });
  return { asking, itemId };
}

describe('the search for everything', () => {
  test('finds the item, its offer, the coat and the supplier from the first letters', async () => {
    const { asking, itemId } = await workshop();
    const { finds } = await asking.get('find', { text: 'taff' });
    expect(finds.map(({ kind }) => kind)).toEqual(['item', 'coat', 'offer']);
    expect(finds[0]).toMatchObject({ itemId, name: taffeta.name });
    expect((await asking.get('find', { text: 'QUILLSTONE' })).finds).toContainEqual({
      kind: 'supplier',
      name: 'Quillstone Cloth',
    });
  });

  test('opens the item of a shelf label’s code, and finds nothing for the code of another workshop', async () => {
    const { asking, itemId } = await workshop();
    const { finds } = await asking.get('find', { text: itemCode(itemId) });
    expect(finds).toMatchObject([{ kind: 'item', itemId, name: taffeta.name }]);
    const other = itemCode('00000000-0000-4000-8000-000000000000');
    expect((await asking.get('find', { text: other })).finds).toEqual([]);
  });

  test('wants every word, in any order, and finds nothing for blanks', async () => {
    const { asking } = await workshop();
    const found = await asking.get('find', { text: 'quillstone taff' });
    expect(found.finds.map(({ kind }) => kind)).toEqual(['offer']);
    expect((await asking.get('find', { text: 'taff nowhere' })).finds).toEqual([]);
    expect((await asking.get('find', { text: '  ' })).finds).toEqual([]);
  });

  test('takes a per cent sign and quotes as letters', async () => {
    const { asking } = await workshop();
    expect((await asking.get('find', { text: "%' OR 1=1 --" })).finds).toEqual([]);
  });
});
