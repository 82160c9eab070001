/**
 * A check against something outside this project: what others publish or measured, a definition, another library.
 * Each is a row of data, so that the same rows run as tests and print as a table.
 */

/**
 * What a row is worth.
 * 'A': a published or measured result, or that of an independent program, beside what the product computes; the
 * product holds no such number, so the row can fail for the wrong arithmetic and for the wrong idea.
 * 'B': a definition or plain geometry worked apart from the product; it catches slips alone.
 * A number that the product itself keeps in a table, and a number without an outside, are no rows here: where they
 * guard a table they are ordinary tests of its module.
 */
export type OutsideClass = 'A' | 'B';

/** From the least to the most that is published. */
export interface Range {
  readonly min: number;
  readonly max: number;
}

/** How far the result may lie below and above what is published. */
export interface Sides {
  readonly below: number;
  readonly above: number;
}

export interface OutsideCheck {
  readonly class: OutsideClass;
  /** True where the row asks what a whole garment takes or becomes: cloth, batting, thread, fill, zip, mass, warmth. */
  readonly isMainJob?: true;
  /** What is compared, in a few words: "1.6 oz/yd2 in g/m2". */
  readonly name: string;
  /** The publisher of `expected`, with the title; "from memory" where it could not be read again. */
  readonly source: string;
  readonly expected: number | string | Range;
  /** What this project computes. */
  readonly got: number | string;
  /** Largest difference that is allowed, in the unit of `expected`; 0 for texts. */
  readonly tolerance: number | Sides;
  /** Why the tolerance is what it is, said before the result was known. Asked for in class A wherever it is not 0. */
  readonly toleranceReason?: string;
  /** Why the row fails, as found by looking for the cause. Only where it does: a row that holds has none. */
  readonly explanation?: string;
}

export interface OutsideVerdict extends OutsideCheck {
  readonly pass: boolean;
}

/**
 * Pass is a number no further from the published one, or from the nearer end of the published range, than the
 * tolerance on that side; of texts equality. A number against a text, and anything not finite, fails.
 */
export function runOutsideChecks(rows: readonly OutsideCheck[]): OutsideVerdict[] {
  return rows.map((row) => ({ ...row, pass: passes(row) }));
}

function passes({ expected, got, tolerance }: OutsideCheck): boolean {
  if (typeof expected === 'string') return expected === got;
  if (typeof got !== 'number' || !Number.isFinite(got)) return false;
  const { min, max } = typeof expected === 'number' ? { min: expected, max: expected } : expected;
  const { below, above } = typeof tolerance === 'number' ? { below: tolerance, above: tolerance } : tolerance;
  return got >= min - below && got <= max + above;
}

/** A row that does not hold, as it is told to whoever asks. */
export interface FailingRow {
  readonly row: string;
  readonly published: OutsideCheck['expected'];
  readonly computed: number | string;
  readonly tolerance: OutsideCheck['tolerance'];
  readonly explanation: string;
}

export interface OutsideSummary {
  readonly classA: number;
  /** Rows of class A that touch the main job. */
  readonly mainJob: number;
  readonly failing: readonly FailingRow[];
}

/** What the rows are worth and which fail. The topic stands before the name of a row. */
export function summaryOf(
  verdicts: readonly (OutsideVerdict & { readonly topic: string })[],
): OutsideSummary {
  const classA = verdicts.filter((verdict) => verdict.class === 'A');
  return {
    classA: classA.length,
    mainJob: classA.filter(({ isMainJob }) => isMainJob).length,
    failing: verdicts
      .filter(({ pass }) => !pass)
      .map(({ topic, name, expected, got, tolerance, explanation }) => ({
        row: `${topic}: ${name}`,
        published: expected,
        computed: got,
        tolerance,
        explanation: explanation ?? '',
      })),
  };
}
