/** The languages that the product speaks, and how each writes numbers. */

/** Each language with its name in itself, as Settings offers it. */
export const languages = { en: 'English', de: 'Deutsch' } as const;
export type Language = keyof typeof languages;

/** The language that a text names ("de", "de-AT"), null for one that is not spoken here. */
export function languageNamed(tag: string): Language | null {
  const base = tag.toLowerCase().split('-')[0];
  return (Object.keys(languages) as Language[]).find((language) => language === base) ?? null;
}

export interface Signs {
  readonly decimal: string;
  readonly grouping: string;
}

const known = new Map<Language, Signs>();

/** The signs that a language writes numbers with, by `Intl`; what it groups thousands by: see `groupingSign`. */
export function signsOf(language: Language): Signs {
  const before = known.get(language);
  if (before) return before;
  const parts = new Intl.NumberFormat(language).formatToParts(12_345.6);
  const decimal = parts.find(({ type }) => type === 'decimal')?.value ?? '.';
  const made = { decimal, grouping: decimal === ',' ? '\u00a0' : ',' };
  known.set(language, made);
  return made;
}
