import { spokenLanguage } from './say.ts';

/** A noun that heads a list or a field, as it stands inside a sentence: small in English, as it is in German. */
export function nounInSentence(noun: string): string {
  return spokenLanguage() === 'de' ? noun : noun.toLowerCase();
}
