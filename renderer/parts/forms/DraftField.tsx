/** A quantity of a form that is not saved yet: what stands in the field, what it reads to, or why it cannot be read. */
import type { Problem } from '../../../shared-core/measure/problem.ts';
import type { QuantityKind } from '../../../shared-core/measure/quantity.ts';
import type { FieldUnit } from '../../../shared-core/measure/units.ts';
import { QuantityField } from './Field.tsx';

export interface QuantityDraft {
  readonly value: number | null;
  readonly text: string;
  /** The sentence under the field, where its text cannot be read; value is then the last one that could. */
  readonly misread: string | null;
}

export const emptyDraft: QuantityDraft = { value: null, text: '', misread: null };

/** A draft that holds a known value, shown as `text`. */
export function draftOf(value: number | null, text: string): QuantityDraft {
  return { value, text, misread: null };
}

/** Why a form cannot be saved yet: one problem for each draft that cannot be read. `what` is the form's subject: "The cloth". */
export function misreadProblems(what: string, drafts: readonly QuantityDraft[]): Problem[] {
  return drafts.flatMap(({ misread }) =>
    misread === null ? [] : [{ where: what, what: 'was not saved', fix: misread }],
  );
}

export interface DraftFieldProps {
  readonly label: string;
  readonly quantity: QuantityKind;
  readonly draft: QuantityDraft;
  readonly onChange: (draft: QuantityDraft) => void;
  readonly unit?: FieldUnit | undefined;
  readonly hint?: string;
  readonly min?: number;
  readonly max?: number;
  readonly aboveZero?: boolean;
}

export function DraftField({
  label,
  quantity,
  draft,
  onChange,
  unit,
  hint,
  min,
  max,
  aboveZero,
}: DraftFieldProps) {
  return (
    <QuantityField
      label={label}
      quantity={quantity}
      value={draft.value}
      typed={draft.text}
      onChange={({ value, text }) => onChange({ value, text, misread: null })}
      onUnreadable={(misread) => onChange({ ...draft, misread })}
      {...(unit === undefined ? {} : { unit })}
      {...(hint === undefined ? {} : { hint })}
      {...(min === undefined ? {} : { min })}
      {...(max === undefined ? {} : { max })}
      {...(aboveZero === undefined ? {} : { aboveZero })}
    />
  );
}
