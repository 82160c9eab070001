/**
 * How a figure was got. Every estimate carries one, so that a rule of thumb is shown as one.
 */
export interface Basis {
  readonly kind: 'computed' | 'rule of thumb' | 'measured';
  /** How, in a sentence the maker can check: "seam length x 2.5 (lockstitch 301) + 15 % wastage". */
  readonly how: string;
  /** A published source, or "common practice, no source". Empty where plain arithmetic or geometry needs none. */
  readonly source: string;
}
