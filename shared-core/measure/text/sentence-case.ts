/** The same words with a capital first, as a sentence or a row of a table begins. */
export function sentenceCase(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
