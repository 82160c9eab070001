/** What parts the cells of a table that a spreadsheet wrote. */

/** By the headings: spreadsheets of some countries write semicolons; tabs come from copied tables. */
export function delimiterOf(text: string): string {
  const first = text.slice(0, 20_000).split(/\r?\n/, 1)[0] ?? '';
  const count = (sign: string) => first.split(sign).length;
  return [',', ';', '\t'].reduce((best, sign) => (count(sign) > count(best) ? sign : best));
}
