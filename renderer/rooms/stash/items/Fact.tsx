/** One fact of an item in its form, as its kind's record describes it. */
import { codeWords } from '../../../../shared-core/wording/code-words.ts';
import { say } from '../../../../shared-core/wording/say.ts';
import type { Control } from 'react-hook-form';
import type { FactField } from '../../../../shared-core/stash/fact-field.ts';
import type { ItemKind } from '../../../../shared-core/stash/kinds.ts';
import { FormChoice, FormQuantity, FormText } from '../../../parts/forms/FormFields.tsx';
import { factAsked } from './fact-fields.ts';
import type { ReadItemForm, TypedItem } from './typed-item.ts';

export interface FactProps {
  readonly kind: ItemKind;
  readonly factName: string;
  readonly field: FactField;
  readonly control: Control<TypedItem, unknown, ReadItemForm>;
}

export function Fact({ kind, factName, field, control }: FactProps) {
  const { label } = field;
  const hint = field.required ? say('fact.needed', { hint: field.hint }) : field.hint;
  const name = `facts.${factName}` as const;
  switch (field.kind) {
    case 'quantity':
      return <FormQuantity control={control} name={name} {...factAsked(kind, factName, field)} hint={hint} />;
    case 'choice':
      return (
        <FormChoice
          control={control}
          name={name}
          label={label}
          options={field.options.map((option) => ({ value: option, label: codeWords(option) }))}
          emptyLabel={say('common.not-known')}
          hint={hint}
        />
      );
    case 'text':
      return <FormText control={control} name={name} label={label} hint={hint} />;
    case 'flag':
      // Yes and no are two answers, and neither is the same as not known.
      return (
        <FormChoice
          control={control}
          name={name}
          label={label}
          options={[
            { value: 'yes', label: codeWords('yes') },
            { value: 'no', label: codeWords('no') },
          ]}
          emptyLabel={say('common.not-known')}
          hint={hint}
        />
      );
    default:
      return field satisfies never;
  }
}
