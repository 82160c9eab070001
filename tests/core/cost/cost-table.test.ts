import Papa from 'papaparse';
import { expect, test } from 'vitest';
import type { CostSheet } from '../../../shared-core/cost/cost.ts';
import { costTable } from '../../../shared-core/cost/cost-table.ts';
import { priceSheet } from '../../../shared-core/cost/price.ts';
import { tableCsv } from '../../../shared-core/paper/table-csv.ts';
import { tableText } from '../../../shared-core/paper/table-text.ts';
import { clothLot, item, lot, onShelf, plan, slot } from '../../fixtures/small-workshop.ts';

const coat = plan({
  coatCount: 3,
  slots: [slot('shell', 'cloth'), slot('thread', 'thread'), slot('cord', 'fastening', { itemId: null })],
});
const shelf = [
  onShelf(item('cloth', 'shell item'), clothLot('shell item', 'P-2207', 1400, [3500], 7000)),
  onShelf(item('thread', 'thread item'), lot('thread item', 'autumn', 1000, 700, 500, '2026-03-02')),
];
const sheet: CostSheet = {
  lines: [
    {
      slotId: 'shell',
      parts: [
        { lotId: 'P-2207', amount: 2100, costMinor: 4200 },
        { lotId: null, amount: 1300, costMinor: 1495 },
      ],
      costMinor: 5695,
      wasteMinor: 1139,
      trimmings: null,
      isIncomplete: false,
    },
    {
      slotId: 'thread',
      parts: [{ lotId: 'autumn', amount: 640, costMinor: 320 }],
      costMinor: 320,
      wasteMinor: 0,
      trimmings: null,
      isIncomplete: false,
    },
    { slotId: 'cord', parts: [], costMinor: 0, wasteMinor: 0, trimmings: null, isIncomplete: true },
  ],
  batchMinor: 6015,
  perCoatMinor: [2005, 2005, 2005],
  isIncomplete: true,
};
const metric = { system: 'metric', currency: 'EUR' } as const;
const prices = priceSheet({ ...coat, labourMinutesPerCoat: 90 }, sheet, {
  hourlyRateMinor: 2400,
  overhead: null,
  wholesale: { kind: 'margin', ratio: 0.4 },
  retail: { kind: 'mark-up', ratio: 1.2 },
});

test('the sheet says what each slot takes, from which lots, and what of it is waste', () => {
  const text = tableText(costTable({ plan: coat, shelf }, sheet, prices, metric));
  expect(text).toMatch(
    /Shell +3\.4 m +lot of 14 Sept 2026, dye lot P-2207: 2\.1 m; to buy: 1\.3 m +11\.39 EUR +56\.95 EUR/,
  );
  expect(text).toMatch(/Thread +640 m +lot of 2 Mar 2026 +3\.20 EUR/);
  expect(text).toMatch(/Cord +no price yet\n +nothing chosen/);
  expect(text).toMatch(/The batch +11\.39 EUR +60\.15 EUR/);
  expect(text).toContain('Not the whole cost');
});

test('one coat goes from its material over work to its prices, each with its formula', () => {
  const { sections } = costTable({ plan: coat, shelf }, sheet, prices, metric);
  // 20.05 and 1.5 hours at 24.00 are 56.05; by 0.6 that is 93.42; and 120 % on top 205.52.
  expect(sections[1]?.rows.map(([name, , how, , amount]) => [name, how, amount])).toEqual([
    ['Material', 'the batch by 3', { text: '20.05 EUR', fileText: '20.05' }],
    ['Work', '1:30 h as the maker estimates', { text: '36.00 EUR', fileText: '36.00' }],
    ['Overhead', 'left out', { text: '0.00 EUR', fileText: '0.00' }],
    ['Cost', '', { text: '56.05 EUR', fileText: '56.05' }],
    ['Wholesale', 'cost ÷ (1 − 40 %)', { text: '93.42 EUR', fileText: '93.42' }],
    ['Retail', 'wholesale × (1 + 120 %)', { text: '205.52 EUR', fileText: '205.52' }],
  ]);
  expect(costTable({ plan: coat, shelf }, sheet, null, metric).sections[1]?.rows).toHaveLength(1);
});

test('in a spreadsheet amounts of money are plain numbers', () => {
  const csv = tableCsv(costTable({ plan: coat, shelf }, sheet, prices, metric));
  const { data, errors } = Papa.parse<Record<string, string>>(csv, { header: true });
  expect(errors).toEqual([]);
  expect(data[0]).toMatchObject({ part: 'Material of the batch', slot: 'Shell', 'cost (EUR)': '56.95' });
});
