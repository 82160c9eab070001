/** How often a piece is cut, as files write it. */
/**
 * "2" is two alike, "1,1" one and its mirror image (from memory of the standard's use), "" one. Null for anything else.
 */
export function cutQuantity(text: string): { cutCount: number; isMirrored: boolean } | null {
  if (text.trim() === '') return { cutCount: 1, isMirrored: false };
  const match = /^\s*(\d{1,4})\s*(?:[,;/]\s*(\d{1,4})\s*)?$/.exec(text);
  if (!match) return null;
  const plain = Number(match[1]);
  const mirrored = Number(match[2] ?? 0);
  if (plain + mirrored < 1 || plain + mirrored > 1000) return null;
  // A plan cuts mirrored pieces in pairs: two and one mirrored have no form in it.
  if (mirrored !== 0 && mirrored !== plain) return null;
  return { cutCount: plain + mirrored, isMirrored: mirrored > 0 };
}
