/** A quantity that is a change of the plan by itself: applied when the field is left or Enter is pressed, not at each key. */
import { useState } from 'react';
import { QuantityField, type QuantityFieldProps } from './Field.tsx';

interface SettledProps<Value> extends Omit<QuantityFieldProps, 'onChange' | 'value' | 'onUnreadable'> {
  readonly value: Value;
  readonly onSet: (value: Value) => void;
}

export function SettledField({ onSet, ...field }: SettledProps<number>) {
  return <Settled {...field} isRequired onSet={(value) => value !== null && onSet(value)} />;
}

/** May be left empty: then it is null. */
export function OptionalSettledField(field: SettledProps<number | null>) {
  return <Settled {...field} />;
}

function Settled({ value, onSet, ...field }: SettledProps<number | null>) {
  // Undefined until something is typed.
  const [typed, setTyped] = useState<number | null | undefined>(undefined);
  const settle = () => {
    // Where another value was refused, the one that stands is set again, so that the sentence goes.
    if (typed !== undefined && (typed !== value || field.problem)) onSet(typed);
    setTyped(undefined);
  };
  return (
    <form
      onBlur={settle}
      onSubmit={(event) => {
        event.preventDefault();
        settle();
      }}
    >
      <QuantityField {...field} value={value} onChange={(next) => setTyped(next.value)} />
    </form>
  );
}
