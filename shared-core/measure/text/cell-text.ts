/** Texts in the cells of a spreadsheet's file. */

/** A text that a spreadsheet would run as a formula gets an apostrophe in front, and loses it on the way in. */
export function textCell(text: string): string {
  return /^'*[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

export function readText(cell: string): string {
  return /^'+[=+\-@\t\r]/.test(cell) ? cell.slice(1) : cell;
}
