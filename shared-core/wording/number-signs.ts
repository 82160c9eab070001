/** The signs that the spoken language writes numbers with. */
import { signsOf } from './languages.ts';
import { spokenLanguage } from './say.ts';

/** "." in English, "," in German. */
export function decimalSign(): string {
  return signsOf(spokenLanguage()).decimal;
}

/**
 * What stands between thousands of money: "," in English. In a language with a decimal comma it is a space that does not
 * break, since its dot would read as a decimal sign to others.
 */
export function groupingSign(): string {
  return signsOf(spokenLanguage()).grouping;
}

/** A number written with a dot ("12.5", "4 1/2") as the spoken language writes it. */
export function withDecimalSign(number: string): string {
  return decimalSign() === '.' ? number : number.replace('.', decimalSign());
}

/** Digits of a whole number with its thousands grouped: "10,000". */
export function grouped(digits: string): string {
  return digits.replace(/\B(?=(\d{3})+$)/g, groupingSign());
}
