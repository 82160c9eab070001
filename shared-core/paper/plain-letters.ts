/**
 * Letters for a typeface that has those of western Europe alone. What it lacks is written without its accent, in
 * Latin spelling (Greek, Cyrillic), or as ?, and the reader is told.
 */
export interface PlainLetters {
  readonly text: string;
  /** The letters that did not come out as typed, each once. */
  readonly changed: readonly string[];
}

const latinSpelling: ReadonlyMap<string, string> = new Map(
  [
    'ł l đ d ħ h ı i ŋ ng ŧ t ĸ k ſ s ə e ẞ SS',
    'α a β v γ g δ d ε e ζ z η i θ th ι i κ k λ l μ m ν n ξ x ο o π p ρ r σ s ς s τ t υ y φ f χ ch ψ ps ω o',
    'а a б b в v г g д d е e ж zh з z и i к k л l м m н n о o п p р r с s т t у u ф f х kh ц ts ч ch ш sh щ shch',
    'ъ " ы y ь \' э e ю yu я ya є ye і i ґ g ђ dj ј j љ lj њ nj ћ c џ dz ѕ dz',
    '‐ - ‑ - ‒ - ― - − - ′ \' ″ " ⁄ / → -> ≤ <= ≥ >= ≈ ~ ⅛ 1/8 ⅜ 3/8 ⅝ 5/8 ⅞ 7/8 ⅓ 1/3 ⅔ 2/3',
  ].flatMap((list) => {
    const words = list.split(' ');
    return words.flatMap((word, index) =>
      index % 2 === 0 ? [[word, words[index + 1] ?? '?'] as const] : [],
    );
  }),
);

/** has: whether the typeface has a code point. Line ends and tabs become spaces; what is invisible is left out. */
export function plainLetters(text: string, has: (codePoint: number) => boolean): PlainLetters {
  const changed = new Set<string>();
  let plain = '';
  for (const letter of text.normalize('NFC')) {
    if (/\s/u.test(letter)) plain += ' ';
    else if (/[\p{Cc}\p{Cf}]/u.test(letter)) continue;
    else if (has(letter.codePointAt(0) ?? 0)) plain += letter;
    else {
      const plainer = substitute(letter, has);
      // A sign in plainer dress, a minus as a hyphen, reads the same; a letter does not.
      if (/\p{L}/u.test(letter) || plainer === '?') changed.add(letter);
      // "2⅛" must not become 21/8.
      plain += /\p{No}/u.test(letter) && /\d$/.test(plain) ? ` ${plainer}` : plainer;
    }
  }
  return { text: plain, changed: [...changed] };
}

function substitute(letter: string, has: (codePoint: number) => boolean): string {
  const bare = letter.normalize('NFKD').replace(/\p{M}/gu, '');
  const isWritable = (word: string) =>
    word !== '' && [...word].every((each) => has(each.codePointAt(0) ?? 0));
  if (isWritable(bare)) return bare;
  const small = bare.toLowerCase();
  const spelled = latinSpelling.get(letter) ?? latinSpelling.get(small);
  if (spelled === undefined || !isWritable(spelled)) return bare === '' ? '' : '?';
  return small === bare ? spelled : spelled.charAt(0).toUpperCase() + spelled.slice(1);
}
