/** The same piece has the same hue in every lay. id: of its shape. Degrees. */
export function hueOf(id: string): number {
  let hash = 2166136261;
  for (const letter of id) hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 16777619) >>> 0;
  return (hash % 24) * 15;
}
