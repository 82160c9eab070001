/** One fact of an item in its form, as its kind's record describes it. */
import type { FactField } from '../../../../shared-core/stash/fact-field.ts';
import type { ItemKind } from '../../../../shared-core/stash/kinds.ts';
import { DraftField, emptyDraft } from '../../../parts/forms/DraftField.tsx';
import { ChoiceField, TextField } from '../../../parts/forms/Field.tsx';
import type { FactDrafts } from './fact-drafts.ts';
import { factUnit } from './item-words.ts';

export interface FactProps {
  readonly kind: ItemKind;
  readonly factName: string;
  readonly field: FactField;
  readonly drafts: FactDrafts;
  readonly onChange: (change: (drafts: FactDrafts) => FactDrafts) => void;
}

export function Fact({ kind, factName, field, drafts, onChange }: FactProps) {
  const { label } = field;
  const hint = field.required ? `${field.hint}; needed` : field.hint;
  switch (field.kind) {
    case 'quantity':
      return (
        <DraftField
          label={label}
          quantity={field.quantity}
          draft={drafts.quantities[factName] ?? emptyDraft}
          onChange={(draft) =>
            onChange((now) => ({ ...now, quantities: { ...now.quantities, [factName]: draft } }))
          }
          unit={factUnit(kind, factName)}
          hint={hint}
        />
      );
    case 'choice':
      return (
        <ChoiceField
          label={label}
          value={drafts.words[factName] ?? ''}
          options={field.options.map((option) => ({ value: option, label: option }))}
          emptyLabel="not known"
          hint={hint}
          onChange={(word) => onChange((now) => ({ ...now, words: { ...now.words, [factName]: word } }))}
        />
      );
    case 'text':
      return (
        <TextField
          label={label}
          value={drafts.words[factName] ?? ''}
          hint={hint}
          onChange={(word) => onChange((now) => ({ ...now, words: { ...now.words, [factName]: word } }))}
        />
      );
    case 'flag':
      return (
        <ChoiceField
          label={label}
          value={flagWord(drafts.flags[factName])}
          options={[
            { value: 'yes', label: 'yes' },
            { value: 'no', label: 'no' },
          ]}
          emptyLabel="not known"
          hint={hint}
          onChange={(word) =>
            onChange((now) => {
              const { [factName]: _, ...others } = now.flags;
              return { ...now, flags: word === '' ? others : { ...others, [factName]: word === 'yes' } };
            })
          }
        />
      );
    default:
      return field satisfies never;
  }
}

/** Yes and no are two answers, and neither is the same as not known. */
function flagWord(flag: boolean | undefined): 'yes' | 'no' | '' {
  if (flag === undefined) return '';
  return flag ? 'yes' : 'no';
}
