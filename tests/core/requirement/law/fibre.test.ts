import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readFibre } from '../../../../shared-core/requirement/law/fibre.ts';
import { type Fibre, fibres } from '../../../../shared-core/requirement/law/fibre-names.ts';
import { euText, usText } from '../../../../shared-core/requirement/law/label-text.ts';

const read = (text: string) => {
  const found = readFibre(text, 'Fibre of shell');
  return found.ok
    ? found.value.map(({ fibre, shareRatio }) => [fibre, Number(shareRatio.toFixed(4))])
    : found.problems;
};
const what = (text: string) => {
  const found = readFibre(text, 'Fibre of shell');
  return found.ok ? [] : found.problems.map((problem) => problem.what);
};

describe('reading what a cloth is made of', () => {
  it('reads shares before or after the name, largest first', () => {
    expect(read('35 % polyester, 65 % cotton')).toEqual([
      ['cotton', 0.65],
      ['polyester', 0.35],
    ]);
    expect(read('Cotton 65%; Polyester 35%')).toEqual(read('65 cotton / 35 polyester'));
  });
  it('knows one fibre by the names of both markets', () => {
    expect(read('92 % polyamide, 8 % elastane')).toEqual(read('92% nylon and 8% spandex'));
  });
  it('a lone name is all of it', () => {
    expect(read('wool')).toEqual([['wool', 1]]);
  });
  it('one name twice is added up', () => {
    expect(read('40 % cotton, 20 % organic cotton, 40 % linen')).toEqual([
      ['cotton', 0.6],
      ['linen', 0.4],
    ]);
  });
  it.each([
    '66,7 % wool, 33,3 % nylon',
    '66,7% wool,33,3% nylon',
    'wool 66,7 %, nylon 33,3 %',
    'Wool 66,7,nylon 33,3',
    '66,7 wool; 33.3 nylon',
    '33,3 % Nylon and 66,7\u00a0% Wool',
  ])('reads shares with a decimal comma: %s', (text) => {
    expect(read(text)).toEqual([
      ['wool', 0.667],
      ['nylon', 0.333],
    ]);
  });
  it('still parts by a comma that stands between words', () => {
    expect(read('65 % cotton,35 % polyester')).toEqual(read('65 % cotton, 35 % polyester'));
    expect(what('66,7 % wool, 30,1 % nylon')).toEqual(['adds up to 96.8 %']);
    expect(what('wool 65,35 nylon')).toHaveLength(1);
  });
  it('thirds written to one place are let pass', () => {
    expect(read('33.3 % wool, 33.3 % silk, 33.3 % cotton')).toHaveLength(3);
  });
  it('refuses what it cannot read, and says which part', () => {
    expect(what('60 % cotton, 30 % polyester')).toEqual(['adds up to 90 %']);
    expect(what('60 % moonhair, 40 % cotton')).toEqual(['names no generic fibre: moonhair']);
    expect(what('60 % cotton, forty polyester %')).toEqual([
      'has a part that cannot be read: forty polyester %',
    ]);
    expect(what('0 % cotton, 100 % nylon')).toEqual(['has a share of 0 %']);
    expect(what('cotton, polyester')).toHaveLength(2);
    expect(what('  ')).toEqual(['is missing']);
  });
  it('reads back what it prints for either market, for any mix', () => {
    const names = Object.keys(fibres) as Fibre[];
    fc.assert(
      fc.property(fc.uniqueArray(fc.constantFrom(...names), { minLength: 1, maxLength: 5 }), (chosen) => {
        const shares = chosen.map((fibre) => ({ fibre, shareRatio: 1 / chosen.length }));
        const us = readFibre(usText(shares), 'label');
        expect(us.ok && us.value.map(({ fibre }) => fibre).sort()).toEqual([...chosen].sort());
        const eu = readFibre(euText(shares), 'label');
        const euNames = [...new Set(chosen.map((fibre) => fibres[fibre].eu))];
        expect(eu.ok && eu.value.map(({ fibre }) => fibres[fibre].eu).sort()).toEqual(euNames.sort());
      }),
    );
  });
  it.each([
    'kapok',
    'ramie',
    'jute',
    'alpaca',
    'mohair',
    'yak',
    'camel hair',
    'horsehair',
    'angora',
    'abaca',
  ])('knows %s, a name of the EU list', (name) => {
    expect(what(`60 % ${name}, 40 % cotton`)).toEqual([]);
  });
  it('keeps the species of down and feathers, whatever the colour', () => {
    expect(read('90 % duck down, 10 % duck feather')).toEqual([
      ['duck down', 0.9],
      ['duck feather', 0.1],
    ]);
    expect(read('white goose down')).toEqual([['goose down', 1]]);
    expect(read('80 % down, 20 % feathers')).toEqual([
      ['down', 0.8],
      ['feather', 0.2],
    ]);
  });
  it('tells recycled wool from wool, and takes no notice of recycled where the rules take none', () => {
    expect(read('60 % recycled wool, 40 % recycled nylon')).toEqual([
      ['recycled wool', 0.6],
      ['nylon', 0.4],
    ]);
  });
});
