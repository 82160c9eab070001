/** A label, an input, and under it the hint or what is wrong. */
import { type ReactNode, useId } from 'react';
import style from './Field.module.css';

export interface FieldFrameProps {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly problem?: string | null | undefined;
  /** Whether the problem is told aloud, or only to the eye. */
  readonly isTold?: boolean;
  /** Only read aloud: the column or row says it to the eye. */
  readonly isLabelHidden?: boolean;
  readonly children: (ids: { inputId: string; describedBy: string | undefined }) => ReactNode;
}

export function FieldFrame({
  label,
  hint,
  problem,
  isTold = true,
  isLabelHidden = false,
  children,
}: FieldFrameProps) {
  const inputId = useId();
  const noteId = `${inputId}-note`;
  const note = problem ?? hint;
  const role = problem && isTold ? 'alert' : undefined;
  return (
    <div className={style.field}>
      <label className={isLabelHidden ? 'only-read-aloud' : style.label} htmlFor={inputId}>
        {label}
      </label>
      {children({ inputId, describedBy: note ? noteId : undefined })}
      {note && (
        // What is told stands there as new, so that it is read aloud.
        <p key={role} id={noteId} className={problem ? style.problem : style.hint} role={role}>
          {note}
        </p>
      )}
    </div>
  );
}
