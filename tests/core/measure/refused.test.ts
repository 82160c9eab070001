/** What a field must not guess at: each is refused with the place and a way to mend it. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { type QuantityKind, quantityFacts } from '../../../shared-core/measure/quantity.ts';
import { type ReadOptions, readQuantity } from '../../../shared-core/measure/read.ts';

/** kind, as typed, words that the problem must hold. */
const refusedTexts: readonly (readonly [QuantityKind, string, string])[] = [
  ['length', '', 'is empty'],
  ['length', '   ', 'is empty'],
  ['length', '\u2009', 'is empty'],
  ['length', 'wide', 'not a length'],
  ['length', 'in', 'not a length'],
  ['length', '4 1/0 in', 'not a length'],
  ['length', '1/0 in', 'not a length'],
  ['length', '0/0', 'not a length'],
  ['length', '4 9/8 in', 'not a length'],
  ['length', "1'000", 'not a length'],
  ['money', "1'250.00", 'not an amount of money'],
  ['length', '5²', 'not a length'],
  ['length', '5² cm', 'not a length'],
  ['length', '5 ² cm', 'not a length'],
  ['length', '5₂ cm', 'not a length'],
  ['length', '①', 'not a length'],
  ['length', '⑴2 cm', 'not a length'],
  ['length', '❷ cm', 'not a length'],
  ['length', '½7', 'not a length'],
  ['length', '1½0 cm', 'not a length'],
  ['length', '½½ in', 'not a length'],
  ['money', '5²', 'not an amount of money'],
  ['money', '①.50', 'not an amount of money'],
  ['count', '3³', 'not a number'],
  ['area', '5² m²', 'not an area'],
  ['length', '4.5 1/2 in', 'not a length'],
  ['length', '4 1/2 1/4 in', 'not a length'],
  ['length', '4//2 in', 'not a length'],
  ['length', '1/2/3 in', 'not a length'],
  ['length', '4 in 2 yd', 'not a length'],
  ['length', '4 in 4 in', 'not a length'],
  ['length', '1 m 3 in', 'not a length'],
  ['length', '2 yd 4', 'not a length'],
  ['length', '4 5 in', 'not a length'],
  ['length', '4-5 in', 'not a length'],
  ['length', '2 yd.5 in', 'not a length'],
  ['length', '4 inn', 'not a length'],
  ['length', '4 in wide', 'not a length'],
  ['length', '4 x 5 in', 'not a length'],
  ['length', '1e5', 'not a length'],
  ['length', '1e5 mm', 'not a length'],
  ['length', '0x10', 'not a length'],
  ['length', 'Infinity', 'not a length'],
  ['length', 'NaN', 'not a length'],
  ['length', 'null', 'not a length'],
  ['length', '4 in;', 'not a length'],
  ['length', '~4 in', 'not a length'],
  ['length', '1.2.3 cm', 'not a length'],
  ['length', '1,23,456 mm', 'not a length'],
  ['length', '1,47,0.5 mm', 'not a length'],
  ['length', '4..5 in', 'not a length'],
  ['length', '--4 in', 'not a length'],
  ['length', '1,000', 'two ways'],
  ['length', '1,250 mm', 'two ways'],
  ['length', '12,345 m', 'two ways'],
  ['length', '-4 in', 'is negative'],
  ['length', '−4 in', 'is negative'],
  ['length', '-1/2 in', 'is negative'],
  ['length', '5 kg', 'is in kg, which is no unit of a length'],
  ['length', '5 oz', 'is in oz'],
  ['length', '5 %', 'is in %'],
  ['length', '1001 m', 'more than 1000 m'],
  ['length', '99999999999999999999', 'not a length'],
  ['length', '999999999999 yd', 'more than'],
  ['length', '4'.repeat(81), 'too long'],
  ['arealMass', '1.6 oz/m2', 'not a cloth weight'],
  ['arealMass', '54 g/yd2', 'not a cloth weight'],
  ['arealMass', '54 mm', 'is in mm'],
  ['arealMass', '54000', 'more than'],
  ['fillPower', '650+', 'not a fill power'],
  ['fillPower', '0', 'is zero'],
  ['fillPower', '6500', 'more than'],
  ['fillPower', '600-650', 'not a fill power'],
  ['threadSize', '40/2', 'only Nm and Ne'],
  ['threadSize', 'tex 40/2', 'only Nm and Ne'],
  ['threadSize', 'Tkt', 'not a thread size'],
  ['threadSize', 'Tkt 0', 'not a thread size'],
  ['threadSize', 'tex 0', 'is zero'],
  ['threadSize', 'Nm 80/0', 'not a thread size'],
  ['threadSize', 'tex 40 tex', 'not a thread size'],
  ['threadSize', 'V69', 'not a thread size'],
  ['needleSize', '80/14', 'US 14 is NM 90'],
  ['needleSize', '13', 'not a needle size'],
  ['needleSize', 'US 80', 'not a needle size'],
  ['needleSize', '80.5', 'not a needle size'],
  ['needleSize', 'NM 900', 'more than'],
  ['ratio', '0.15', 'two ways'],
  ['ratio', '1/2', 'two ways'],
  ['ratio', '-3 %', 'is negative'],
  ['count', '1.5', 'not a whole number'],
  ['count', '1/2', 'not a whole number'],
  ['count', 'some', 'not a number of things'],
  ['money', '12.505', 'more than two decimal places'],
  ['money', '1.250', 'more than two decimal places'],
  ['money', '-12.50', 'is negative'],
  ['money', '12.50 EUR', "is in EUR, which is not the workshop's currency"],
  ['money', '12 1/2', 'not an amount of money'],
  ['money', '12.50.00', 'not an amount of money'],
  ['money', 'free', 'not an amount of money'],
  ['duration', '1:75', 'not a time'],
  ['duration', '1:5', 'not a time'],
  ['duration', '30 min 1 h', 'not a time'],
  ['mass', '5 yd', 'is in yd'],
  ['volume', '5 cm', 'is in cm'],
  ['area', '5 m', 'is in m'],
];

function read(kind: QuantityKind, text: string, changes: Partial<ReadOptions> = {}) {
  return readQuantity(kind, text, {
    system: 'metric',
    currency: 'GBP',
    where: 'Width of Grey taffeta',
    ...changes,
  });
}

function sentence(kind: QuantityKind, text: string, changes: Partial<ReadOptions> = {}): string {
  const reading = read(kind, text, changes);
  return reading.ok ? `was read as ${reading.value}` : reading.problems.map(problemSentence).join(' / ');
}

describe('a field refuses what it cannot be sure of', () => {
  it('over at least 60 texts, none twice', () => {
    expect(new Set(refusedTexts.map(([kind, text]) => `${kind} ${text}`)).size).toBe(refusedTexts.length);
    expect(refusedTexts.length).toBeGreaterThanOrEqual(60);
  });

  it.each(refusedTexts)('%s: %j (%s), in both systems', (kind, text, words) => {
    for (const system of ['metric', 'imperial'] as const) {
      const reading = read(kind, text, { system });
      expect(reading.ok, `read ${JSON.stringify(reading)}`).toBe(false);
      if (reading.ok) return;
      const [problem] = reading.problems;
      expect(problem?.where).toBe('Width of Grey taffeta');
      expect(problem?.fix).toMatch(/^Type .+\.$/);
      if (system === 'metric') expect(problem?.what).toMatch(new RegExp(words));
    }
  });

  it('with a whole sentence', () => {
    expect(sentence('length', '4-5 in')).toBe(
      'Width of Grey taffeta says "4-5 in", which is not a length. Type a length such as 4 1/2 in, 11.5 cm or 2 1/8 yd.',
    );
    expect(sentence('length', '1,250 mm')).toBe(
      'Width of Grey taffeta says "1,250 mm", which could be read in two ways. Type 1.250 or 1250, without a comma.',
    );
    expect(sentence('length', '0', { aboveZero: true })).toBe(
      'Width of Grey taffeta is zero. Type a length such as 4 1/2 in, 11.5 cm or 2 1/8 yd.',
    );
  });

  it('outside the limits of the field, and says the limit in the system of the workshop', () => {
    expect(sentence('length', '3 in', { min: 101.6, system: 'imperial' })).toContain(
      'is less than 4 in. Type 4 in or more.',
    );
    expect(sentence('length', '2 m', { max: 1473.2, system: 'imperial' })).toContain(
      'is more than 58 in. Type 58 in or less.',
    );
    expect(sentence('length', '58 in', { max: 1473.2 })).toBe('was read as 1473.2');
    expect(sentence('length', '4 in', { min: 101.6 })).toBe('was read as 101.6');
  });

  it('and the limit that it names can itself be typed', () => {
    const units = fc.constantFrom(...(['metric', 'imperial'] as const));
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 9000, noNaN: true }),
        units,
        fc.boolean(),
        (limit, system, upper) => {
          const changes = { system, ...(upper ? { max: limit } : { min: limit }) };
          const typed = /Type (.+) or (?:less|more)\.$/.exec(
            sentence('length', upper ? '900 m' : '0.01 mm', changes),
          )?.[1];
          expect(sentence('length', typed ?? '', changes)).toMatch(/^was read as/);
        },
      ),
    );
    expect(sentence('money', '99', { max: 1250, currency: 'EUR' })).toContain('Type 12.50 EUR or less.');
    expect(sentence('length', '2 m', { max: 1470, system: 'imperial' })).toContain('Type 57.87 in or less.');
  });

  it('and never throws or lets through what is no number, whatever is typed', () => {
    const pieces = [
      '1',
      '4',
      '0',
      '000',
      '½',
      '1/2',
      '/',
      '.',
      ',',
      ' ',
      '-',
      '"',
      "'",
      'in',
      'yd',
      'm',
      'mm',
      'oz',
      'g',
      '/m2',
      '%',
      'tkt',
      'nm',
      'h',
      ':',
      'e',
      '€',
    ];
    const text = fc.oneof(
      fc.string({ unit: 'grapheme' }),
      fc.array(fc.constantFrom(...pieces), { maxLength: 9 }).map((list) => list.join('')),
    );
    const kinds = fc.constantFrom(...(Object.keys(quantityFacts) as QuantityKind[]));
    fc.assert(
      fc.property(kinds, text, (kind, typed) => {
        const reading = read(kind, typed, { system: 'imperial' });
        if (!reading.ok) {
          expect(reading.problems).toHaveLength(1);
          return;
        }
        expect(Number.isFinite(reading.value) && reading.value >= 0, `${kind} ${typed}`).toBe(true);
        expect(/\d|[½]|\p{No}/u.test(typed.normalize('NFKC')), `${kind} ${typed}`).toBe(true);
      }),
      { numRuns: 5000, seed: 1889 },
    );
  });

  it('but takes a minus where the field goes below zero', () => {
    expect(sentence('length', '-1 1/2 in', { min: -200 })).toBe('was read as -38.1');
    expect(sentence('length', '−40 mm', { min: -200 })).toBe('was read as -40');
    expect(sentence('length', '-9 in', { min: -200 })).toContain('is less than -200 mm');
  });

  it('but takes an amount in the currency of the workshop', () => {
    for (const text of ['€12.50', '12,50 €', 'EUR 12.50', '12.50 eur']) {
      expect(sentence('money', text, { currency: 'EUR' })).toBe('was read as 1250');
    }
    expect(sentence('money', '$12.50', { currency: 'NZD' })).toBe('was read as 1250');
    expect(sentence('money', '$12.50', { currency: 'EUR' })).toContain("not the workshop's currency");
    expect(sentence('money', '12.50 GBP', { currency: 'EUR' })).toContain("not the workshop's currency");
  });

  it('and a bare number takes the unit that the field names', () => {
    const unit = { metric: 'm', imperial: 'yd' } as const;
    expect(sentence('length', '3', { unit })).toBe('was read as 3000');
    expect(sentence('length', '3', { unit, system: 'imperial' })).toBe('was read as 2743.2');
    expect(sentence('length', '3 cm', { unit })).toBe('was read as 30');
    expect(sentence('threadSize', '75', { unit: 'Tkt' })).toBe('was read as 40');
    expect(() => read('length', '3', { unit: 'kg' })).toThrow(RangeError);
  });
});
