/** A small seeded generator: the same seed gives the same lay on every machine. */
export interface Random {
  /** 0 (included) to 1 (excluded). */
  next(): number;
}

export function randomFrom(seed: number): Random {
  let state = (Math.trunc(seed) ^ 0x9e3779b9) >>> 0;
  return {
    next() {
      state = (state + 0x6d2b79f5) >>> 0;
      let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
      mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
      return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
    },
  };
}
