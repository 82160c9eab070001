/** Decimal places of currencies against the list of their standard. */
import { minorPlaces } from '../../shared-core/measure/currency.ts';
import type { OutsideCheck } from './outside.ts';

const list = 'ISO 4217 currency and funds code list, list one, "minor unit", 2025-02-04';
const rest = 'ISO 4217 list one, "minor unit" (from memory)';

/** places, source, codes. */
const places: readonly (readonly [number, string, string])[] = [
  [0, list, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'],
  [
    2,
    rest,
    'AED AFN ALL AUD BRL CAD CHF CNY COP CZK DKK EGP EUR GBP HKD HUF IDR ILS INR IRR KPW LAK LBP MGA MMK MRU MXN MYR NOK NZD PHP PKR PLN RON RSD RUB SAR SEK SGD SOS SYP THB TRY TWD TZS UAH USD UYU YER ZAR',
  ],
  [3, list, 'BHD IQD JOD KWD LYD OMR TND'],
  [4, list, 'CLF UYW'],
];

const rows: OutsideCheck[] = places.flatMap(([expected, source, codes]) =>
  codes.split(' ').map((code) => ({
    name: `decimal places of ${code}`,
    source,
    expected,
    got: minorPlaces(code),
    tolerance: 0,
  })),
);

export default rows;
