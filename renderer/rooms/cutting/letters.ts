/** The letter of a rest, the same in the list and on the drawing. */
export function letterOf(index: number): string {
  return String.fromCharCode('A'.charCodeAt(0) + index);
}
