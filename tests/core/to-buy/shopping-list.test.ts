import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { SellingUnit } from '../../../shared-core/stash/offer.ts';
import {
  bySupplier,
  shoppingCsv,
  shoppingText,
  unitsWords,
} from '../../../shared-core/to-buy/shopping-list.ts';
import type { ToBuy, ToBuyLine } from '../../../shared-core/to-buy/to-buy.ts';
import { item, offer, onShelf, plan, slot } from '../../fixtures/small-workshop.ts';

const metric = { system: 'metric', currency: 'EUR' } as const;

function line(
  itemId: string,
  supplier: string,
  unit: SellingUnit,
  unitCount: number,
  priceEachMinor: number,
  slotIds: readonly string[] = [itemId.replace(' item', '')],
): ToBuyLine {
  return {
    itemId: itemId as ToBuyLine['itemId'],
    slotIds,
    offer: offer(itemId, `${itemId} of ${supplier}`, unit, priceEachMinor, supplier),
    unitCount,
    boughtAmount: 0,
    usedAmount: 0,
    priceMinor: unitCount * priceEachMinor,
    alternatives: [],
  };
}

const coat = plan({
  slots: [
    slot('shell', 'cloth'),
    slot('facing', 'cloth'),
    slot('thread', 'thread'),
    slot('cord', 'fastening'),
  ],
});
const shelf = [
  onShelf(item('cloth', 'shell item')),
  onShelf({ ...item('thread', 'thread item'), name: '=HYPERLINK("http://127.0.0.1/","thread")' }),
  onShelf({ ...item('fastening', 'cord item'), name: 'Cord, "springy"\n5 mm' }),
];
const sources = { plan: coat, shelf };

const byTenth: SellingUnit = { kind: 'by length', widthMm: 1473, stepMm: 100, leastMm: 500 };
const spool: SellingUnit = { kind: 'spool', threadM: 1000 };

const list: ToBuy = {
  lines: [
    line('shell item', 'Tallow Lane', byTenth, 43, 115, ['shell', 'facing']),
    line('thread item', 'Fernlow, "Trimmings"', spool, 2, 585),
    line('cord item', 'Tallow Lane', { kind: 'each', lengthMm: null }, 1, 70),
  ],
  unbuyable: [],
  totalMinor: 43 * 115 + 2 * 585 + 70,
};

describe('units as the shop sells them', () => {
  it.each<[SellingUnit, number, string, string]>([
    [byTenth, 43, '4.3 m of 1.47 m width', '4.7 yd of 58 in width'],
    [{ kind: 'sheet', widthMm: 1150, lengthMm: 1500 }, 3, '3 sheets of 1.15 m x 1.5 m', ''],
    [{ kind: 'sheet', widthMm: 1150, lengthMm: 1500 }, 1, '1 sheet of 1.15 m x 1.5 m', ''],
    [spool, 2, '2 spools of 1000 m', ''],
    [spool, 1, '1 spool of 1000 m', ''],
    [{ kind: 'by mass', stepG: 50, leastG: 100 }, 7, '350 g', ''],
    [{ kind: 'pack', pieceCount: 12 }, 4, '4 packs of 12', '4 packs of 12'],
    [{ kind: 'pack', pieceCount: 12 }, 1, '1 pack of 12', '1 pack of 12'],
    [{ kind: 'each', lengthMm: null }, 1, '1 piece', '1 piece'],
    [{ kind: 'each', lengthMm: null }, 6, '6 pieces', '6 pieces'],
  ])('%o, %i of them', (unit, unitCount, inMetric, inImperial) => {
    expect(unitsWords(unit, unitCount, 'metric')).toBe(inMetric);
    if (inImperial !== '') expect(unitsWords(unit, unitCount, 'imperial')).toBe(inImperial);
  });

  it('a zip sold by its length says it', () => {
    expect(unitsWords({ kind: 'each', lengthMm: 650 }, 2, 'metric')).toBe('2 pieces of 650 mm');
  });

  it('yards are said in eighths where they are sold in eighths', () => {
    const eighth: SellingUnit = { kind: 'by length', widthMm: 1473.2, stepMm: 114.3, leastMm: 114.3 };
    expect(unitsWords(eighth, 13, 'imperial')).toBe('1 5/8 yd of 58 in width');
  });
});

describe('the list by supplier', () => {
  it('names suppliers in their order, keeps the order of the lines, and adds up', () => {
    expect(
      bySupplier(list).map(({ supplier, lines, totalMinor }) => [
        supplier,
        lines.map(({ itemId }) => itemId),
        totalMinor,
      ]),
    ).toEqual([
      ['Fernlow, "Trimmings"', ['thread item'], 1170],
      ['Tallow Lane', ['shell item', 'cord item'], 5015],
    ]);
  });
});

describe('the list as text', () => {
  it('gives each supplier a block, its sum, and the sum of all', () => {
    expect(
      shoppingText(sources, { ...list, lines: [list.lines[0]!], totalMinor: 4945 }, metric).split('\n'),
    ).toEqual([
      'Tallow Lane',
      '  shell item: 4.3 m of 1.47 m width, 49.45 EUR (shell, facing)',
      '  together 49.45 EUR',
      'In all 49.45 EUR',
    ]);
  });

  it('says what no offer closes and what is still to be chosen', () => {
    const text = shoppingText(
      sources,
      {
        lines: [],
        totalMinor: 0,
        unbuyable: [
          { slotIds: ['facing', 'cord'], itemId: null, why: 'no item chosen' },
          { slotIds: ['shell'], itemId: 'shell item' as ToBuyLine['itemId'], why: 'no offer' },
        ],
      },
      metric,
    );
    expect(text).toContain('Still to be chosen: facing, cord.');
    expect(text).toContain('No offer closes the gap of shell item (shell).');
  });

  it('says so when nothing is missing', () => {
    expect(shoppingText(sources, { lines: [], unbuyable: [], totalMinor: 0 }, metric)).toBe(
      'Nothing: the stash covers the plan.',
    );
  });
});

describe('the list as a table for a spreadsheet', () => {
  const rows = () => Papa.parse<Record<string, string>>(shoppingCsv(sources, list, metric), { header: true });

  it('has one row a line, with prices as plain numbers and their currency in the head', () => {
    expect(rows().errors).toEqual([]);
    expect(rows().data.map((row) => row['price (EUR)'])).toEqual(['11.70', '49.45', '0.70']);
    expect(rows().data[1]).toEqual({
      supplier: 'Tallow Lane',
      item: 'shell item',
      'for slots': 'shell, facing',
      buy: '4.3 m of 1.47 m width',
      units: '43',
      'price each (EUR)': '1.15',
      'price (EUR)': '49.45',
      'priced on': '2026-10-02',
    });
  });

  it('keeps commas, quotes and line breaks inside their cell', () => {
    expect(rows().data[0]?.supplier).toBe('Fernlow, "Trimmings"');
    expect(rows().data[2]?.item).toBe('Cord, "springy"\n5 mm');
    expect(shoppingCsv(sources, list, metric)).toContain('"Cord, ""springy""\n5 mm"');
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1'])(
    'a name that a spreadsheet would run is kept as text: %j',
    (name) => {
      const named = [onShelf({ ...item('thread', 'thread item'), name }), ...shelf.slice(0, 1)];
      const csv = shoppingCsv(
        { plan: coat, shelf: named },
        { ...list, lines: [line('thread item', name, spool, 1, 585)] },
        metric,
      );
      const row = Papa.parse<Record<string, string>>(csv, { header: true }).data[0];
      expect(row?.item).toBe(`'${name}`);
      expect(row?.supplier).toBe(`'${name}`);
    },
  );

  it('names its columns, the currency with the prices', () => {
    const csv = shoppingCsv(sources, list, { system: 'metric', currency: 'GBP' });
    expect(csv.split('\r\n')[0]).toBe(
      'supplier,item,for slots,buy,units,price each (GBP),price (GBP),priced on',
    );
  });
});
