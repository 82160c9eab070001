import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fibreLabel, labelSection } from '../../../../shared-core/requirement/law/label.ts';
import {
  euText,
  isWithinLabelTolerance,
  statableRatios,
  usText,
  wholePercents,
} from '../../../../shared-core/requirement/law/label-text.ts';
import { item, slot } from '../../../fixtures/small-workshop.ts';
import { filled, smallCoat } from '../small-coat.ts';

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
    const mix = [
      { fibre: 'cotton', shareRatio: 0.7 },
      { fibre: 'nylon', shareRatio: 0.23 },
      { fibre: 'silk', shareRatio: 0.04 },
      { fibre: 'spandex', shareRatio: 0.03 },
    ] as const;
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
  it('wool, recycled wool and cashmere are named however little there is of them', () => {
    const mix = [
      { fibre: 'polyester', shareRatio: 0.876 },
      { fibre: 'wool', shareRatio: 0.04 },
      { fibre: 'silk', shareRatio: 0.04 },
      { fibre: 'recycled wool', shareRatio: 0.03 },
      { fibre: 'cashmere', shareRatio: 0.01 },
      { fibre: 'mohair', shareRatio: 0.004 },
    ] as const;
    expect(usText(mix)).toBe(
      '88% polyester, 4% wool, 3% recycled wool, 1% cashmere, less than 1% mohair, 4% other fiber',
    );
    // The EU has one name for both wools.
    expect(euText(mix)).toBe('88 % polyester, 7 % wool, 4 % silk, 1 % cashmere');
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
  const us = (label: ReturnType<typeof fibreLabel>) => label.lines.map((line) => line.us);
  it('a body lining and a sleeve lining of other fibres have a line each, and are never mixed', () => {
    const label = fibreLabel(smallCoat({ slots }), items, masses);
    expect(us(label)).toEqual([
      'Shell: 100% nylon',
      'Body lining: 100% cotton',
      'Sleeve lining: 60% acetate, 40% cotton',
      'Filling: 100% polyester',
    ]);
    expect(label.lines[1]?.massG).toBe(210);
    expect([label.problems, label.basis[0]?.kind]).toEqual([[], 'computed']);
  });
  it('linings of the same fibres are one line', () => {
    const alike = new Map(items).set('sleeve lining', item('cloth', 'poplin', { fibre: 'cotton' }));
    const label = fibreLabel(smallCoat({ slots }), alike, masses);
    expect(us(label)).toEqual(['Shell: 100% nylon', 'Lining: 100% cotton', 'Filling: 100% polyester']);
    expect([label.lines[1]?.slotNames, label.lines[1]?.massG]).toEqual([
      ['body lining', 'sleeve lining'],
      280,
    ]);
  });
  it('a weight that is not known takes nothing from the label, as nothing is mixed', () => {
    const label = fibreLabel(
      smallCoat({ slots }),
      items,
      new Map<string, number | null>([...masses, ['body lining', null]]),
    );
    expect(us(label)).toContain('Body lining: 100% cotton');
    expect([label.problems, label.lines[1]?.massG]).toEqual([[], null]);
  });
  it('two fillings say which each is', () => {
    const two = [...slots, slot('sleeve down', 'fill')];
    const label = fibreLabel(
      smallCoat({ slots: two }),
      new Map(items).set(
        'sleeve down',
        item('fill', 'plumage', { fibre: '90 % duck down, 10 % duck feather' }),
      ),
      new Map([...masses, ['sleeve down', 60]]),
    );
    expect(us(label).slice(-2)).toEqual([
      'Filling, batting: 100% polyester',
      'Filling, sleeve down: 90% duck down, 10% duck feathers',
    ]);
  });
  it('an unreadable fibre leaves its part out and says where', () => {
    const odd = new Map(items).set('shell', item('cloth', 'taffeta', { fibre: '100 % sky' }));
    const label = fibreLabel(smallCoat({ slots }), odd, masses);
    expect(label.lines.map(({ section }) => section)).toEqual(['lining', 'lining', 'filling']);
    expect(label.problems[0]?.where).toBe('Fibre of taffeta');
  });
  it('a trim is printed for the US by choice, and under 30 % of the coat the EU lets it out; a main lining or filling never', () => {
    const trimmed = [...slots, slot('rib cuff', 'cloth'), slot('hood lining', 'cloth')];
    const more = new Map(items)
      .set('rib cuff', item('cloth', 'rib', { fibre: '96 % wool, 4 % elastane' }))
      .set('hood lining', item('cloth', 'pile', { fibre: 'acrylic' }));
    const label = fibreLabel(
      smallCoat({ slots: trimmed }),
      more,
      new Map([...masses, ['rib cuff', 40], ['hood lining', 50]]),
    );
    expect(label.lines.map((line) => [line.component, line.isVoluntaryInUs, line.mayBeLeftOutInEu])).toEqual([
      ['Shell', false, false],
      ['Body lining', false, false],
      ['Sleeve lining', false, false],
      ['Hood lining', false, true],
      ['Filling', false, false],
      ['Rib cuff', true, true],
    ]);
    expect(label.asides.join('\n')).toMatch(/US: trimmings.*Yours to print or not: Rib cuff\./);
    expect(label.asides.join('\n')).toMatch(/EU: .*May be left out: Hood lining; Rib cuff\./);
    expect(label.asides.join('\n')).toMatch(/US: wool/);
  });
  it('what may be left out in the EU waits for the weights', () => {
    const label = fibreLabel(
      smallCoat({ slots: [...slots, slot('rib cuff', 'cloth')] }),
      new Map(items).set('rib cuff', item('cloth', 'rib', { fibre: 'cotton' })),
      new Map<string, number | null>([...masses, ['pocketing', null], ['rib cuff', 40]]),
    );
    expect(label.lines.map((line) => line.mayBeLeftOutInEu)).toEqual([false, false, false, false, null]);
    expect(label.asides.at(-1)).toContain('when all its cloths have a weight');
  });
  it('knows linings, trims, facings and hidden cloth apart', () => {
    expect([
      labelSection(slot('Lining of the hood', 'cloth')),
      labelSection(slot('rib cuff', 'cloth')),
      labelSection(slot('facing', 'cloth')),
      labelSection(slot('facing interfacing', 'cloth')),
      labelSection(slot('yoke', 'cloth')),
      labelSection(slot('pocketing', 'cloth', { isSeen: false })),
      labelSection(slot('down', 'fill')),
      labelSection(slot('snaps', 'fastening')),
    ]).toEqual(['lining', 'trim', 'trim', 'hidden', 'shell', 'hidden', 'filling', null]);
  });
  it('a stated share may be 3 % of the mass off and no more', () => {
    expect([isWithinLabelTolerance(0.65, 0.68), isWithinLabelTolerance(0.65, 0.6199)]).toEqual([true, false]);
  });
  it('what may be stated of a share lies within the tolerance, and never beyond nothing or all', () => {
    expect(statableRatios(0.71)).toEqual({ minRatio: 0.71 - 0.03, maxRatio: 0.71 + 0.03 });
    expect([statableRatios(0.02).minRatio, statableRatios(0.99).maxRatio]).toEqual([0, 1]);
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
});
