/**
 * A quantity that is a change of the plan by itself: applied when the field is left or Enter is pressed, not at each
 * key. A text that cannot be read changes nothing and stays until it is mended, or given up with Escape.
 */
import { useState } from 'react';
import { QuantityField, type QuantityFieldProps } from './Field.tsx';
import { type Misread, savedOnLeaving, type TypedQuantity } from './typed-quantity.ts';

interface SettledProps<Value>
  extends Omit<QuantityFieldProps, 'onChange' | 'value' | 'onUnreadable' | 'onGivenUp'> {
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
  const [typed, setTyped] = useState<TypedQuantity | Misread | null>(null);
  const isRefused = Boolean(field.problem);
  const settle = () => {
    const saved = savedOnLeaving(typed, value, isRefused);
    setTyped(null);
    if (saved) onSet(saved.value);
  };
  const giveUp = () => {
    setTyped(null);
    if (isRefused) onSet(value);
  };
  return (
    <form
      onBlur={settle}
      onSubmit={(event) => {
        event.preventDefault();
        settle();
      }}
    >
      <QuantityField
        {...field}
        value={value}
        onChange={setTyped}
        onUnreadable={(misread) => setTyped({ misread })}
        onGivenUp={giveUp}
      />
    </form>
  );
}
