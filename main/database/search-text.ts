/** Text as a maker searches and sorts it: capitals, accents and the spacing of words make no difference. */

/** Letters that are no accented form of another, but are typed as one. */
const plainLetters: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  đ: 'd',
  ð: 'd',
  ł: 'l',
  þ: 'th',
  ı: 'i',
};

export function folded(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßæœøđðłþı]/g, (letter) => plainLetters[letter]!)
    .replace(/\s+/g, ' ')
    .trim();
}

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
