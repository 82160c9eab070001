import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type PriceListSources, readPriceList } from '../../../shared-core/exchange/price-list.ts';
import { priceListCsv } from '../../../shared-core/exchange/price-list-write.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import type { Offer, SellingUnit } from '../../../shared-core/stash/offer.ts';
import { item, offer } from '../../fixtures/small-workshop.ts';

const items = [
  { ...item('cloth', 'c1'), name: 'Peatwater nylon' },
  { ...item('batting', 'b1'), name: 'Woolmere sheet' },
  { ...item('thread', 't1'), name: 'Ropewalk spun 40' },
  { ...item('fill', 'f1'), name: 'Downdrift duck' },
  { ...item('fastening', 'z1'), name: 'Clasper zip, "long"' },
];
const sources: PriceListSources = { items, offers: [], currency: 'EUR' };
const heads =
  'supplier,item,sold as,step or length (cm),width (cm),thread (m),mass (g),pieces,at least (cm),price (EUR),priced on,breaks';
const read = (lines: readonly string[], more: Partial<PriceListSources> = {}) =>
  readPriceList([heads, ...lines].join('\r\n'), { ...sources, ...more });
const sentences = (lines: readonly string[]) => read(lines).problems.map(problemSentence);

describe('a price list', () => {
  it('is read line by line, each with the unit it is sold in', () => {
    const { rows, problems } = read([
      'Quillstone Cloth,peatwater nylon,by length,10,147,,,,50,1.15,2026-10-12,15 m = 1.08; 3000 cm = 1.02',
      'Lanternhill,Woolmere sheet,sheet,228.6,72 in,,,,,36.50,2026-10-14,',
      'Fernlow,Ropewalk spun 40,Spool,,,1000,,,3,5.85,2026-10-09,6 = 5.25',
      'Lanternhill,Downdrift duck,by mass,,,,100,,200 g,7.45,2026-10-14,',
      'Fernlow,"Clasper zip, ""long""",each,32 in,,,,,,8.95,2026-10-09,',
    ]);
    expect(problems).toEqual([]);
    expect(rows.map(({ line, does, offer: of }) => [line, does, of])).toEqual([
      [
        2,
        'adds',
        {
          id: '',
          itemId: 'c1',
          supplier: 'Quillstone Cloth',
          unit: { kind: 'by length', stepMm: 100, widthMm: 1470, leastMm: 500 },
          priceMinor: 115,
          pricedOn: '2026-10-12',
          breaks: [
            { fromCount: 150, priceMinor: 108 },
            { fromCount: 300, priceMinor: 102 },
          ],
        },
      ],
      [3, 'adds', expect.objectContaining({ unit: { kind: 'sheet', lengthMm: 2286, widthMm: 1828.8 } })],
      [4, 'adds', expect.objectContaining({ leastCount: 3, breaks: [{ fromCount: 6, priceMinor: 525 }] })],
      [5, 'adds', expect.objectContaining({ unit: { kind: 'by mass', stepG: 100, leastG: 200 } })],
      [6, 'adds', expect.objectContaining({ unit: { kind: 'each', lengthMm: 812.8 } })],
    ]);
  });

  it('says what it would change, and what it says nothing new about', () => {
    const unit: SellingUnit = { kind: 'spool', threadM: 1000 };
    const known = { ...offer('t1', 'o7', unit, 585, 'fernlow'), pricedOn: '2026-10-09' };
    const { rows } = read(['Fernlow,Ropewalk spun 40,spool,,,1000,,,,6.10,2026-11-02,'], { offers: [known] });
    expect(rows).toMatchObject([{ does: 'changes', before: known, offer: { id: 'o7', priceMinor: 610 } }]);
    const same = read(['Fernlow,Ropewalk spun 40,spool,,,1000,,,,5.85,2026-10-09,'], { offers: [known] });
    expect(same.rows[0]?.does).toBe('nothing new');
  });

  it('comes from spreadsheets with semicolons, and without the columns that nothing needs', () => {
    const { rows, problems } = readPriceList(
      '\uFEFFItem;Supplier;Thread (m);Sold as;Price;Priced on\nRopewalk spun 40;Fernlow;500;spool;3,40;2026-10-09\n\n',
      sources,
    );
    expect(problems).toEqual([]);
    expect(rows).toMatchObject([{ offer: { priceMinor: 340, unit: { threadM: 500 } } }]);
  });

  it.each([
    [
      'Fernlow,Ropewalk spun 41,spool,,,1000,,,,5.85,2026-10-09,',
      'Line 2, column item names "Ropewalk spun 41", which is not in the stash.',
    ],
    [
      'Fernlow,Ropewalk spun 40,pack,,,1000,,,,5.85,2026-10-09,',
      'Line 2, column sold as is "pack", which does not suit. Write one of: spool.',
    ],
    ['Fernlow,Ropewalk spun 40,spool,,,,,,,5.85,2026-10-09,', 'Line 2, column thread is empty.'],
    [
      'Fernlow,Ropewalk spun 40,spool,,,1000,,,,free,2026-10-09,',
      'Line 2, column price says "free", which is not an amount of money.',
    ],
    [
      'Fernlow,Ropewalk spun 40,spool,,,1000,,,,5.85,9 Oct 2026,',
      'Line 2, column priced on is "9 Oct 2026", which is not a date.',
    ],
    [',Ropewalk spun 40,spool,,,1000,,,,5.85,2026-10-09,', 'Line 2, column supplier is empty.'],
    [
      'Fernlow,Ropewalk spun 40,spool,,,1000,,,,5.85,2026-10-09,6: 5.25',
      'Line 2, column breaks has "6: 5.25", which is no price break.',
    ],
    [
      'Fernlow,Ropewalk spun 40,spool,,,1000,,,,5.85,2026-10-09,6 = 6.25',
      'Line 2, column breaks: Price break 1 is not cheaper than what is paid below it.',
    ],
  ])('a line that cannot be read is named: %s', (line, sentence) => {
    const said = sentences([line]);
    expect(said).toHaveLength(1);
    expect(said[0]).toContain(sentence);
  });

  it('keeps the good lines when one is amiss, and names the same offer twice', () => {
    const good = 'Fernlow,Ropewalk spun 40,spool,,,1000,,,,5.85,2026-10-09,';
    const { rows, problems } = read([good, 'Fernlow,nothing,spool,,,1,,,,1,2026-10-09,', good]);
    expect(rows.map(({ line }) => line)).toEqual([2]);
    expect(problems.map(({ where }) => where)).toEqual(['Line 3, column item', 'Line 4']);
  });

  it.each([
    ['supplier,item,price\n', 'Line 1 has no column "sold as" and no column "priced on".'],
    [heads.replace('EUR', 'GBP'), 'Line 1, column price is in GBP, and the workshop reckons in EUR.'],
  ])('with heads that are amiss it is not read at all: %s', (text, sentence) => {
    const { rows, problems } = readPriceList(text, sources);
    expect(rows).toEqual([]);
    expect(problems.map(problemSentence).join(' ')).toContain(sentence);
  });

  it('that was written comes back the same, whatever the offers', () => {
    const minor = fc.integer({ min: 300, max: 90_000 });
    const unit: fc.Arbitrary<SellingUnit> = fc.oneof(
      fc
        .tuple(
          fc.constantFrom(100, 114.3, 250, 1000),
          fc.integer({ min: 900, max: 1600 }),
          fc.nat({ max: 9 }),
        )
        .map(([stepMm, widthMm, least]) => ({
          kind: 'by length' as const,
          stepMm,
          widthMm,
          leastMm: stepMm * least,
        })),
      fc
        .tuple(fc.integer({ min: 900, max: 2600 }), fc.integer({ min: 900, max: 3100 }))
        .map(([widthMm, lengthMm]) => ({ kind: 'sheet' as const, widthMm, lengthMm })),
    );
    fc.assert(
      fc.property(unit, minor, fc.option(fc.integer({ min: 2, max: 400 })), (sold, priceMinor, from) => {
        const one: Offer = {
          ...offer('c1', '', sold, priceMinor, '=Fernlow, "Trimmings"'),
          ...(from !== null && { breaks: [{ fromCount: from, priceMinor: priceMinor - 7 }] }),
        };
        const back = readPriceList(priceListCsv(items, [one], 'EUR'), sources);
        expect(back.problems).toEqual([]);
        expect(back.rows[0]?.offer).toEqual({ ...one, supplier: `'${one.supplier}` });
      }),
      { numRuns: 200, seed: 7 },
    );
  });
});
