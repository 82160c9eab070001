/** Labelled inputs. A quantity is read as it is typed, in either system, and what is wrong stands under the field. */
import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { moneyNumber } from '../../shared-core/measure/money.ts';
import type { QuantityKind } from '../../shared-core/measure/quantity.ts';
import { problemSentence } from '../../shared-core/measure/problem.ts';
import { readQuantity } from '../../shared-core/measure/read.ts';
import { showQuantity } from '../../shared-core/measure/show.ts';
import type { FieldUnit } from '../../shared-core/measure/units.ts';
import { bareSymbol, isBareNumber } from '../../shared-core/measure/with-unit.ts';
import { useWorkshop } from '../client/workshop.ts';
import style from './Field.module.css';

interface FrameProps {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly problem?: string | null | undefined;
  /** Only read aloud: the column or row says it to the eye. */
  readonly isLabelHidden?: boolean;
  readonly children: (ids: { inputId: string; describedBy: string | undefined }) => ReactNode;
}

function FieldFrame({ label, hint, problem, isLabelHidden = false, children }: FrameProps) {
  const inputId = useId();
  const noteId = `${inputId}-note`;
  const note = problem ?? hint;
  return (
    <div className={style.field}>
      <label className={isLabelHidden ? 'only-read-aloud' : style.label} htmlFor={inputId}>
        {label}
      </label>
      {children({ inputId, describedBy: note ? noteId : undefined })}
      {note && (
        <p id={noteId} className={problem ? style.problem : style.hint} role={problem ? 'alert' : undefined}>
          {note}
        </p>
      )}
    </div>
  );
}

export interface TextFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string;
  readonly problem?: string | null;
  readonly placeholder?: string;
  readonly type?: 'text' | 'search' | 'date';
  readonly isLong?: boolean;
}

export function TextField({
  label,
  value,
  onChange,
  hint,
  problem,
  placeholder,
  type = 'text',
  isLong = false,
}: TextFieldProps) {
  return (
    <FieldFrame label={label} hint={hint} problem={problem}>
      {({ inputId, describedBy }) =>
        isLong ? (
          <textarea
            id={inputId}
            className={style.input}
            rows={3}
            value={value}
            aria-describedby={describedBy}
            onChange={(event) => onChange(event.target.value)}
          />
        ) : (
          <input
            id={inputId}
            className={style.input}
            type={type}
            value={value}
            placeholder={placeholder}
            autoComplete="off"
            aria-describedby={describedBy}
            aria-invalid={problem ? true : undefined}
            onChange={(event) => onChange(event.target.value)}
          />
        )
      }
    </FieldFrame>
  );
}

/** A value with what was typed for it; a field left empty is null. */
export interface TypedQuantity {
  readonly value: number | null;
  readonly text: string;
}

export interface QuantityFieldProps {
  readonly label: string;
  readonly quantity: QuantityKind;
  readonly value: number | null;
  /** What the maker typed for the value before, shown instead of the value. */
  readonly typed?: string | undefined;
  /** Called with each text that can be read; a text that cannot be read is told by onUnreadable and changes nothing. */
  readonly onChange: (typed: TypedQuantity) => void;
  readonly onUnreadable?: (sentence: string) => void;
  readonly hint?: string;
  readonly problem?: string | null;
  readonly min?: number;
  readonly max?: number;
  /** Zero is no answer here. */
  readonly aboveZero?: boolean;
  readonly isRequired?: boolean;
  readonly isLabelHidden?: boolean;
  /** The unit that a bare number takes, where not the usual one; it stands beside a number typed without one. */
  readonly unit?: FieldUnit;
}

export function QuantityField(props: QuantityFieldProps) {
  const {
    label,
    quantity,
    value,
    typed,
    onChange,
    onUnreadable,
    hint,
    problem,
    min,
    max,
    aboveZero,
    isRequired = false,
    isLabelHidden = false,
    unit,
  } = props;
  const { system, currency } = useWorkshop().facts.settings;
  const inUnit = unit === undefined ? {} : { unit };
  // The label says what is counted, so a count stands alone.
  const shown =
    typed ??
    (value === null
      ? ''
      : quantity === 'count'
        ? String(value)
        : quantity === 'money'
          ? moneyNumber(value, currency)
          : showQuantity(quantity, value, { system, ...inUnit }));
  const [text, setText] = useState(shown);
  const [misread, setMisread] = useState<string | null>(null);
  // A value set from outside replaces the text; one that came from this very text does not.
  const reported = useRef<number | null>(value);
  useEffect(() => {
    if (value === reported.current) return;
    reported.current = value;
    setText(shown);
    setMisread(null);
  }, [value, shown]);

  const read = (next: string) => {
    setText(next);
    if (next.trim() === '') {
      const sentence = isRequired ? `${label} is missing.` : null;
      setMisread(sentence);
      reported.current = null;
      if (sentence) onUnreadable?.(sentence);
      return onChange({ value: null, text: '' });
    }
    const options = {
      system,
      currency,
      where: label,
      ...inUnit,
      ...(min === undefined ? {} : { min }),
      ...(max === undefined ? {} : { max }),
      ...(aboveZero === undefined ? {} : { aboveZero }),
    };
    const outcome = readQuantity(quantity, next, options);
    if (outcome.ok) {
      setMisread(null);
      reported.current = outcome.value;
      return onChange({ value: outcome.value, text: next.trim() });
    }
    const [first] = outcome.problems;
    const sentence = first ? problemSentence(first) : `${label} cannot be read.`;
    setMisread(sentence);
    onUnreadable?.(sentence);
  };

  const suffix =
    quantity === 'money' ? currency : isBareNumber(text) ? bareSymbol(quantity, system, unit) : '';
  return (
    <FieldFrame label={label} hint={hint} isLabelHidden={isLabelHidden} problem={misread ?? problem}>
      {({ inputId, describedBy }) => (
        <span className={style.withUnit}>
          <input
            id={inputId}
            className={`${style.input} number`}
            value={text}
            autoComplete="off"
            inputMode="text"
            aria-describedby={describedBy}
            aria-invalid={misread || problem ? true : undefined}
            onChange={(event) => read(event.target.value)}
          />
          {suffix && (
            <span className={style.unit} aria-hidden="true">
              {suffix}
            </span>
          )}
        </span>
      )}
    </FieldFrame>
  );
}

export interface ChoiceFieldProps<Value extends string> {
  readonly label: string;
  readonly value: Value | '';
  readonly options: readonly { readonly value: Value; readonly label: string }[];
  readonly onChange: (value: Value | '') => void;
  /** Words for nothing chosen; without them one option must be chosen. */
  readonly emptyLabel?: string;
  readonly hint?: string;
  readonly problem?: string | null;
}

export function ChoiceField<Value extends string>({
  label,
  value,
  options,
  onChange,
  emptyLabel,
  hint,
  problem,
}: ChoiceFieldProps<Value>) {
  return (
    <FieldFrame label={label} hint={hint} problem={problem}>
      {({ inputId, describedBy }) => (
        <select
          id={inputId}
          className={`${style.input} ${style.choice}`}
          value={value}
          aria-describedby={describedBy}
          onChange={(event) => onChange(event.target.value as Value | '')}
        >
          {emptyLabel !== undefined && <option value="">{emptyLabel}</option>}
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
    </FieldFrame>
  );
}

export function FlagField({
  label,
  value,
  onChange,
  hint,
}: {
  label: string;
  value: boolean;
  onChange: (value: boolean) => void;
  hint?: string;
}) {
  const inputId = useId();
  return (
    <div className={style.flag}>
      <input
        id={inputId}
        type="checkbox"
        checked={value}
        onChange={(event) => onChange(event.target.checked)}
      />
      <label htmlFor={inputId}>
        {label}
        {hint && <span className={style.hint}> {hint}</span>}
      </label>
    </div>
  );
}
