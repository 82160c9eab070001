/** A quantity that is a change of the plan by itself: applied when the field is left or Enter is pressed, not at each key. */
import { useState } from 'react';
import { QuantityField, type QuantityFieldProps } from './Field.tsx';

export interface SettledFieldProps extends Omit<QuantityFieldProps, 'onChange' | 'value' | 'onUnreadable'> {
  readonly value: number;
  readonly onSet: (value: number) => void;
}

export function SettledField({ value, onSet, ...field }: SettledFieldProps) {
  const [typed, setTyped] = useState<number | null>(null);
  const settle = () => {
    if (typed !== null && typed !== value) onSet(typed);
    setTyped(null);
  };
  return (
    <form
      onBlur={settle}
      onSubmit={(event) => {
        event.preventDefault();
        settle();
      }}
    >
      <QuantityField {...field} value={value} isRequired onChange={(next) => setTyped(next.value)} />
    </form>
  );
}
