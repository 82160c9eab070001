/** SQLite takes a limited number of values in one query, and other calls have their turn between two. */
const defaultSize = 300;

/** The values in their order, in parts of so many each and a rest. size: 1 or more. */
export function inParts<Value>(values: readonly Value[], size = defaultSize): Value[][] {
  const parts: Value[][] = [];
  for (let from = 0; from < values.length; from += size) parts.push(values.slice(from, from + size));
  return parts;
}
