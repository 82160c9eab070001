/** Labelled inputs. A quantity is read as it is typed, in either system, and what is wrong stands under the field. */
import { type ChangeEvent, type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { moneyNumber } from '../../../shared-core/measure/money/money.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { useWorkshop } from '../../client/workshop.ts';
import style from './Field.module.css';
import { FieldFrame } from './FieldFrame.tsx';
import { useFieldTelling } from './field-telling.ts';
import { type QuantityAsked, QuantityInput } from './QuantityInput.tsx';
import { readTyped, type TypedQuantity } from './typed-quantity.ts';

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
  const { shown, isAloud, onType, onLeave } = useFieldTelling(problem ?? null);
  return (
    <FieldFrame label={label} hint={hint} problem={shown} isTold={isAloud}>
      {({ inputId, describedBy }) => {
        const both = {
          id: inputId,
          className: style.input,
          value,
          'aria-describedby': describedBy,
          'aria-invalid': shown ? true : undefined,
          onChange: (event: ChangeEvent<HTMLInputElement | HTMLTextAreaElement>) => {
            onType();
            onChange(event.target.value);
          },
          onBlur: onLeave,
        };
        if (isLong) return <textarea {...both} rows={3} />;
        const leaveOnEnter = (event: KeyboardEvent) => event.key === 'Enter' && onLeave();
        return (
          <input
            {...both}
            type={type}
            placeholder={placeholder}
            autoComplete="off"
            onKeyDown={leaveOnEnter}
          />
        );
      }}
    </FieldFrame>
  );
}

export interface QuantityFieldProps extends QuantityAsked {
  readonly value: number | null;
  /** What the maker typed for the value before, shown instead of the value. */
  readonly typed?: string | undefined;
  /** Called with each text that can be read; a text that cannot be read is told by onUnreadable and changes nothing. */
  readonly onChange: (typed: TypedQuantity) => void;
  readonly onUnreadable?: (sentence: string) => void;
  /** Where it is given, Escape brings back the value that stands, and is then told of it. */
  readonly onGivenUp?: () => void;
  readonly problem?: string | null;
  readonly isRequired?: boolean;
  readonly isLabelHidden?: boolean;
}

export function QuantityField(props: QuantityFieldProps) {
  const {
    label,
    quantity,
    value,
    typed,
    onChange,
    onUnreadable,
    onGivenUp,
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
  // The label says what is counted, so a count stands alone.
  const shown =
    typed ??
    (value === null
      ? ''
      : quantity === 'count'
        ? String(value)
        : quantity === 'money'
          ? moneyNumber(value, currency)
          : showQuantity(quantity, value, { system, ...(unit && { unit }) }));
  const [text, setText] = useState(shown);
  const [misread, setMisread] = useState<string | null>(null);
  const telling = useFieldTelling(misread);
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
    const options = { system, currency, where: label, isRequired, min, max, aboveZero, unit };
    const typed = readTyped(quantity, next, options);
    if ('misread' in typed) {
      setMisread(typed.misread);
      reported.current = value;
      return onUnreadable?.(typed.misread);
    }
    setMisread(null);
    reported.current = typed.value;
    onChange(typed);
  };

  const giveUp = () => {
    setText(shown);
    setMisread(null);
    reported.current = value;
    onGivenUp?.();
  };
  const answerKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !onGivenUp || (text === shown && misread === null)) return;
    // The next Escape is for the sheet around it.
    event.stopPropagation();
    giveUp();
  };

  return (
    <QuantityInput
      label={label}
      quantity={quantity}
      unit={unit}
      hint={hint}
      text={text}
      onText={read}
      telling={telling}
      problem={problem}
      isLabelHidden={isLabelHidden}
      onKeyDown={answerKey}
    />
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
