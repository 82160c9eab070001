/**
 * How a figure was got. Every estimate carries one, so that a rule of thumb is shown as one.
 */
import { type MeasureSystem, quantityFacts, type QuantityKind } from './quantity.ts';
import { showQuantity } from './show.ts';

export interface Basis {
  readonly kind: 'computed' | 'rule of thumb' | 'measured';
  /**
   * How, in a sentence the maker can check: "seam length x 2.5 (lockstitch 301) + 15 % wastage".
   * A measure in it stands as {length 12.5}, kind and value inside, and is shown in the maker's units by `howText`.
   */
  readonly how: string;
  /** A published source, or "common practice, no source". Empty where plain arithmetic or geometry needs none. */
  readonly source: string;
}

/** A measure for a sentence whose reader's units are not known yet: "{length 12.5}". */
export function measureIn(kind: QuantityKind, value: number): string {
  return `{${kind} ${value}}`;
}

/** A sentence with each measure in the maker's units. A kind that is not known is left as it stands. */
export function howText(how: string, system: MeasureSystem): string {
  return how.replace(/\{(\w+) (-?[\d.eE+-]+)\}/g, (whole, kind: string, value: string) =>
    kind in quantityFacts ? showQuantity(kind as QuantityKind, Number(value), { system }) : whole,
  );
}
