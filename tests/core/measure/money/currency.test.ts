import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minorPlaces } from '../../../../shared-core/measure/money/currency.ts';
import { showMoney } from '../../../../shared-core/measure/money/money.ts';
import { problemSentence } from '../../../../shared-core/measure/problem.ts';
import { readQuantity } from '../../../../shared-core/measure/read.ts';
import { showParts, showQuantity } from '../../../../shared-core/measure/show.ts';

function read(text: string, currency: string): number | string {
  const outcome = readQuantity('money', text, { system: 'metric', where: 'The price', currency });
  return outcome.ok ? outcome.value : outcome.problems.map(problemSentence).join(' ');
}

describe('an amount in the minor units of its own currency', () => {
  it.each([
    ['JPY', 1234, '1,234 JPY'],
    ['JPY', -7, '-7 JPY'],
    ['KWD', 1234, '1.234 KWD'],
    ['KWD', 5, '0.005 KWD'],
    ['IQD', 1_250_000, '1,250.000 IQD'],
    ['CLF', 12_345, '1.2345 CLF'],
    ['EUR', 123_450, '1,234.50 EUR'],
    ['HUF', 123_450, '1,234.50 HUF'],
  ])('%s %i is shown as %s', (currency, amountMinor, shown) => {
    expect(showMoney(amountMinor, currency)).toBe(shown);
    expect(showQuantity('money', amountMinor, { system: 'metric', currency })).toBe(shown);
    expect(showParts('money', amountMinor, { system: 'imperial', currency })).toEqual({
      number: shown.slice(0, -4),
      unit: currency,
    });
  });

  it.each([
    ['1.234', 'KWD', 1234],
    ['1,23', 'KWD', 1230],
    ['KWD 1,234.567', 'KWD', 1_234_567],
    ['1.234,567', 'KWD', 1_234_567],
    ['12', 'BHD', 12_000],
    ['1234', 'JPY', 1234],
    ['1,234', 'JPY', 1234],
    ['¥1,234', 'JPY', 1234],
    ['1,234,567', 'JPY', 1_234_567],
    ['1234.00', 'JPY', 1234],
    ['12,0', 'JPY', 12],
    ['1.2345', 'UYW', 12_345],
    ['$5', 'MXN', 500],
    ['£3.20', 'GIP', 320],
    ['¥8', 'CNY', 800],
  ])('%s in %s is read as %i', (text, currency, amountMinor) => {
    expect(read(text, currency)).toBe(amountMinor);
  });

  it.each([
    ['12.5', 'JPY', 'The price has decimal places, and JPY has none. Type an amount such as 1250.'],
    ['1.234', 'JPY', 'The price has decimal places, and JPY has none. Type an amount such as 1250.'],
    ['1.2345', 'KWD', 'The price has more than three decimal places. Type an amount such as 1.250.'],
    [
      '1,234',
      'KWD',
      'The price says "1,234", which could be read in two ways. Type 1.234 or 1234, without a comma.',
    ],
    ['12.505', 'EUR', 'The price has more than two decimal places. Type an amount such as 12.50.'],
    [
      'free',
      'JPY',
      'The price says "free", which is not an amount of money. Type an amount of money such as 1250 or JPY 125,000.',
    ],
    [
      'free',
      'KWD',
      'The price says "free", which is not an amount of money. Type an amount of money such as 1.250 or KWD 125.000.',
    ],
  ])('%s in %s is asked again', (text, currency, sentence) => {
    expect(read(text, currency)).toBe(sentence);
  });

  it.each([
    ['$5', 'IQD'],
    ['$5', 'AED'],
    ['5 $', 'EUR'],
    ['$5', 'BRL'],
    ['£5', 'TRY'],
    ['£5', 'EUR'],
    ['€5', 'USD'],
    ['¥5', 'KRW'],
    ['$5', 'XYZ'],
  ])('the sign in "%s" is not that of %s', (text, currency) => {
    expect(read(text, currency)).toContain("is not the workshop's currency");
  });

  it('is read again as it was shown, alone or with its code', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('JPY', 'EUR', 'KWD', 'UYW', 'ISK', 'HUF', 'MRU'),
        fc.integer({ min: 0, max: 1e11 }),
        (currency, amountMinor) => {
          const options = { system: 'metric', currency } as const;
          expect(read(showQuantity('money', amountMinor, options), currency)).toBe(amountMinor);
          expect(read(showParts('money', amountMinor, options).number, currency)).toBe(amountMinor);
        },
      ),
      { seed: 5, numRuns: 600 },
    );
  });

  it('is nothing that can be read or shown without knowing the currency', () => {
    expect(() => readQuantity('money', '12.50', { system: 'metric', where: '' })).toThrow(RangeError);
    expect(() => showQuantity('money', 1250, { system: 'metric' })).toThrow(RangeError);
  });
});

it.each([
  [0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'],
  [
    2,
    'AED AFN ALL AUD BRL CAD CHF CNY COP CZK DKK EGP EUR GBP HKD HUF IDR ILS INR IRR KPW LAK LBP MGA MMK MRU MXN MYR NOK NZD PHP PKR PLN RON RSD RUB SAR SEK SGD SOS SYP THB TRY TWD TZS UAH USD UYU YER ZAR',
  ],
  [3, 'BHD IQD JOD KWD LYD OMR TND'],
  [4, 'CLF UYW'],
])('%i decimal places by the list of the standard, ISO 4217 list one of 2025-02-04: %s', (places, codes) => {
  for (const code of codes.split(' ')) expect([code, minorPlaces(code)]).toEqual([code, places]);
});
