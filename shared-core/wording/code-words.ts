/** Words for values that stand in data and files, which are the same in every language: "dry clean P", "ballpoint". */
import { hasMessage, say } from './say.ts';

/** The value as the spoken language says it; one that the catalogue does not have stands as it is. */
export function codeWords(code: string): string {
  const id = `code.${code.replace(/[^A-Za-z0-9]+/g, '-').toLowerCase()}`;
  return hasMessage(id) ? say(id) : code;
}
