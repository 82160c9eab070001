/** The fields that facts of stash items are typed into, and what is wrong with a value in one. */
import { type MessageId, say } from '../wording/say.ts';
import type { Problem } from '../measure/problem.ts';

export type QuantityField =
  | 'length'
  | 'mass'
  | 'arealMass'
  | 'fillPower'
  | 'threadSize'
  | 'threadLength'
  | 'ratio'
  | 'needleSize'
  | 'count';

/**
 * One fact of a kind. A quantity holds a number in its inside unit (mm, g, g/m2, cm3/g, tex, m, 0..1, NM),
 * a choice one of its options, a text anything, a flag yes or no. A fact that is not known is null.
 */
export type FactField =
  | {
      readonly kind: 'quantity';
      readonly quantity: QuantityField;
      readonly label: string;
      readonly hint: string;
      readonly required: boolean;
      readonly min: number;
      readonly max: number;
    }
  | {
      readonly kind: 'choice';
      readonly label: string;
      readonly hint: string;
      readonly required: boolean;
      readonly options: readonly string[];
    }
  | { readonly kind: 'text'; readonly label: string; readonly hint: string; readonly required: boolean }
  | { readonly kind: 'flag'; readonly label: string; readonly hint: string; readonly required: boolean };

export function quantity(
  quantity: QuantityField,
  label: MessageId,
  hint: MessageId,
  min: number,
  max: number,
  required = false,
) {
  return worded({ kind: 'quantity', quantity, required, min, max } as const, label, hint);
}
export function choice<const Options extends readonly string[]>(
  label: MessageId,
  hint: MessageId,
  options: Options,
  required = false,
) {
  return worded({ kind: 'choice', required, options } as const, label, hint);
}
export function text(label: MessageId, hint: MessageId) {
  return worded({ kind: 'text', required: false } as const, label, hint);
}
export function flag(label: MessageId, hint: MessageId) {
  return worded({ kind: 'flag', required: false } as const, label, hint);
}

/** A field with its label and hint, said anew whenever they are read: the fields are made before a language is chosen. */
function worded<Field extends object>(field: Field, label: MessageId, hint: MessageId) {
  return Object.defineProperties(field, {
    label: { get: () => say(label), enumerable: true },
    hint: { get: () => say(hint), enumerable: true },
  }) as Field & { readonly label: string; readonly hint: string };
}

/** What is wrong with a value that is not null; null when all is well. */
export function factProblem(field: FactField, value: unknown, where: string): Problem | null {
  switch (field.kind) {
    case 'quantity': {
      if (typeof value !== 'number' || !Number.isFinite(value))
        return {
          where,
          what: say('common.is-not-a-number'),
          fix: say('fact-field.type-it', { hint: field.hint }),
        };
      if (value < 0)
        return {
          where,
          what: say('common.is-negative'),
          fix: say('fact-field.type-it-above-or-at-0', {
            ifMin: field.min > 0 ? 'yes' : 'no',
            hint: field.hint,
          }),
        };
      if (value < field.min)
        return {
          where,
          what: say('fact-field.is-too-small-to-be-true'),
          fix: say('common.check-the-number-and-its-unit'),
        };
      if (value > field.max)
        return {
          where,
          what: say('common.is-too-large-to-be-true'),
          fix: say('common.check-the-number-and-its-unit'),
        };
      return null;
    }
    case 'choice':
      return field.options.includes(value as string)
        ? null
        : {
            where,
            what: say('fact-field.is-not-known', { string: String(value) }),
            fix: say('fact-field.choose-one-of', { options: field.options.join(', ') }),
          };
    case 'text':
      return typeof value === 'string' && value.length <= 500
        ? null
        : {
            where,
            what: say('fact-field.is-not-a-short-text'),
            fix: say('fact-field.type-up-to-500-letters'),
          };
    case 'flag':
      return typeof value === 'boolean'
        ? null
        : { where, what: say('fact-field.is-neither-yes-nor-no'), fix: say('fact-field.choose-yes-or-no') };
    default:
      return field satisfies never;
  }
}
