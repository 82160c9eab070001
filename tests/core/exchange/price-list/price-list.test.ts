import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { readPriceList } from '../../../../shared-core/exchange/price-list/price-list.ts';
import type { PriceListSources } from '../../../../shared-core/exchange/price-list/price-list-shape.ts';
import { isSameOffer, saysTheSame } from '../../../../shared-core/exchange/price-list/price-list-offer.ts';
import { priceListCsv } from '../../../../shared-core/exchange/price-list/price-list-write.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { folded } from '../../../../shared-core/measure/text/folded-text.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import { type Offer, type SellingUnit, soldAs } from '../../../../shared-core/stash/offer.ts';
import { item, offer } from '../../../fixtures/small-workshop.ts';

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

  it('names a day that the calendar has not, as it does any text that is none', () => {
    expect(sentences(['Fernlow,Ropewalk spun 40,spool,,,1000,,,,5.85,2026-02-31,'])).toEqual([
      'Line 2, column priced on is "2026-02-31", which is not a date. Write it as 2026-03-27.',
    ]);
  });

  const moss = { ...item('cloth', 'c7'), name: 'Fenny lawn', colour: 'moss' };
  const rust = { ...item('cloth', 'c8'), name: 'Fenny lawn', colour: 'rust' };
  const lining = { ...item('batting', 'b7'), name: 'fenny LAWN', colour: '' };
  const inColours = { items: [moss, rust, lining] };
  const coloured = (kind: string, colour: string, more: Partial<PriceListSources> = inColours) =>
    readPriceList(
      [
        'supplier,kind,item,colour,sold as,step or length (cm),width (cm),price,priced on',
        `Fernlow,${kind},Fenny lawn,${colour},by length,10,147,1.15,2026-10-12`,
      ].join('\n'),
      { ...sources, ...more },
    );

  it.each([
    ['', 'Rust', 'c8'],
    ['cloth', 'moss', 'c7'],
    ['Batting', '', 'b7'],
    ['', '', 'b7'],
  ])('tells items of one name by kind "%s" and colour "%s"', (kind, colour, itemId) => {
    const { rows, problems } = coloured(kind, colour);
    expect(problems).toEqual([]);
    expect(rows[0]?.offer.itemId).toBe(itemId);
  });

  it('asks for kind and colour where the name does not tell, and books nothing onto another colour', () => {
    expect(coloured('cloth', '').problems.map(problemSentence)).toEqual([
      'Line 2, column item names "Fenny lawn", of which the stash has several. Write the name as it stands in the stash, and its kind and colour beside it.',
    ]);
    expect(coloured('', 'plum').problems.map(problemSentence)).toEqual([
      'Line 2, column item names "Fenny lawn, plum", which is not in the stash. Write the name as it stands in the stash, and its kind and colour beside it.',
    ]);
    expect(coloured('', 'plum', { items: [moss] }).problems).toHaveLength(1);
    expect(coloured('', '', { items: [moss] }).rows[0]?.offer.itemId).toBe('c7');
  });

  it('that was written comes back whole, with nothing left to book', () => {
    fc.assert(
      fc.property(workshop, ({ items: own, offers, currency }) => {
        const text = priceListCsv(own, offers, currency);
        for (const cell of Papa.parse<string[]>(text).data.flat()) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
        const back = readPriceList(text, { items: own, offers, currency });
        expect(back.problems).toEqual([]);
        expect(back.rows.map(({ does }) => does)).toEqual(offers.map(() => 'nothing new'));
        expect(new Set(back.rows.map(({ offer: of }) => of.id)).size).toBe(offers.length);
        // Another workshop with the same items learns the same offers, each once.
        const elsewhere = readPriceList(text, { items: own, offers: [], currency });
        const unlike = offers.filter(
          (each, at) => offers.findIndex((other) => isSameOffer(each, other)) === at,
        );
        if (unlike.length === offers.length) {
          expect(elsewhere.problems).toEqual([]);
          elsewhere.rows.forEach(({ offer: learned }, at) => {
            const written = offers[at]!;
            expect(isSameOffer(learned, written) && saysTheSame(learned, written)).toBe(true);
            expect(learned.supplier.split(/\s+/)).toEqual(written.supplier.split(/\s+/));
          });
        }
      }),
      { numRuns: 200, seed: 7 },
    );
  });
});

/** Any name, one that a spreadsheet would run as a formula, or one that looks as if it had been kept from it. */
const anyName = fc
  .oneof(
    fc.constantFrom(
      '+Fern',
      '-Fern',
      '=Fern',
      '@Fern',
      "'+Fern",
      "''=Fern",
      "'",
      '−1',
      'Fern, "Trimmings"',
      'Fe\nrn',
      '+',
    ),
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }),
    fc.constantFrom('Fern', 'Fernlow', 'Café', 'Cafe\u0301'),
  )
  .map((name) => name.trim())
  .filter((name) => name !== '');

/** A stash as the services keep it: no two items of one kind, name and colour; and any offers of them. */
const workshop = fc
  .record({
    names: fc.array(
      fc.record({
        kind: fc.constantFrom('cloth', 'batting', 'thread', 'fill', 'fastening'),
        name: anyName,
        colour: fc.oneof(fc.constant(''), fc.constant('moss'), anyName),
      }),
      { minLength: 1, maxLength: 6 },
    ),
    offered: fc.array(
      fc.record({
        of: fc.nat(),
        supplier: anyName,
        sold: fc.nat(),
        step: fc.oneof(
          fc.constantFrom(1, 10, 100, 914.4, 114.3, 0.1),
          fc.double({ min: 0.001, max: 999_999, noNaN: true }),
        ),
        width: fc.oneof(fc.integer({ min: 1, max: 3000 }), fc.double({ min: 0.001, max: 3000, noNaN: true })),
        min: fc.integer({ min: 0, max: 40 }),
        priceMinor: fc.integer({ min: 0, max: 1e11 }),
        pricedOn: fc.constantFrom('2026-10-12', '2024-02-29', '1999-12-31'),
        breaks: fc.uniqueArray(fc.integer({ min: 2, max: 900 }), { maxLength: 4 }),
      }),
      { maxLength: 8 },
    ),
    currency: fc.constantFrom('EUR', 'JPY', 'KWD', 'IQD'),
  })
  .map(({ names, offered, currency }) => {
    const key = ({ kind, name, colour }: (typeof names)[number]) =>
      JSON.stringify([kind, folded(name), folded(colour)]);
    const own = names
      .filter((each, at) => names.findIndex((other) => key(other) === key(each)) === at)
      .map(({ kind, name, colour }, at) => ({ ...item(kind, `item ${at}`), name, colour }));
    const offers = offered.map((one, at): Offer => {
      const { id: itemId, kind } = own[one.of % own.length]!;
      const ways = soldAs[kindRecords[kind].counted];
      const unit = unitOf(ways[one.sold % ways.length]!, one.step, one.width, one.min);
      const isCounted = unit.kind !== 'by length' && unit.kind !== 'by mass';
      const counts = one.breaks.sort((a, b) => a - b).filter((_, index) => one.priceMinor > index + 1);
      return {
        id: `offer ${at}`,
        itemId,
        supplier: one.supplier,
        unit,
        priceMinor: one.priceMinor,
        pricedOn: one.pricedOn,
        ...(counts.length > 0 && {
          breaks: counts.map((fromCount, index) => ({ fromCount, priceMinor: one.priceMinor - index - 1 })),
        }),
        ...(isCounted && one.min > 1 && { leastCount: one.min }),
      };
    });
    return { items: own, offers, currency };
  });

function unitOf(kind: SellingUnit['kind'], step: number, width: number, min: number): SellingUnit {
  switch (kind) {
    case 'by length':
      return { kind, stepMm: step, widthMm: width, leastMm: min * step };
    case 'sheet':
      return { kind, lengthMm: step, widthMm: width };
    case 'spool':
      return { kind, threadM: step };
    case 'by mass':
      return { kind, stepG: step, leastG: min * step };
    case 'pack':
      return { kind, pieceCount: Math.ceil(width) };
    case 'each':
      return { kind, lengthMm: min > 20 ? null : step };
    default:
      return kind satisfies never;
  }
}
