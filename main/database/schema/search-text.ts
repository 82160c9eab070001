/** Text as a maker searches and sorts it. */
import { folded } from '../../../shared-core/measure/text/folded-text.ts';

/** Sorts as text and yet by the numbers inside: "Zip 9" before "Zip 10". */
export function sortKey(text: string): string {
  return folded(text).replace(/\d+/g, (digits) => digits.padStart(12, '0'));
}

/** Each of these must stand somewhere in an item's search text. */
export function searchWords(search: string): string[] {
  const words = folded(search).split(' ');
  return [...new Set(words)].filter((word) => word !== '');
}

/** One folded field a line, so that no word is found across two fields; each line once. */
export function searchText(fields: readonly string[]): string {
  const lines = fields.map(folded).filter((line) => line !== '');
  return [...new Set(lines)].join('\n');
}
