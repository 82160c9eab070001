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
  const given = new WeakMap<Of, Map<unknown, unknown>>();
  return (of, ...words) => {
    let known = given.get(of);
    if (known === undefined) {
      known = new Map();
      given.set(of, known);
    }
    // A map for each word but the last, since a text made of all of them takes longer than some of what is asked.
    const last = words.length - 1;
    for (let at = 0; at < last; at++) {
      let further = known.get(words[at]) as Map<unknown, unknown> | undefined;
      if (further === undefined) {
        further = new Map();
        known.set(words[at], further);
      }
      known = further;
    }
    const before = known.get(words[last]);
    if (before !== undefined || known.has(words[last])) return before as Given;
    const now = work(of, ...words);
    known.set(words[last], now);
    return now;
  };
}
