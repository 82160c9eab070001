/** Amounts of money as written on a receipt: at most two decimal places, so that a third makes a comma group thousands. */
import { readNumber } from './number-text.ts';
import type { Unread } from './read-sizes.ts';

const currencySigns: Readonly<Record<string, RegExp>> = {
  '€': /^EUR$/,
  '£': /^GBP$/,
  $: /D$/,
  '¥': /^(JPY|CNY)$/,
};

/** Minor units of "12.50", "12,50", "EUR 1,250.00", "€12"; a sign must be that of the workshop's currency. */
export function readMoney(text: string, currency: string): number | Unread {
  const match = /^([a-z]{3}|[€£$¥])? ?([\d., ]*\d)(?:\.?-)? ?([a-z]{3}|[€£$¥])?$/.exec(text);
  if (!match || (match[1] && match[3])) return {};
  const sign = match[1] ?? match[3];
  if (sign) {
    const same = currencySigns[sign]?.test(currency) ?? sign.toUpperCase() === currency;
    if (!same) return { what: `is in ${sign.toUpperCase()}, which is not the workshop's currency` };
  }
  const number = readNumber(match[2]!, { commaGroups: true, withFractions: false });
  if (typeof number === 'string' || number.rest !== '') return {};
  if (number.placeCount > 2) {
    return { what: 'has more than two decimal places', mend: 'Type an amount such as 12.50.' };
  }
  return (number.numerator * 100) / number.denominator;
}
