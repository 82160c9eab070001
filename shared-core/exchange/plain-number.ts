/** Numbers as programs write them into files. */

const numberForm = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i;

/** NaN for what is no number; 0x12C is none, though JavaScript would take it for 300, nor is an empty text a zero. */
export function plainNumber(text: string): number {
  const word = text.length > 100 ? '' : text.trim();
  return numberForm.test(word) ? Number(word) : Number.NaN;
}
