/** The fields that facts of stash items are typed into, and what is wrong with a value in one. */
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
  label: string,
  hint: string,
  min: number,
  max: number,
  required = false,
) {
  return { kind: 'quantity', quantity, label, hint, required, min, max } as const;
}
export function choice<const Options extends readonly string[]>(
  label: string,
  hint: string,
  options: Options,
  required = false,
) {
  return { kind: 'choice', label, hint, required, options } as const;
}
export function text(label: string, hint: string) {
  return { kind: 'text', label, hint, required: false } as const;
}
export function flag(label: string, hint: string) {
  return { kind: 'flag', label, hint, required: false } as const;
}

/** What is wrong with a value that is not null; null when all is well. */
export function factProblem(field: FactField, value: unknown, where: string): Problem | null {
  switch (field.kind) {
    case 'quantity': {
      if (typeof value !== 'number' || !Number.isFinite(value))
        return { where, what: 'is not a number', fix: `Type it: ${field.hint}.` };
      if (value < 0)
        return {
          where,
          what: 'is negative',
          fix: `Type it above ${field.min > 0 ? '0' : 'or at 0'}: ${field.hint}.`,
        };
      if (value < field.min)
        return { where, what: 'is too small to be true', fix: 'Check the number and its unit.' };
      if (value > field.max)
        return { where, what: 'is too large to be true', fix: 'Check the number and its unit.' };
      return null;
    }
    case 'choice':
      return field.options.includes(value as string)
        ? null
        : {
            where,
            what: `is not known: ${String(value)}`,
            fix: `Choose one of: ${field.options.join(', ')}.`,
          };
    case 'text':
      return typeof value === 'string' && value.length <= 500
        ? null
        : { where, what: 'is not a short text', fix: 'Type up to 500 letters.' };
    case 'flag':
      return typeof value === 'boolean'
        ? null
        : { where, what: 'is neither yes nor no', fix: 'Choose yes or no.' };
    default:
      return field satisfies never;
  }
}
