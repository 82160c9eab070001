/** What was typed is shown back as it was typed, for as long as it is still true. */
import { withDecimalSign } from '../wording/number-signs.ts';
import type { QuantityKind } from './quantity.ts';
import { readQuantity } from './read.ts';
import { type ShowOptions, showQuantity } from './show.ts';

/**
 * typedText where it still reads to value (within 1e-9 of it) under these options, else the value shown anew:
 * a bare "115" typed in mm is not shown back once the workshop measures in inches.
 */
export function showTyped(
  kind: QuantityKind,
  value: number,
  typedText: string | undefined,
  options: ShowOptions,
): string {
  if (typedText === undefined) return showQuantity(kind, value, options);
  // In the language that is spoken now, which may not be the one that it was typed in.
  const text = withDecimalSign(typedText);
  const reading = readQuantity(kind, text, {
    ...options,
    where: '',
    min: Number.NEGATIVE_INFINITY,
    max: Number.POSITIVE_INFINITY,
  });
  const same = reading.ok && Math.abs(reading.value - value) <= 1e-9 * Math.abs(value);
  return same ? text : showQuantity(kind, value, options);
}
