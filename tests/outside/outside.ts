/**
 * A check against something outside this project: a published value, a definition, or another library.
 * Each is a row of data, so that the same rows run as tests and print as a table.
 */
export interface OutsideCheck {
  /** What is compared, in a few words: "1.6 oz/yd2 in g/m2". */
  readonly name: string;
  /** The publisher of `expected`; "common practice, no source" or "from memory" where that is the truth. */
  readonly source: string;
  readonly expected: number | string;
  /** What this project computes. */
  readonly got: number | string;
  /** Largest difference that is allowed, in the unit of `expected`; 0 for texts. Says how finely the source is printed. */
  readonly tolerance: number;
}

export interface OutsideVerdict extends OutsideCheck {
  readonly pass: boolean;
}

/**
 * Pass is |got - expected| <= tolerance for numbers, equality for texts. A number against a text, and anything
 * not finite, fails.
 */
export function runOutsideChecks(rows: readonly OutsideCheck[]): OutsideVerdict[] {
  return rows.map((row) => ({ ...row, pass: passes(row) }));
}

function passes({ expected, got, tolerance }: OutsideCheck): boolean {
  if (typeof expected === 'number' && typeof got === 'number') return Math.abs(got - expected) <= tolerance;
  return typeof expected === 'string' && expected === got;
}
