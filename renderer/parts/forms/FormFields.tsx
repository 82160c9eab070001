/** The fields of a form that is held by useTypedForm, each by the name of its value there. */
import { type Control, type FieldPathByValue, type FieldValues, useController } from 'react-hook-form';
import { ChoiceField, type ChoiceFieldProps, FlagField, TextField, type TextFieldProps } from './Field.tsx';
import { useFieldTelling } from './field-telling.ts';
import { type QuantityAsked, QuantityInput } from './QuantityInput.tsx';

/** A value of a form: whose, and which. */
interface Place<Typed extends FieldValues, Read, Value> {
  readonly control: Control<Typed, unknown, Read>;
  readonly name: FieldPathByValue<Typed, Value>;
}

type TextProps<Typed extends FieldValues, Read> = Place<Typed, Read, string> &
  Omit<TextFieldProps, 'value' | 'onChange' | 'problem'>;

export function FormText<Typed extends FieldValues, Read>({
  control,
  name,
  ...rest
}: TextProps<Typed, Read>) {
  const { field } = useController({ control, name });
  return <TextField {...rest} value={field.value} onChange={field.onChange} />;
}

/**
 * What was typed stays as it was typed; what is wrong with it is told when the field is left, or the form sent. onTyped:
 * what follows for the rest of the form.
 */
export function FormQuantity<Typed extends FieldValues, Read>({
  control,
  name,
  onTyped,
  ...asked
}: Place<Typed, Read, string> & QuantityAsked & { readonly onTyped?: () => void }) {
  const { field, fieldState } = useController({ control, name });
  const telling = useFieldTelling(fieldState.error?.message ?? null);
  const onLeave = () => {
    telling.onLeave();
    field.onBlur();
  };
  const { label, quantity, unit, hint } = asked;
  return (
    <QuantityInput
      label={label}
      quantity={quantity}
      unit={unit}
      hint={hint}
      // A field that came later has nothing in it yet.
      text={field.value ?? ''}
      onText={(text) => {
        field.onChange(text);
        onTyped?.();
      }}
      telling={{ ...telling, onLeave }}
    />
  );
}

type ChoiceProps<Typed extends FieldValues, Read, Value extends string> = Place<Typed, Read, string> &
  Omit<ChoiceFieldProps<Value>, 'value' | 'onChange' | 'problem'> & {
    /** What follows from a choice for the rest of the form. */
    readonly onChosen?: (value: Value | '') => void;
  };

export function FormChoice<Typed extends FieldValues, Read, Value extends string>({
  control,
  name,
  onChosen,
  ...rest
}: ChoiceProps<Typed, Read, Value>) {
  const { field } = useController({ control, name });
  const choose = (value: Value | '') => {
    field.onChange(value);
    onChosen?.(value);
  };
  return <ChoiceField {...rest} value={field.value as Value} onChange={choose} />;
}

interface FlagProps {
  readonly label: string;
  readonly hint?: string;
}

export function FormFlag<Typed extends FieldValues, Read>({
  control,
  name,
  ...rest
}: Place<Typed, Read, boolean> & FlagProps) {
  const { field } = useController({ control, name });
  return <FlagField {...rest} value={field.value} onChange={field.onChange} />;
}
