import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { dayWords } from '../../../shared-core/measure/calendar-date.ts';
import { showMoney } from '../../../shared-core/measure/money/money.ts';
import { readMoney } from '../../../shared-core/measure/money/read-money.ts';
import { plainText } from '../../../shared-core/measure/number-text.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import type { QuantityKind } from '../../../shared-core/measure/quantity.ts';
import { readQuantity } from '../../../shared-core/measure/read.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { factHeading } from '../../../shared-core/exchange/stash-csv/stash-columns.ts';
import { readKind } from '../../../shared-core/exchange/stash-csv/stash-cells.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import { codeWords } from '../../../shared-core/wording/code-words.ts';
import { nounInSentence } from '../../../shared-core/wording/in-sentence.ts';
import { inEnglish, languageNamed, say, speak } from '../../../shared-core/wording/say.ts';

const typed = { system: 'metric', where: 'Die Breite', decimalComma: true } as const;

describe('for a maker who works in German', () => {
  beforeEach(() => speak('de'));
  afterEach(() => speak('en'));

  test('numbers have a comma, thousands a space that does not break, and days their months', () => {
    expect(showQuantity('length', 1470, { system: 'metric' })).toBe('1,47 m');
    expect(showQuantity('length', 114.3, { system: 'imperial' })).toBe('4 1/2 in');
    expect(showMoney(123_456, 'EUR')).toBe('1\u00a0234,56 EUR');
    expect(showMoney(1_234_567, 'JPY')).toBe('1\u00a0234\u00a0567 JPY');
    expect(dayWords('2026-03-27')).toBe('27. März 2026');
    expect(dayWords('0099-12-01')).toContain('99');
  });

  test('a comma is decimal, and a dot before three figures could mean two things', () => {
    expect(readQuantity('mass', '1,250 kg', typed)).toEqual({ ok: true, value: 1250 });
    expect(readQuantity('length', '1.250,5 mm', typed)).toEqual({ ok: true, value: 1250.5 });
    expect(readQuantity('length', '1.25 m', typed)).toEqual({ ok: true, value: 1250 });
    const refused = readQuantity('length', '1.250 mm', typed);
    expect(refused.ok).toBe(false);
    if (!refused.ok) {
      expect(problemSentence(refused.problems[0]!)).toContain('1,250');
      expect(problemSentence(refused.problems[0]!)).toContain('1250');
    }
  });

  test('what is shown can be typed again', () => {
    const kinds: readonly QuantityKind[] = [
      'length',
      'area',
      'mass',
      'arealMass',
      'threadLength',
      'duration',
    ];
    fc.assert(
      fc.property(fc.constantFrom(...kinds), fc.double({ min: 1, max: 4000, noNaN: true }), (kind, value) => {
        const shown = showQuantity(kind, value, { system: 'metric' });
        const again = readQuantity(kind, shown, typed);
        expect(again.ok, shown).toBe(true);
        if (again.ok) expect(showQuantity(kind, again.value, { system: 'metric' })).toBe(shown);
      }),
      { seed: 7, numRuns: 400 },
    );
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e10 }),
        fc.constantFrom('EUR', 'JPY', 'KWD'),
        (minor, currency) => {
          const shown = plainText(showMoney(minor, currency));
          expect(readMoney(shown, currency, { decimalComma: true }), shown).toBe(minor);
        },
      ),
      { seed: 7, numRuns: 400 },
    );
  });

  test('units are typed with their German names beside the English ones', () => {
    const read = (kind: QuantityKind, text: string) => {
      const outcome = readQuantity(kind, text, typed);
      return outcome.ok ? outcome.value : outcome.problems[0]!.what;
    };
    expect(showQuantity('count', 8, { system: 'metric' })).toBe('8 Stk');
    expect(inEnglish(() => showQuantity('count', 8, { system: 'metric' }))).toBe('8 pcs');
    for (const text of ['8 Stk', '8 Stk.', '8 Stück', '8 st', '8 pcs', '8 pieces'])
      expect(read('count', text), text).toBe(8);
    expect(read('count', '2 Dutzend')).toBe(24);
    expect(read('length', '4 1/2 Zoll')).toBeCloseTo(114.3, 9);
    expect(read('length', '1 Fuß 6 Zoll')).toBeCloseTo(457.2, 9);
    expect(read('length', '1 Meter und 20 Zentimeter')).toBe(1200);
    expect(read('area', '2 Quadratmeter')).toBe(2_000_000);
    expect(read('mass', '250 Gramm')).toBe(250);
    expect(read('arealMass', '80 g pro m²')).toBe(80);
    expect(read('duration', '1 Std 30 Minuten')).toBe(90);
    expect(read('ratio', '12,5 Prozent')).toBeCloseTo(0.125, 12);
    expect(read('length', '8 Stk')).toContain('Stk');
  });

  test('plurals follow the count', () => {
    expect(say('shopping-list.spools', { unitCount: 1 })).toBe('1 Spule');
    expect(say('shopping-list.spools', { unitCount: 2 })).toBe('2 Spulen');
  });

  test('nouns keep their capital inside a sentence, which English does not give them', () => {
    expect(nounInSentence(kindRecords.cloth.label)).toBe('Stoff');
    expect(inEnglish(() => nounInSentence(kindRecords.cloth.label))).toBe('cloth');
  });

  test('files keep their English headings and words, and are read with them', () => {
    const field = {
      kind: 'text',
      label: kindRecords.cloth.fields.finish.label,
      hint: '',
      required: false,
    } as const;
    expect(factHeading('fibre', kindRecords.cloth.fields.fibre)).toBe('fibre');
    expect(factHeading('finish', kindRecords.cloth.fields.finish)).toBe('finish');
    expect(field.label).not.toBe('Finish');
    expect(readKind('Cloth')).toBe('cloth');
  });

  test('what stands in data is shown in German', () => {
    expect(codeWords('dry clean P')).toBe('chemisch reinigen P');
    expect(codeWords('a word of the maker')).toBe('a word of the maker');
  });
});

test('a language is known by its tag, with its country or without', () => {
  expect(languageNamed('de-AT')).toBe('de');
  expect(languageNamed('EN')).toBe('en');
  expect(languageNamed('fr-FR')).toBeNull();
});

test('a service speaks to each window in its own language', () => {
  let asked: 'en' | 'de' = 'de';
  speak(() => asked);
  expect(say('common.is-empty')).toBe('ist leer');
  asked = 'en';
  expect(say('common.is-empty')).toBe('is empty');
  speak('en');
});
