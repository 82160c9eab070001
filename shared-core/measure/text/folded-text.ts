/** Text as names are compared: capitals, accents and the spacing of words make no difference. */

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

/** Texts that a maker would not tell apart give the same; '' for a text of blanks and bare accents alone. */
export function folded(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[ßæœøđðłþı]/g, (letter) => plainLetters[letter]!)
    .replace(/\s+/g, ' ')
    .trim();
}
