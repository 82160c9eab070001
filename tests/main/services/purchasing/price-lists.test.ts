import { expect, test } from 'vitest';
import { openAsking, taffeta } from '../../asking.ts';

const heads = 'supplier,item,sold as,step or length (cm),width (cm),price (EUR),priced on,breaks';
const line = (supplier: string, price: string) =>
  `${supplier},Peatwater taffeta,by length,10,147,${price},2026-10-12,15 m = 0.98`;
const text = (...lines: string[]) => [heads, ...lines].join('\n');

test('a list is looked at first, then brought in whole, and says nothing new the second time', async () => {
  const asking = openAsking();
  const { itemId } = await asking.get('saveItem', taffeta);
  await asking.get('saveSupplier', {
    name: 'Marl & Wick',
    deliveryMinor: 850,
    freeFromMinor: null,
    leadDays: 4,
  });
  const list = text(line('marl & wick', '1.15'), line('Quillstone', '1.09'));
  const { rows, problems } = await asking.get('checkPriceList', { text: list });
  expect([rows.map(({ does }) => does), problems]).toEqual([['adds', 'adds'], []]);
  expect((await asking.get('readItem', { itemId })).offers).toEqual([]);

  expect(await asking.get('bringInPriceList', { text: list })).toEqual({ addedCount: 2, changedCount: 0 });
  const { offers } = await asking.get('readItem', { itemId });
  expect(offers.map(({ supplier, priceMinor, breaks }) => [supplier, priceMinor, breaks])).toEqual([
    ['Marl & Wick', 115, [{ fromCount: 150, priceMinor: 98 }]],
    ['Quillstone', 109, [{ fromCount: 150, priceMinor: 98 }]],
  ]);
  expect(await asking.get('bringInPriceList', { text: list })).toEqual({ addedCount: 0, changedCount: 0 });

  const dearer = text(line('Quillstone', '1.21'));
  expect(await asking.get('bringInPriceList', { text: dearer })).toEqual({ addedCount: 0, changedCount: 1 });
  const saved = await asking.get('priceList', {});
  expect((await asking.get('checkPriceList', saved)).rows.map(({ does }) => does)).toEqual([
    'nothing new',
    'nothing new',
  ]);
});

test('one line amiss keeps the whole list out', async () => {
  const asking = openAsking();
  await asking.get('saveItem', taffeta);
  const problems = await asking.refusal('bringInPriceList', {
    text: text(line('Marl & Wick', '1.15'), line('Quillstone', 'dear')),
  });
  expect(problems.map(({ where }) => where)).toEqual(['Line 3, column price']);
});

test('the list of the workshop is read back whole: cloth in two colours, names with leading signs', async () => {
  const asking = openAsking();
  for (const [name, colour, priceMinor] of [
    ['+Fenny lawn', 'moss', 730],
    ['+Fenny lawn', '-rust', 810],
    ['=Fenny lawn', '', 920],
    ["'@Fenny lawn", '@', 1_040],
  ] as const) {
    const { itemId } = await asking.get('saveItem', { ...taffeta, name, colour });
    await asking.get('saveOffer', {
      offerId: null,
      itemId,
      supplier: '@Quillstone',
      unit: { kind: 'by length', stepMm: 114.3, widthMm: 1473.2, leastMm: 250 },
      priceMinor,
      pricedOn: '2026-10-12',
      leastCount: 3,
    });
  }
  const before = await asking.rows();
  const list = await asking.get('priceList', {});
  expect(await asking.get('bringInPriceList', list)).toEqual({ addedCount: 0, changedCount: 0 });
  expect(await asking.rows()).toBe(before);
});
