/** What a currency's code, three letters of ISO 4217, says of its amounts: their decimal places and their sign. */

/**
 * Codes whose minor unit is not a hundredth, by its decimal places: ISO 4217, list one, "minor unit". Written down here
 * since stored amounts hang on it: what browsers and Node know follows everyday use instead (no decimals for IQD or
 * HUF), and changes with their versions.
 */
const otherPlaces: readonly (readonly [number, string])[] = [
  [0, 'BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF'],
  [3, 'BHD IQD JOD KWD LYD OMR TND'],
  [4, 'CLF UYW'],
];

const placesOf = new Map(
  otherPlaces.flatMap(([places, codes]) => codes.split(' ').map((code) => [code, places] as const)),
);

/** Signs that stand alone for a currency where it is the country's own: narrow symbols of Unicode CLDR. */
const signs: Readonly<Record<string, string>> = {
  $: 'ARS AUD BBD BMD BND BSD BZD CAD CLP COP CUP DOP FJD GYD HKD JMD KYD LRD MXN NAD NZD SBD SGD SRD TTD TWD USD UYU XCD',
  '€': 'EUR',
  '£': 'FKP GBP GIP SHP SSP SYP',
  '¥': 'CNY JPY',
  '₩': 'KPW KRW',
  '₹': 'INR',
};

export const currencySigns: readonly string[] = Object.keys(signs);

/** Decimal places of an amount: 0 of JPY, 3 of KWD, 2 of most, and of codes that are not in the list. Throws for ''. */
export function minorPlaces(currency: string): number {
  if (currency === '') throw new RangeError('an amount of money without a currency');
  return placesOf.get(currency) ?? 2;
}

/** "none", "two", "three" or "four" decimal places. */
export function placesWord(currency: string): string {
  return ['none', 'one', 'two', 'three', 'four'][minorPlaces(currency)]!;
}

/** Whether a sign or code, in capitals or not, can only mean this currency in a workshop that counts in it. */
export function meansCurrency(signOrCode: string, currency: string): boolean {
  const codes = signs[signOrCode];
  return codes === undefined ? signOrCode.toUpperCase() === currency : codes.split(' ').includes(currency);
}
