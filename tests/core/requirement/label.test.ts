import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Fibre, fibres, mixedFibres, readFibre } from '../../../shared-core/requirement/fibre.ts';
import {
  euText,
  fibreLabel,
  isWithinLabelTolerance,
  labelSection,
  statableRatios,
  usText,
  wholePercents,
} from '../../../shared-core/requirement/label.ts';
import { item, slot } from '../../fixtures/small-workshop.ts';
import { filled, smallCoat } from './small-coat.ts';

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
  it('reads back what it prints, for any mix', () => {
    const names = Object.keys(fibres) as Fibre[];
    fc.assert(
      fc.property(fc.uniqueArray(fc.constantFrom(...names), { minLength: 1, maxLength: 5 }), (chosen) => {
        const shares = chosen.map((fibre) => ({ fibre, shareRatio: 1 / chosen.length }));
        const back = readFibre(euText(shares), 'label');
        expect(back.ok && back.value.map(({ fibre }) => fibre).sort()).toEqual([...chosen].sort());
      }),
    );
  });
});

describe('whole percents', () => {
  const masses = fc.array(fc.double({ min: 0.01, max: 400, noNaN: true }), { minLength: 1, maxLength: 8 });
  it('add up to 100, none further than 1 from the truth, in falling order for falling shares', () => {
    fc.assert(
      fc.property(masses, (grams) => {
        const sum = grams.reduce((total, gram) => total + gram, 0);
        const shares = grams.map((gram) => gram / sum).sort((a, b) => b - a);
        const percents = wholePercents(shares);
        expect(percents.reduce((total, percent) => total + percent, 0)).toBe(100);
        percents.forEach((percent, index) => {
          expect(Math.abs(percent - shares[index]! * 100)).toBeLessThan(1);
          if (index > 0) expect(percent).toBeLessThanOrEqual(percents[index - 1]!);
        });
      }),
    );
  });
  it('shares that are no whole are a slip of ours', () => {
    expect(() => wholePercents([0.5, 0.4])).toThrow(RangeError);
  });
});

describe('the fibre label', () => {
  it('the US form puts fibres under 5 % last as other fiber, but names spandex', () => {
    const mix = mixedFibres([
      {
        massG: 200,
        shares: [
          { fibre: 'cotton', shareRatio: 0.7 },
          { fibre: 'nylon', shareRatio: 0.23 },
          { fibre: 'spandex', shareRatio: 0.03 },
          { fibre: 'silk', shareRatio: 0.04 },
        ],
      },
    ]);
    expect(usText(mix)).toBe('70% cotton, 23% nylon, 3% spandex, 4% other fiber');
    expect(euText(mix)).toBe('70 % cotton, 23 % polyamide, 4 % silk, 3 % elastane');
  });
  it('exactly 5 % is named', () => {
    const mix = [
      { fibre: 'wool', shareRatio: 0.95 },
      { fibre: 'silk', shareRatio: 0.05 },
    ] as const;
    expect(usText(mix)).toBe('95% wool, 5% silk');
  });
  const slots = [
    slot('shell', 'cloth'),
    slot('body lining', 'cloth'),
    slot('sleeve lining', 'cloth'),
    slot('batting', 'batting'),
    slot('pocketing', 'cloth', { isSeen: false }),
    slot('thread', 'thread'),
  ];
  const items = filled({
    shell: item('cloth', 'taffeta', { fibre: '100 % nylon' }),
    'body lining': item('cloth', 'flannel', { fibre: '100 % cotton' }),
    'sleeve lining': item('cloth', 'satin', { fibre: '60 % acetate, 40 % cotton' }),
    batting: item('batting', 'fleece', { fibre: 'polyester' }),
    pocketing: item('cloth', 'drill'),
  });
  const masses = new Map([
    ['shell', 180],
    ['body lining', 210],
    ['sleeve lining', 70],
    ['batting', 400],
    ['pocketing', 30],
  ]);
  it('weighs the two linings together and keeps shell and filling apart', () => {
    const label = fibreLabel(smallCoat({ slots }), items, masses);
    expect(label.lines.map(({ us }) => us)).toEqual([
      'Shell: 100% nylon',
      'Lining: 85% cotton, 15% acetate',
      'Filling: 100% polyester',
    ]);
    expect(label.lines[1]?.massG).toBe(280);
    expect([label.problems, label.basis[0]?.kind]).toEqual([[], 'computed']);
  });
  it('a lining whose weight is not known cannot be mixed, and is said', () => {
    const label = fibreLabel(
      smallCoat({ slots }),
      items,
      new Map<string, number | null>([...masses, ['body lining', null]]),
    );
    expect(label.lines.map(({ section }) => section)).toEqual(['shell', 'filling']);
    expect(label.problems.map(({ where }) => where)).toEqual(['Weight of flannel']);
  });
  it('a lone shell needs no weight', () => {
    const label = fibreLabel(
      smallCoat({ slots }),
      items,
      new Map<string, number | null>([...masses, ['shell', null]]),
    );
    expect(label.lines[0]?.us).toBe('Shell: 100% nylon');
  });
  it('an unreadable fibre leaves its section out and says where', () => {
    const odd = new Map(items).set('shell', item('cloth', 'taffeta', { fibre: '100 % sky' }));
    const label = fibreLabel(smallCoat({ slots }), odd, masses);
    expect(label.lines.map(({ section }) => section)).toEqual(['lining', 'filling']);
    expect(label.problems[0]?.where).toBe('Fibre of taffeta');
  });
  it('knows linings, trims and hidden cloth apart', () => {
    expect([
      labelSection(slot('Lining of the hood', 'cloth')),
      labelSection(slot('rib cuff', 'cloth')),
      labelSection(slot('facing', 'cloth')),
      labelSection(slot('pocketing', 'cloth', { isSeen: false })),
      labelSection(slot('down', 'fill')),
      labelSection(slot('snaps', 'fastening')),
    ]).toEqual(['lining', 'trim', 'shell', 'hidden', 'filling', null]);
  });
  it('a stated share may be 3 % of the mass off and no more', () => {
    expect([isWithinLabelTolerance(0.65, 0.68), isWithinLabelTolerance(0.65, 0.6199)]).toEqual([true, false]);
  });
  it('what may be stated of a share lies within the tolerance, and never beyond nothing or all', () => {
    expect(statableRatios(0.71)).toEqual({ leastRatio: 0.71 - 0.03, mostRatio: 0.71 + 0.03 });
    expect([statableRatios(0.02).leastRatio, statableRatios(0.99).mostRatio]).toEqual([0, 1]);
    expect(() => statableRatios(1.2)).toThrow(RangeError);
  });
  it('down asks for a sentence of its own in the EU, and polyester does not', () => {
    const stuffed = (fibre: string) =>
      fibreLabel(
        smallCoat({ slots: [slot('fill', 'fill')] }),
        filled({ fill: item('fill', 'fill', { fibre }) }),
        new Map([['fill', 130]]),
      ).euNotes;
    expect(stuffed('80 % down, 20 % feathers')).toEqual(['Contains non-textile parts of animal origin']);
    expect(stuffed('polyester')).toEqual([]);
  });
  it('the shares of any mix add up to 1, and doubling all masses changes nothing', () => {
    const part = fc.record({
      massG: fc.double({ min: 1, max: 900, noNaN: true }),
      cotton: fc.double({ min: 0.01, max: 0.99, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 5 }), (parts) => {
        const mix = (factor: number) =>
          mixedFibres(
            parts.map(({ massG, cotton }) => ({
              massG: massG * factor,
              shares: [
                { fibre: 'cotton', shareRatio: cotton },
                { fibre: 'nylon', shareRatio: 1 - cotton },
              ],
            })),
          );
        expect(mix(1).reduce((sum, { shareRatio }) => sum + shareRatio, 0)).toBeCloseTo(1, 9);
        expect(mix(2)[0]?.shareRatio).toBeCloseTo(mix(1)[0]!.shareRatio, 9);
      }),
    );
  });
});
