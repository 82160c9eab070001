/** Names in the order of the spoken language's alphabet: "Öse" beside "Ose" in German, whatever the machine's own language. */
import { type Language, spokenLanguage } from './say.ts';

/** For `sort`: below 0 where `one` comes first. */
export function byName(one: string, other: string): number {
  return collator().compare(one, other);
}

const collators = new Map<Language, Intl.Collator>();

function collator(): Intl.Collator {
  const language = spokenLanguage();
  const known = collators.get(language);
  if (known) return known;
  const made = new Intl.Collator(language);
  collators.set(language, made);
  return made;
}
