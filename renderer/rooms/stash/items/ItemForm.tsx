/**
 * A new item or a change to one. Its fields come from the record of its kind: what a coat needs of it first, the rest on
 * demand. With a new item its first purchase comes onto the shelf.
 */
import { nounInSentence } from '../../../../shared-core/wording/in-sentence.ts';
import { say } from '../../../../shared-core/wording/say.ts';
import { useState } from 'react';
import { useController, useWatch } from 'react-hook-form';
import type { Problem } from '../../../../shared-core/measure/problem.ts';
import { itemKinds, kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { useChange } from '../../../client/queries/changes.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { KindMark } from '../../../parts/drawing/KindMark.tsx';
import { todayIso } from '../../../parts/figures/calendar.ts';
import { FormText } from '../../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../../parts/forms/FormSheet.tsx';
import { useTypedForm } from '../../../parts/forms/typed-form.ts';
import { Disclosure } from '../../../parts/layout/Disclosure.tsx';
import style from '../forms.module.css';
import { FirstLotFields } from '../lots/FirstLotFields.tsx';
import { Fact } from './Fact.tsx';
import { fieldsInOrder, type NamedField } from './fact-fields.ts';
import { itemCall, itemForm } from './typed-item.ts';

export interface ItemFormProps {
  /** null for a new item. */
  readonly item: Item | null;
  readonly onClose: () => void;
  readonly onSaved?: (itemId: string) => void;
}

export function ItemForm({ item, onClose, onSaved }: ItemFormProps) {
  const { settings } = useWorkshop().facts;
  const { make: saveItem } = useChange('saveItem');
  const [refusals, setRefusals] = useState<readonly Problem[]>([]);
  const { control, formState, sheet } = useTypedForm({
    ...itemForm(item, todayIso(), settings),
    subject: ({ kind }) =>
      item?.name ?? say('item-form.the', { kindRecordsLabel: nounInSentence(kindRecords[kind].label) }),
    save: async (read, typed) => {
      const input = itemCall(item?.id ?? null, read, typed, settings.system);
      const answer = input.ok ? await saveItem(input.value) : input;
      if (!answer.ok) return answer.problems;
      onSaved?.(answer.value.itemId);
      return [];
    },
  });
  const { errors } = formState;
  const kind = useController({ control, name: 'kind' }).field;
  const [place, notes, typed] = useWatch({ control, name: ['place', 'notes', 'facts'] });
  const label = kindRecords[kind.value].label;
  const { first, others } = fieldsInOrder(kind.value);
  const hasValue =
    place !== '' || notes !== '' || others.some(([factName]) => (typed[factName] ?? '').trim() !== '');
  const isInsideRefused =
    refusals.length > 0 &&
    (others.some(([factName]) => errors.facts?.[factName]) ||
      refusals.some(({ where }) =>
        isAbout(where, [
          say('common.place'),
          say('item-form.notes'),
          ...others.map(([, field]) => field.label),
        ]),
      ));
  const save = async () => {
    const problems = await sheet.onSave();
    setRefusals(problems);
    return problems;
  };
  const facts = (fields: readonly NamedField[]) =>
    fields.map(([factName, field]) => (
      <Fact
        key={`${kind.value} ${factName}`}
        kind={kind.value}
        factName={factName}
        field={field}
        control={control}
      />
    ));

  return (
    <FormSheet
      title={item ? say('item-form.edit', { itemName: item.name }) : say('item-form.new-item')}
      saveLabel={item ? say('item-form.save') : say('item-form.add-to-the-stash')}
      onClose={onClose}
      isTyped={sheet.isTyped}
      onSave={save}
    >
      {!item && (
        <fieldset className={style.kinds}>
          <legend>{say('item-form.what-is-it')}</legend>
          {itemKinds.map((each) => (
            <label key={each} className={style.kind}>
              <input
                type="radio"
                name="kind"
                value={each}
                checked={kind.value === each}
                onChange={() => kind.onChange(each)}
              />
              <KindMark kind={each} />
              {kindRecords[each].label}
            </label>
          ))}
        </fieldset>
      )}
      <div className={style.pair}>
        <FormText control={control} name="name" label={say('common.name')} />
        <FormText control={control} name="colour" label={say('item-form.colour')} />
        {facts(first)}
      </div>
      {!item && <FirstLotFields kind={kind.value} control={control} />}
      <Disclosure
        key={kind.value}
        title={say('item-form.more-about-the', { label: nounInSentence(label) })}
        inside={[say('common.place'), ...others.map(([, field]) => field.label), say('item-form.notes')]
          .map(nounInSentence)
          .join(', ')}
        hasValue={hasValue}
        refusal={isInsideRefused ? refusals : null}
      >
        <FormText
          control={control}
          name="place"
          label={say('common.place')}
          hint={say('item-form.where-it-lies-rack-1-top')}
        />
        <div className={style.pair}>{facts(others)}</div>
        <FormText control={control} name="notes" label={say('item-form.notes')} isLong />
      </Disclosure>
    </FormSheet>
  );
}

function isAbout(where: string, labels: readonly string[]): boolean {
  return labels.some(
    (label) => where === label || where.startsWith(say('kinds.of-2', { fieldLabel: label, name: '' })),
  );
}
