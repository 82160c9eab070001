/** A new item or a change to one. Its fields come from the record of its kind. */
import { useState } from 'react';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { showTyped } from '../../../shared-core/measure/typed.ts';
import type { MeasureSystem } from '../../../shared-core/measure/quantity.ts';
import { withUnit } from '../../../shared-core/measure/with-unit.ts';
import type { FactField } from '../../../shared-core/stash/fact-field.ts';
import { factFields, type ItemKind, itemKinds, kindRecords } from '../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';
import { call } from '../../client/api.ts';
import { useSystem, useWorkshop } from '../../client/workshop.ts';
import {
  DraftField,
  draftOf,
  emptyDraft,
  misreadProblems,
  type QuantityDraft,
} from '../../parts/DraftField.tsx';
import { ChoiceField, TextField } from '../../parts/Field.tsx';
import { FormSheet } from '../../parts/FormSheet.tsx';
import { KindMark } from '../../parts/KindMark.tsx';
import style from './forms.module.css';
import { factUnit } from './item-words.ts';

/** Every fact a field may hold, of whatever kind: a quantity being typed, a text or choice, yes or no. */
interface FactDrafts {
  readonly quantities: Readonly<Record<string, QuantityDraft>>;
  readonly words: Readonly<Record<string, string>>;
  readonly flags: Readonly<Record<string, boolean>>;
}

export interface ItemFormProps {
  /** null for a new item. */
  readonly item: Item | null;
  readonly onClose: () => void;
  readonly onSaved: (itemId: string) => Promise<void>;
}

export function ItemForm({ item, onClose, onSaved }: ItemFormProps) {
  const { workshop } = useWorkshop();
  const system = useSystem();
  const [kind, setKind] = useState<ItemKind>(item?.kind ?? 'cloth');
  const [name, setName] = useState(item?.name ?? '');
  const [colour, setColour] = useState(item?.colour ?? '');
  const [place, setPlace] = useState(item?.place ?? '');
  const [notes, setNotes] = useState(item?.notes ?? '');
  const [drafts, setDrafts] = useState<FactDrafts>(() => draftsOf(item, system));
  const label = kindRecords[kind].label;
  // What is yes or no stands below what is typed.
  const fields = factFields(kind);
  const questions = [
    ...fields.filter(([, field]) => field.kind !== 'flag'),
    ...fields.filter(([, field]) => field.kind === 'flag'),
  ];

  const save = async (): Promise<readonly Problem[]> => {
    const unread = misreadProblems(
      item?.name ?? `The ${label.toLowerCase()}`,
      fields.flatMap(([factName, field]) =>
        field.kind === 'quantity' ? [drafts.quantities[factName] ?? emptyDraft] : [],
      ),
    );
    if (unread.length > 0) return unread;
    const { facts, typed } = factsOf(kind, drafts, system);
    const answer = await call('saveItem', workshop, {
      itemId: item?.id ?? null,
      kind,
      name,
      colour,
      place,
      notes,
      facts,
      typed,
    });
    if (!answer.ok) return answer.problems;
    await onSaved(answer.value.itemId);
    return [];
  };

  return (
    <FormSheet
      title={item ? `Edit ${item.name}` : 'New item'}
      saveLabel={item ? 'Save' : 'Add to the stash'}
      onClose={onClose}
      onSave={save}
    >
      {!item && (
        <fieldset className={style.kinds}>
          <legend>What is it?</legend>
          {itemKinds.map((each) => (
            <label key={each} className={style.kind}>
              <input
                type="radio"
                name="kind"
                value={each}
                checked={kind === each}
                onChange={() => setKind(each)}
              />
              <KindMark kind={each} />
              {kindRecords[each].label}
            </label>
          ))}
        </fieldset>
      )}
      <TextField label="Name" value={name} onChange={setName} />
      <div className={style.pair}>
        <TextField label="Colour" value={colour} onChange={setColour} />
        <TextField label="Place" value={place} onChange={setPlace} hint="Where it lies: rack 1, top" />
      </div>
      <fieldset className={style.group}>
        <legend>{label}: what is known</legend>
        <div className={style.pair}>
          {questions.map(([factName, field]) => (
            <Fact
              key={`${kind} ${factName}`}
              kind={kind}
              factName={factName}
              field={field}
              drafts={drafts}
              onChange={setDrafts}
            />
          ))}
        </div>
      </fieldset>
      <TextField label="Notes" value={notes} onChange={setNotes} isLong />
    </FormSheet>
  );
}

interface FactProps {
  readonly kind: ItemKind;
  readonly factName: string;
  readonly field: FactField;
  readonly drafts: FactDrafts;
  readonly onChange: (change: (drafts: FactDrafts) => FactDrafts) => void;
}

function Fact({ kind, factName, field, drafts, onChange }: FactProps) {
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

function draftsOf(item: Item | null, system: MeasureSystem): FactDrafts {
  const quantities: Record<string, QuantityDraft> = {};
  const words: Record<string, string> = {};
  const flags: Record<string, boolean> = {};
  if (!item) return { quantities, words, flags };
  for (const [factName, field] of factFields(item.kind)) {
    const value =
      (item.facts as Readonly<Record<string, number | string | boolean | null>>)[factName] ?? null;
    if (value === null) continue;
    if (field.kind === 'quantity') {
      const unit = factUnit(item.kind, factName);
      const text = showTyped(field.quantity, Number(value), item.typed[factName], {
        system,
        ...(unit && { unit }),
      });
      quantities[factName] = draftOf(Number(value), text);
    } else if (field.kind === 'flag') flags[factName] = value === true;
    else words[factName] = String(value);
  }
  return { quantities, words, flags };
}

/** The facts of the chosen kind as they are saved, with what was typed for each quantity. */
function factsOf(kind: ItemKind, drafts: FactDrafts, system: MeasureSystem) {
  const facts: Record<string, number | string | boolean | null> = {};
  const typed: Record<string, string> = {};
  for (const [factName, field] of factFields(kind)) {
    switch (field.kind) {
      case 'quantity': {
        const draft = drafts.quantities[factName] ?? emptyDraft;
        facts[factName] = draft.value;
        if (draft.value !== null)
          typed[factName] = withUnit(field.quantity, draft.text, system, factUnit(kind, factName));
        break;
      }
      case 'flag':
        facts[factName] = drafts.flags[factName] ?? null;
        break;
      case 'choice':
      case 'text':
        facts[factName] = drafts.words[factName]?.trim() || null;
        break;
      default:
        field satisfies never;
    }
  }
  return { facts, typed };
}
