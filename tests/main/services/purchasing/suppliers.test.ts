import { describe, expect, test } from 'vitest';
import { newPlan } from '../../../../shared-core/plan/model/new-plan.ts';
import { emptySlot } from '../../../../shared-core/plan/model/coat-plan.ts';
import { type Asking, clothLot, openAsking, taffeta } from '../../asking.ts';

const offer = {
  offerId: null,
  supplier: 'Quillstone Cloth',
  unit: { kind: 'by length', stepMm: 100, widthMm: 1470, leastMm: 300 },
  priceMinor: 1_730,
  pricedOn: '2026-04-02',
} as const;
const quillstone = {
  name: 'Quillstone Cloth',
  deliveryMinor: 690,
  freeFromMinor: 25_000,
  leadDays: 6,
};

/** A supplier as an older file holds it, under the key that it was given then. */
function bookSupplier(asking: Asking, key: string, name: string, facts: readonly (number | null)[]) {
  return asking.beside('INSERT INTO supplier VALUES (?, ?, ?, ?, ?)', key, name, ...facts);
}

describe('suppliers', () => {
  test('are those of the offers, with what is known of their delivery', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    await asking.get('saveOffer', { ...offer, itemId });
    await asking.get('saveOffer', { ...offer, itemId, supplier: 'Marl & Wick' });
    await asking.get('saveSupplier', quillstone);
    await asking.get('saveSupplier', { ...quillstone, name: 'Tallow Lane', leadDays: null });
    expect((await asking.get('listSuppliers', {})).rows).toEqual([
      { name: 'Marl & Wick', facts: null, offerCount: 1 },
      { name: 'Quillstone Cloth', facts: quillstone, offerCount: 1 },
      { name: 'Tallow Lane', facts: { ...quillstone, name: 'Tallow Lane', leadDays: null }, offerCount: 0 },
    ]);
  });

  test('written in another way are the same one, and the later facts hold', async () => {
    const asking = openAsking();
    await asking.get('saveSupplier', quillstone);
    await asking.get('saveSupplier', {
      name: ' quillstone  cloth ',
      deliveryMinor: 720,
      freeFromMinor: null,
      leadDays: 0,
    });
    const { rows } = await asking.get('listSuppliers', {});
    expect(rows).toMatchObject([
      { name: 'quillstone  cloth', facts: { deliveryMinor: 720, freeFromMinor: null, leadDays: 0 } },
    ]);
  });

  test('named in an offer are written as they are known', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    await asking.get('saveSupplier', quillstone);
    await asking.get('saveOffer', { ...offer, itemId, supplier: 'QUILLSTONE cloth' });
    await asking.get('saveOffer', { ...offer, itemId, supplier: 'Marl & Wick' });
    await asking.get('saveOffer', { ...offer, itemId, supplier: 'marl & wick' });
    const { offers } = await asking.get('readItem', { itemId });
    expect(offers.map(({ supplier }) => supplier)).toEqual([
      'Marl & Wick',
      'Marl & Wick',
      'Quillstone Cloth',
    ]);
  });

  test('with accents typed as one letter or as two are one supplier, as they are in a search', async () => {
    const [oneLetter, twoLetters] = ['Café Ærø'.normalize('NFC'), 'CAFE\u0301  Ærø'];
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    await asking.get('receiveLot', { ...clothLot(itemId), supplier: twoLetters });
    await asking.get('saveOffer', { ...offer, itemId, supplier: twoLetters });
    await asking.get('saveSupplier', { ...quillstone, name: oneLetter });
    await asking.get('saveSupplier', { ...quillstone, name: twoLetters, deliveryMinor: 815 });
    expect((await asking.get('listSuppliers', {})).rows).toMatchObject([
      { name: twoLetters, facts: { deliveryMinor: 815 }, offerCount: 1 },
    ]);
    const { rows } = await asking.get('listItems', {
      search: oneLetter,
      kinds: [],
      sortBy: 'name',
      isDescending: false,
      offset: 0,
      limit: 9,
    });
    expect(rows.map(({ name }) => name)).toEqual([taffeta.name]);
  });

  test('written anew in another spelling are written so in all their offers, and in what a plan reads', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    await asking.get('saveOffer', { ...offer, itemId, supplier: 'quillstone cloth' });
    await asking.get('saveSupplier', quillstone);
    await asking.get('saveOffer', { ...offer, itemId, supplier: 'Quillstone CLOTH', leastCount: 4 });
    await asking.get('saveSupplier', { ...quillstone, name: 'Quillstone  Clôth' });
    const spellings = async () =>
      (await asking.get('readItem', { itemId })).offers.map(({ supplier }) => supplier);
    expect(await spellings()).toEqual(['Quillstone  Clôth', 'Quillstone  Clôth']);
    const { planId } = await asking.get('savePlan', {
      plan: {
        ...newPlan('any', 'Fenwalk', '40'),
        quilting: null,
        slots: [{ ...emptySlot('shell', 'shell', 'cloth'), itemId }],
      },
      basedOn: null,
      said: '',
    });
    const { offers, suppliers } = await asking.get('flowInput', { planId });
    expect(
      new Set([...offers.map(({ supplier }) => supplier), ...suppliers.map(({ name }) => name)]),
    ).toEqual(new Set(['Quillstone  Clôth']));
  });

  test('that an older file holds twice are one: the dearer and slower is believed until it is written anew', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    await asking.get('saveOffer', { ...offer, itemId, supplier: 'Cafe Lane' });
    await bookSupplier(asking, 'cafe lane', 'Cafe Lane', [690, 25_000, null]);
    await bookSupplier(asking, 'café lane', 'Café Lane', [420, null, 9]);
    expect((await asking.get('listSuppliers', {})).rows).toEqual([
      {
        name: 'Cafe Lane',
        facts: { name: 'Cafe Lane', deliveryMinor: 690, freeFromMinor: null, leadDays: 9 },
        offerCount: 1,
      },
    ]);
    const saved = { name: 'Café Lane', deliveryMinor: 510, freeFromMinor: 8_000, leadDays: 3 };
    await asking.get('saveSupplier', saved);
    expect((await asking.get('listSuppliers', {})).rows).toEqual([
      { name: 'Café Lane', facts: saved, offerCount: 1 },
    ]);
  });

  test('whose name is but an accent can be written down', async () => {
    const asking = openAsking();
    await asking.get('saveSupplier', { ...quillstone, name: '´' });
    expect((await asking.get('listSuppliers', {})).rows).toMatchObject([{ name: '´' }]);
  });

  test('with a free delivery from nothing on are refused', async () => {
    const problems = await openAsking().refusal('saveSupplier', { ...quillstone, freeFromMinor: 0 });
    expect(problems[0]?.where).toBe('Sum from which delivery is free');
  });
});

describe('offers for many', () => {
  test('keep their breaks and least count, and a plan reads them', async () => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    const breaks = [
      { fromCount: 50, priceMinor: 1_610 },
      { fromCount: 200, priceMinor: 1_490 },
    ];
    await asking.get('saveOffer', { ...offer, itemId, breaks, leastCount: 4 });
    expect((await asking.get('readItem', { itemId })).offers).toMatchObject([{ breaks, leastCount: 4 }]);
  });

  test.each([
    ['in falling order', [200, 50], [1_610, 1_490], 'Price break 2'],
    ['from one unit on', [1], [1_610], 'Price break 1'],
    ['dearer than below', [50], [1_730], 'Price break 1'],
  ])('with breaks %s are refused', async (_, fromCounts, prices, where) => {
    const asking = openAsking();
    const { itemId } = await asking.get('saveItem', taffeta);
    const breaks = fromCounts.map((fromCount, index) => ({ fromCount, priceMinor: prices[index]! }));
    const problems = await asking.refusal('saveOffer', { ...offer, itemId, breaks });
    expect(problems[0]?.where).toBe(where);
  });
});
