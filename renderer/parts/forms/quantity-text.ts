/** Quantities of a form as text, and how they are read when the form is sent. */
import { z } from 'zod';
import type { Settings } from '../../../shared-core/contract/schemas.ts';
import type { QuantityAsked } from './QuantityInput.tsx';
import { type Misread, readTyped, type TypedQuantity } from './typed-quantity.ts';

/** In what a bare number is read. */
export type Units = Pick<Settings, 'system' | 'currency'>;

/**
 * A value as it stands in a field at first. As long as nothing else is typed there, it is that value and not what its
 * rounded text would be read as.
 */
export interface Shown {
  readonly text: string;
  readonly value: number | null;
}

export const nothingShown: Shown = { text: '', value: null };

/** A count needs no unit: its label says what is counted. */
export function shownCount(count: number | null | undefined): Shown {
  return count == null ? nothingShown : { text: String(count), value: count };
}

export type Asked = Omit<QuantityAsked, 'hint'>;

/** What a text reads to; null where nothing is typed. */
export function quantityText(
  asked: Asked,
  units: Units,
  shown: Shown = nothingShown,
): z.ZodType<number | null, string> {
  return z.string().transform((text, context) => {
    const read = readAsked(asked, units, text, shown);
    if ('value' in read) return read.value;
    context.addIssue({ code: 'custom', message: read.misread });
    return z.NEVER;
  });
}

/** As quantityText, within a line of a form whose texts at first are its own. path: of the field in its line. */
export function readAt(
  context: Pick<z.RefinementCtx, 'addIssue'>,
  path: (string | number)[],
  asked: Asked,
  units: Units,
  { text, shown = nothingShown }: { readonly text: string; readonly shown?: Shown },
): number | null {
  const read = readAsked(asked, units, text, shown);
  if ('value' in read) return read.value;
  context.addIssue({ code: 'custom', message: read.misread, path });
  return null;
}

/** The same while it is being typed: null where it is empty or cannot be read. */
export function readNow(
  asked: Asked,
  units: Units,
  text: string,
  shown: Shown = nothingShown,
): number | null {
  const read = readAsked(asked, units, text, shown);
  return 'value' in read ? read.value : null;
}

/** What a text says, or why it cannot be read. */
export function readAsked(
  { label, quantity, unit, min, max, aboveZero }: Asked,
  { system, currency }: Units,
  text: string,
  shown: Shown,
): TypedQuantity | Misread {
  if (text === shown.text) return shown;
  const where = label;
  return readTyped(quantity, text, { system, currency, where, isRequired: false, unit, min, max, aboveZero });
}
