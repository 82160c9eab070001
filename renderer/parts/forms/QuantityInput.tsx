/** The input of a quantity as text: a label, what is typed, its unit where none was typed, and what is wrong with it. */
import type { KeyboardEvent } from 'react';
import type { QuantityKind } from '../../../shared-core/measure/quantity.ts';
import type { FieldUnit } from '../../../shared-core/measure/units.ts';
import { bareSymbol, isBareNumber } from '../../../shared-core/measure/with-unit.ts';
import { useWorkshop } from '../../client/workshop.ts';
import style from './Field.module.css';
import { FieldFrame } from './FieldFrame.tsx';
import type { FieldTelling } from './field-telling.ts';

/** What a field asks for: by this its text is read. */
export interface QuantityAsked {
  readonly label: string;
  readonly quantity: QuantityKind;
  /** The unit that a bare number takes, where not the usual one; it stands beside a number typed without one. */
  readonly unit?: FieldUnit | undefined;
  readonly min?: number | undefined;
  readonly max?: number | undefined;
  /** Zero is no answer here. */
  readonly aboveZero?: boolean | undefined;
  readonly hint?: string | undefined;
}

export interface QuantityInputProps extends Pick<QuantityAsked, 'label' | 'quantity' | 'unit' | 'hint'> {
  readonly text: string;
  readonly onText: (text: string) => void;
  /** Of what is wrong with the text. */
  readonly telling: FieldTelling;
  /** Another problem with the value, told where its text is in order. */
  readonly problem?: string | null | undefined;
  readonly isLabelHidden?: boolean;
  readonly onKeyDown?: (event: KeyboardEvent) => void;
}

export function QuantityInput(props: QuantityInputProps) {
  const { label, quantity, unit, hint, text, onText, telling, problem, isLabelHidden, onKeyDown } = props;
  const { system, currency } = useWorkshop().facts.settings;
  const { shown, isAloud, onType, onLeave } = telling;
  const suffix =
    quantity === 'money' ? currency : isBareNumber(text) ? bareSymbol(quantity, system, unit) : '';
  return (
    <FieldFrame
      label={label}
      hint={hint}
      isLabelHidden={isLabelHidden ?? false}
      problem={shown ?? problem}
      isTold={shown === null || isAloud}
    >
      {({ inputId, describedBy }) => (
        <span className={style.withUnit}>
          <input
            id={inputId}
            className={`${style.input} number`}
            value={text}
            autoComplete="off"
            inputMode="text"
            aria-describedby={describedBy}
            aria-invalid={shown || problem ? true : undefined}
            onChange={(event) => {
              onType();
              onText(event.target.value);
            }}
            onBlur={onLeave}
            onKeyDown={(event) => {
              if (event.key === 'Enter') onLeave();
              onKeyDown?.(event);
            }}
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
