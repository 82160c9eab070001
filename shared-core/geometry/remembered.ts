/**
 * Remembers what a function gave for an object, as long as the object lives. For what is dear to work out and asked
 * again and again of a plan, a piece or an outline: those never change, a change makes new ones, and whatever it left
 * as it was is remembered still. What is given must not be changed either.
 *
 * work: gives the same for the same object and words, whatever the language.
 */
export function remembered<Of extends object, Words extends readonly (string | number | null)[], Given>(
  work: (of: Of, ...words: Words) => Given,
): (of: Of, ...words: Words) => Given {
  const given = new WeakMap<Of, Map<string, Given>>();
  return (of, ...words) => {
    let known = given.get(of);
    if (known === undefined) {
      known = new Map();
      given.set(of, known);
    }
    const key = JSON.stringify(words);
    const before = known.get(key);
    if (before !== undefined || known.has(key)) return before as Given;
    const now = work(of, ...words);
    known.set(key, now);
    return now;
  };
}
