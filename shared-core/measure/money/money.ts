/**
 * Money is an integer count of minor units of the workshop's one currency: cents of EUR, yen of JPY, fils of KWD.
 * No float enters a sum: ratios become minor units only in `roundMinor`, `shareMinor` and `wholeShareMinor`.
 */
import { decimalSign, grouped } from '../../wording/number-signs.ts';
import { minorPlaces } from './currency.ts';

/** Half away from zero. Throws for a value that is not finite or not safely an integer. */
export function roundMinor(amount: number): number {
  const rounded = Math.sign(amount) * Math.round(Math.abs(amount));
  if (!Number.isSafeInteger(rounded)) throw new RangeError(`not an amount of money: ${amount}`);
  return rounded === 0 ? 0 : rounded;
}

/** Price of part of a lot: totalMinor x part / whole, rounded once. Throws when whole is not above 0. */
export function shareMinor(totalMinor: number, part: number, whole: number): number {
  if (!(whole > 0)) throw new RangeError(`a lot of ${whole} cannot be shared`);
  return roundMinor((totalMinor * part) / whole);
}

/**
 * totalMinor x part / whole for whole numbers, exact before it is rounded once, half away from zero: for what must
 * agree with a ledger however large its amounts are. Throws where one is not a whole number, or whole is not above 0.
 */
export function wholeShareMinor(totalMinor: number, part: number, whole: number): number {
  if (!(whole > 0)) throw new RangeError(`a lot of ${whole} cannot be shared`);
  const product = BigInt(totalMinor) * BigInt(part);
  const divisor = BigInt(whole);
  const size = product < 0n ? -product : product;
  const rounded = Number((2n * size + divisor) / (2n * divisor));
  if (!Number.isSafeInteger(rounded)) throw new RangeError(`not an amount of money: ${rounded}`);
  return product < 0n && rounded !== 0 ? -rounded : rounded;
}

/**
 * Splits totalMinor over weights so that the parts add up to it exactly (largest remainder first,
 * the earlier one on a tie). Weights are 0 or more with a sum above 0, else it throws.
 */
export function splitMinor(totalMinor: number, weights: readonly number[]): number[] {
  const weightSum = weights.reduce((sum, weight) => sum + weight, 0);
  if (!(weightSum > 0) || weights.some((weight) => weight < 0)) {
    throw new RangeError('weights must be 0 or more, with a sum above 0');
  }
  const exact = weights.map((weight) => (totalMinor * weight) / weightSum);
  const parts = exact.map((amount) => Math.floor(amount));
  let rest = totalMinor - parts.reduce((sum, part) => sum + part, 0);
  const byRemainder = exact
    .map((amount, index) => ({ index, remainder: amount - Math.floor(amount) }))
    .sort((a, b) => b.remainder - a.remainder || a.index - b.index);
  for (let i = 0; rest > 0; i = (i + 1) % byRemainder.length, rest--) {
    const next = byRemainder[i];
    if (next) parts[next.index] = (parts[next.index] ?? 0) + 1;
  }
  return parts;
}

/** 1234 of "EUR" as "12.34", ungrouped and exact: an amount in a cell of a file. 1234 of "JPY" is "1234". */
export function plainMoney(amountMinor: number, currency: string): string {
  const places = minorPlaces(currency);
  const sign = amountMinor < 0 ? '-' : '';
  const digits = Math.abs(amountMinor)
    .toString()
    .padStart(places + 1, '0');
  const cut = digits.length - places;
  return `${sign}${digits.slice(0, cut)}${places > 0 ? '.' : ''}${digits.slice(cut)}`;
}

/** 123456 of "EUR" as "1,234.56", with the signs of the spoken language: what stands in a column under its currency. */
export function moneyNumber(amountMinor: number, currency: string): string {
  const [whole = '', ...places] = plainMoney(amountMinor, currency).split('.');
  return [grouped(whole), ...places].join(decimalSign());
}

/** 1234 of "EUR" as "12.34 EUR", the unit behind the number as with every quantity; always all decimal places. */
export function showMoney(amountMinor: number, currency: string): string {
  return `${moneyNumber(amountMinor, currency)} ${currency}`;
}
