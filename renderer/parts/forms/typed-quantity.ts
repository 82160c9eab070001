/** What the text of a quantity field says, and what a field that saves by itself saves when it is left. */
import { decimalSign } from '../../../shared-core/wording/number-signs.ts';
import { say } from '../../../shared-core/wording/say.ts';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import type { QuantityKind } from '../../../shared-core/measure/quantity.ts';
import { type ReadOptions, readQuantity } from '../../../shared-core/measure/read.ts';

/** A value with what was typed for it; a field left empty is null. */
export interface TypedQuantity {
  readonly value: number | null;
  readonly text: string;
}

/** A text that cannot be read, by the sentence that says why. */
export interface Misread {
  readonly misread: string;
}

export interface TypedOptions extends ReadOptions {
  /** The name of the field. */
  readonly where: string;
  /** An empty field is no answer. */
  readonly isRequired: boolean;
}

export function readTyped(
  quantity: QuantityKind,
  text: string,
  { isRequired, ...options }: TypedOptions,
): TypedQuantity | Misread {
  if (text.trim() === '')
    return isRequired
      ? { misread: say('typed-quantity.is-missing', { where: options.where }) }
      : { value: null, text: '' };
  const outcome = readQuantity(quantity, text, { ...options, decimalComma: decimalSign() === ',' });
  if (outcome.ok) return { value: outcome.value, text: text.trim() };
  const [first] = outcome.problems;
  return {
    misread: first ? problemSentence(first) : say('typed-quantity.cannot-be-read', { where: options.where }),
  };
}

/**
 * What is to be saved when the field is left, or null for nothing. typed: what stands in it, null where that is as it
 * was shown. A value that stands already is set again where another one was refused, so that the sentence goes.
 */
export function savedOnLeaving(
  typed: TypedQuantity | Misread | null,
  value: number | null,
  isRefused: boolean,
): Pick<TypedQuantity, 'value'> | null {
  if (typed === null || 'misread' in typed) return null;
  return typed.value !== value || isRefused ? { value: typed.value } : null;
}
