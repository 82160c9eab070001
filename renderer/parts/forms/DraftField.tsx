/** A quantity of a form that is not saved yet: what stands in the field, what it reads to, or why it cannot be read. */
import { say } from '../../../shared-core/wording/say.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { QuantityField } from './Field.tsx';
import type { QuantityAsked } from './QuantityInput.tsx';

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
    misread === null ? [] : [{ where: what, what: say('draft-field.was-not-saved'), fix: misread }],
  );
}

export interface DraftFieldProps extends QuantityAsked {
  readonly draft: QuantityDraft;
  readonly onChange: (draft: QuantityDraft) => void;
}

export function DraftField({ draft, onChange, ...asked }: DraftFieldProps) {
  return (
    <QuantityField
      {...asked}
      value={draft.value}
      typed={draft.text}
      onChange={({ value, text }) => onChange({ value, text, misread: null })}
      onUnreadable={(misread) => onChange({ ...draft, misread })}
    />
  );
}
