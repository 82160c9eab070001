import { describe, expect, it } from 'vitest';
import { readPriceList } from '../../../shared-core/exchange/price-list/price-list.ts';
import type { PriceListSources } from '../../../shared-core/exchange/price-list/price-list-shape.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { item } from '../../fixtures/small-workshop.ts';

const sources: PriceListSources = {
  items: [
    { ...item('cloth', 'c1'), name: 'Peatwater nylon' },
    { ...item('thread', 't1'), name: 'Ropewalk spun 40' },
    { ...item('fill', 'f1'), name: 'Downdrift duck' },
  ],
  offers: [],
  currency: 'EUR',
};
const read = (...lines: string[]) => readPriceList(lines.join('\n'), sources);
const said = (...lines: string[]) => read(...lines).problems.map(problemSentence);
const heads = (step: string, width: string, price = 'price') =>
  `supplier,item,sold as,${step},${width},${price},priced on`;
const cloth = 'Fernlow,Peatwater nylon,by length,10,147,1.15,2026-10-12';
const plain = heads('step or length', 'width');

describe('a price list is never misread without a word:', () => {
  it('a quotation mark that is never closed names its line, in a column that nobody reads too', () => {
    const withNotes = [`${plain},remarks`, `${cloth},"5 in sample`, `${cloth},`, `${cloth},`];
    expect(read(...withNotes).rows).toEqual([]);
    expect(said(...withNotes)).toEqual([
      'Line 2 has a quotation mark that is never closed, or one in the midst of a cell. See whether it is broken off; save or copy it from the spreadsheet anew.',
    ]);
  });

  it('a heading says the unit of its column', () => {
    const unit = (step: string, width: string) => read(heads(step, width), cloth).rows[0]?.offer.unit;
    expect(unit('step or length (cm)', 'Width (cm)')).toMatchObject({ stepMm: 100, widthMm: 1470 });
    expect(unit('step or length (in)', 'width (mm)')).toMatchObject({ stepMm: 254, widthMm: 147 });
    const min = read(`${plain},at least (m)`, `${cloth},2`).rows[0]?.offer.unit;
    expect(min).toMatchObject({ leastMm: 2000 });
    const ounces = 'supplier,item,sold as,mass (oz),price,priced on';
    expect(
      read(ounces, 'Fernlow,Downdrift duck,by mass,16,9.00,2026-10-12').rows[0]?.offer.unit,
    ).toMatchObject({
      stepG: expect.closeTo(453.59237, 9),
    });
  });

  it.each([
    ['step or length (stone)', 'width', 'Line 1, column step or length is in stone, which is no unit of it.'],
    ['step or length', 'width (g)', 'Line 1, column width is in g, which is no unit of it.'],
    ['width', 'width', 'Line 1, column width stands there a second time. Take one of the two out.'],
  ])('the headings %s and %s are refused', (step, width, sentence) => {
    expect(read(heads(step, width), cloth).rows).toEqual([]);
    expect(said(heads(step, width), cloth)[0]).toContain(sentence);
  });

  it.each(['$', 'GBP', 'EUR/m', 'per 10 cm'])('prices in (%s) are not taken for EUR', (sign) => {
    expect(said(heads('step or length', 'width', `price (${sign})`), cloth)[0]).toBe(
      `Line 1, column price is in ${sign}, and the workshop reckons in EUR. Turn the prices into EUR first, and head the column "price (EUR)".`,
    );
  });

  it.each(['EUR', '€', 'eur'])('prices in (%s) are', (sign) => {
    expect(said(heads('step or length', 'width', `price (${sign})`), cloth)).toEqual([]);
  });

  it('a comma that parts a number in two is named by its line', () => {
    const spool = 'supplier,item,sold as,thread,price,priced on';
    expect(
      said(spool, 'Fernlow,Ropewalk spun 40,spool,1000,2,5,2026-10-12', 'Fernlow,Ropewalk spun 40'),
    ).toEqual([
      'Line 2 has 7 of 6 cells. Put cells that hold the separating sign into quotation marks.',
      'Line 3 has 2 of 6 cells. See whether it is broken off; save or copy it from the spreadsheet anew.',
    ]);
  });

  it('columns that are not read are told of', () => {
    expect(read(`${plain},Article no.,breaks from`, `${cloth},77,`).unread).toEqual([
      'Article no.',
      'breaks from',
    ]);
  });

  it.each(['2026-02-30', '0000-01-01', '9999-12-31', '1889-03-27'])('%s is no day of a price', (day) => {
    expect(said(plain, cloth.replace('2026-10-12', day))).toEqual([
      `Line 2, column priced on is "${day}", which is not a date. Write it as 2026-03-27.`,
    ]);
  });

  it('a supplier stands in one line, whatever the cell holds', () => {
    const { rows } = read(plain, cloth.replace('Fernlow', '"Fern\r\nlow"'));
    expect(rows[0]?.offer.supplier).toBe('Fern low');
  });

  it('what is no text is not read', () => {
    expect(said(plain, cloth.replace('Fern', 'Fe\0rn'))).toEqual([
      'The list is not text. Save the table as CSV.',
    ]);
  });
});
