/** What parts the cells of a table that a spreadsheet wrote. */

/**
 * By the headings: spreadsheets of some countries write semicolons; tabs come from copied rows. No heading holds a tab,
 * though several hold commas, so one tab decides.
 */
export function delimiterOf(text: string): string {
  const first = text.slice(0, 20_000).split(/\r?\n|\r/, 1)[0] ?? '';
  if (first.includes('\t')) return '\t';
  const count = (sign: string) => first.split(sign).length;
  return count(';') > count(',') ? ';' : ',';
}
