/** What a hand, a cat or a paste may leave in a field for a quantity. */
import type { Random } from './mutants.ts';

const units = [
  'in',
  'cm',
  'mm',
  'm',
  'yd',
  'ft',
  '"',
  "'",
  '″',
  'oz',
  'g',
  'kg',
  'lb',
  'oz/yd2',
  'g/m²',
  'tex',
  'Nm',
  'Ne',
  'dtex',
  '%',
  'x',
  'EUR',
  '€',
  '$',
  'h',
  'min',
  'clo',
  'NM',
  'US',
  'pcs',
  'dozen',
  'fp',
  'in3/oz',
];
const figures = [
  '0',
  '1',
  '2',
  '5',
  '7',
  '9',
  '12',
  '115',
  '1000',
  '1,250',
  '1.250,5',
  '1,234.5',
  '0,5',
  '.5',
  '5.',
  '4 1/2',
  '4½',
  '½',
  '⅞',
  '1/0',
  '999999999999999999',
  '1e5',
  '-4',
  '−4',
  '+3',
  '--5',
  '0x10',
  '٣',
  '９',
  '5²',
  '①',
  'NaN',
  '∞',
  '1 000',
  "1'000",
];
const signs = [
  ' ',
  '  ',
  '\u00a0',
  '\u2009',
  '/',
  '-',
  '–',
  '.',
  ',',
  ';',
  ':',
  '+',
  '&',
  ' and ',
  '×',
  '(',
  ')',
  '\t',
  '\n',
  '\0',
  '\u202e',
  '\ud83e\udea1',
  'é',
  'ß',
  '=',
  '@',
];

/** As many texts of figures, units and signs in any order, the same ones for the same random numbers. */
export function typedTexts(count: number, random: Random): string[] {
  const oneOf = (words: readonly string[]) => words[Math.floor(random() * words.length)]!;
  return Array.from({ length: count }, () => {
    const length = 1 + Math.floor(random() * 6);
    const words = Array.from({ length }, () => {
      const choice = random();
      if (choice < 0.45) return oneOf(figures);
      if (choice < 0.75) return oneOf(units);
      if (choice < 0.95) return oneOf(signs);
      return String.fromCodePoint(Math.floor(random() * 0xd7ff));
    });
    return words.join(random() < 0.3 ? ' ' : '');
  });
}
