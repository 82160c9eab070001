import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { tableCsv } from '../../../shared-core/paper/table-csv.ts';
import { tableText } from '../../../shared-core/paper/table-text.ts';
import { shoppingTable } from '../../../shared-core/to-buy/shopping-table.ts';
import type { ToBuyLine } from '../../../shared-core/to-buy/to-buy.ts';
import { toBuyList } from '../../fixtures/small-workshop.ts';
import { list, metric, sources } from './small-list.ts';

test('in a spreadsheet each line is a row, with prices as plain numbers and their currency in the head', () => {
  const { data, errors } = Papa.parse<Record<string, string>>(
    tableCsv(shoppingTable(sources, list, metric)),
    {
      header: true,
    },
  );
  expect(errors).toEqual([]);
  expect(data.map((row) => row['price (EUR)'])).toEqual(['11.70', '49.45', '0.70']);
  expect(data[1]).toEqual({
    supplier: 'Tallow Lane',
    item: 'shell item',
    'for slots': 'shell, facing',
    buy: '4.3 m of 1.47 m width',
    units: '43',
    'price each (EUR)': '1.15',
    'price (EUR)': '49.45',
    'priced on': '2026-10-02',
  });
  expect(data[0]?.item).toBe(`'=HYPERLINK("http://127.0.0.1/","thread")`);
  expect(data[2]?.item).toBe('Cord, "springy"\n5 mm');
});

test('on paper each supplier has its sum, and the end the sum of all', () => {
  const table = shoppingTable(sources, list, metric);
  expect(table.sections.map(({ title, total }) => [title, total?.[6]])).toEqual([
    ['Fernlow, "Trimmings"', { text: '11.70 EUR', fileText: '11.70' }],
    ['Tallow Lane', { text: '50.15 EUR', fileText: '50.15' }],
  ]);
  expect(tableText(table)).toMatch(/In all +61\.85 EUR$/);
});

test('what a delivery costs is a row of its supplier and part of every sum', () => {
  const table = shoppingTable(
    sources,
    {
      ...list,
      deliveries: [
        {
          supplier: 'Tallow Lane',
          goodsMinor: 5_015,
          deliveryMinor: 390,
          isFree: false,
          isKnown: true,
          leadDays: 5,
        },
      ],
      deliveryMinor: 390,
      payMinor: list.totalMinor + 390,
    },
    metric,
  );
  const tallow = table.sections[1];
  expect([tallow?.rows.length, tallow?.rows.at(-1)?.[1], tallow?.total?.[6]]).toEqual([
    3,
    'Delivery',
    { text: '54.05 EUR', fileText: '54.05' },
  ]);
  expect(tableText(table)).toMatch(/In all +65\.75 EUR$/);
});

test('what no offer closes and what is still to be chosen is said below', () => {
  const { notes } = shoppingTable(
    sources,
    toBuyList(
      [],
      [
        { slotIds: ['facing', 'cord'], itemId: null, why: 'no item chosen' },
        { slotIds: ['shell'], itemId: 'shell item' as ToBuyLine['itemId'], why: 'no offer' },
      ],
    ),
    metric,
  );
  expect(notes).toEqual([
    'Still to be chosen: facing, cord.',
    'No offer closes the gap of shell item (shell).',
  ]);
});

test('aisle by aisle, like things stand together, each with its supplier, deliveries at the end', () => {
  const deliveries = [
    {
      supplier: 'Tallow Lane',
      goodsMinor: 5015,
      deliveryMinor: 690,
      isFree: false,
      isKnown: true,
      leadDays: 4,
    },
  ];
  const brought = { ...list, deliveries, deliveryMinor: 690, payMinor: list.totalMinor + 690 };
  const ticked = new Set([list.lines[2]!.offer.id]);
  const table = shoppingTable(sources, brought, metric, { arrangement: 'aisle', ticked });
  expect(table.sections.map(({ title, rows }) => [title, rows.length])).toEqual([
    ['Cloths', 1],
    ['Threads', 1],
    ['Fastenings and notions', 1],
    ['Deliveries', 1],
  ]);
  const text = tableText(table);
  expect(text).toMatch(/\[ \] +shell item +4\.3 m of 1\.47 m width +shell, facing +Tallow Lane +49\.45 EUR/);
  expect(text).toMatch(/\[x\] +Cord, "springy" 5 mm/);
  expect(text).toMatch(/\n +Tallow Lane +6\.90 EUR/);
  expect(text).toMatch(/In all +68\.75 EUR$/);
  expect(Papa.parse(tableCsv(table)).data[0]).toContain('supplier');
});
