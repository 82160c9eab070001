import { describe, expect, it } from 'vitest';
import type { SellingUnit } from '../../../shared-core/stash/offer.ts';
import { bySupplier, shoppingText, unitsWords } from '../../../shared-core/to-buy/shopping-list.ts';
import type { ToBuyLine } from '../../../shared-core/to-buy/to-buy.ts';
import { toBuyList } from '../../fixtures/small-workshop.ts';
import { byTenth, list, metric, sources, spool } from './small-list.ts';

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
    expect(shoppingText(sources, toBuyList([list.lines[0]!]), metric).split('\n')).toEqual([
      'Tallow Lane',
      '  shell item: 4.3 m of 1.47 m width, 49.45 EUR (shell, facing)',
      '  together 49.45 EUR',
      'In all 49.45 EUR',
    ]);
  });

  it('says what no offer closes and what is still to be chosen', () => {
    const text = shoppingText(
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
    expect(text).toContain('Still to be chosen: facing, cord.');
    expect(text).toContain('No offer closes the gap of shell item (shell).');
  });

  it('says so when nothing is missing', () => {
    expect(shoppingText(sources, toBuyList([]), metric)).toBe('Nothing: the stash covers the plan.');
  });
});
