/** A choice of few, all in sight. */
import { useId } from 'react';
import style from './OneOf.module.css';

export interface OneOfProps<Value extends string> {
  readonly label: string;
  readonly value: Value;
  readonly options: readonly { readonly value: Value; readonly label: string; readonly hint: string }[];
  readonly onChange: (value: Value) => void;
}

export function OneOf<Value extends string>({ label, value, options, onChange }: OneOfProps<Value>) {
  const name = useId();
  return (
    <fieldset className={style.choices}>
      <legend className="only-read-aloud">{label}</legend>
      {options.map((option) => (
        <label key={option.value} className={`${style.choice} eased`}>
          <input
            type="radio"
            name={name}
            value={option.value}
            checked={value === option.value}
            onChange={() => onChange(option.value)}
          />
          <span className={style.label}>{option.label}</span>
          {option.hint && <span className={style.hint}>{option.hint}</span>}
        </label>
      ))}
    </fieldset>
  );
}
