/**
 * A text as a typeface can write it. A sign that it lacks is written in plainer ones; a letter that it lacks stands
 * without its accent or as ?, and the reader is told.
 */
import { say } from '../wording/say.ts';
export interface PlainLetters {
  readonly text: string;
  /** The letters that did not come out as typed, each once. */
  readonly changed: readonly string[];
}

const plainerSigns: ReadonlyMap<string, string> = new Map([
  ['→', '->'],
  ['←', '<-'],
  ['≤', '<='],
  ['≥', '>='],
  ['≈', '~'],
  ['≠', '!='],
  ['✓', 'x'],
]);

/** has: whether the typeface has a code point. Line ends and tabs become spaces; what is invisible is left out. */
export function plainLetters(text: string, has: (codePoint: number) => boolean): PlainLetters {
  const changed = new Set<string>();
  let plain = '';
  for (const letter of text.normalize('NFC')) {
    if (/\s/u.test(letter)) plain += ' ';
    else if (/[\p{Cc}\p{Cf}\p{Variation_Selector}]/u.test(letter)) continue;
    else if (has(letter.codePointAt(0) ?? 0)) plain += letter;
    else {
      const plainer = substitute(letter, has);
      // A sign in plainer dress reads the same; a letter does not.
      if (/\p{L}/u.test(letter) || plainer === '?') changed.add(letter);
      plain += plainer;
    }
  }
  return { text: plain, changed: [...changed] };
}

function substitute(letter: string, has: (codePoint: number) => boolean): string {
  const bare = letter.normalize('NFKD').replace(/\p{M}/gu, '');
  const isWritable = (word: string) =>
    word !== '' && [...word].every((each) => has(each.codePointAt(0) ?? 0));
  if (isWritable(bare)) return bare;
  const plainer = plainerSigns.get(letter);
  return plainer !== undefined && isWritable(plainer) ? plainer : '?';
}

/** "“絹” and others", the first few of them. letters: one at least. */
export function lettersWords(letters: readonly string[]): string {
  const shown = letters.slice(0, 4).map((letter) => `“${letter}”`);
  return letters.length > shown.length
    ? say('plain-letters.and-others', { shown: shown.join(', ') })
    : shown.join(', ');
}
