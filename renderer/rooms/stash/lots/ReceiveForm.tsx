/** A purchase comes in: when, from whom, for how much, and what was in the parcel. */
import { say } from '../../../../shared-core/wording/say.ts';
import { type Control, useFieldArray } from 'react-hook-form';
import { firstWash } from '../../../../shared-core/requirement/cut/first-wash.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { useChange } from '../../../client/queries/changes.ts';
import { useWorkshop } from '../../../client/workshop.ts';
import { todayIso } from '../../../parts/figures/calendar.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { FormQuantity, FormText } from '../../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../../parts/forms/FormSheet.tsx';
import { useTypedForm } from '../../../parts/forms/typed-form.ts';
import style from '../forms.module.css';
import { LengthRow } from './LengthRow.tsx';
import { nextRow, type TypedLength } from './length-rows.ts';
import {
  parcelAmount,
  parcelCall,
  parcelForm,
  parcelPrice,
  type ReadParcel,
  type TypedParcel,
} from './typed-parcel.ts';

export interface ReceiveFormProps {
  readonly item: Item;
  readonly onClose: () => void;
}

export function ReceiveForm({ item, onClose }: ReceiveFormProps) {
  const { settings } = useWorkshop().facts;
  const { make: receiveLot } = useChange('receiveLot');
  const { control, getValues, sheet } = useTypedForm({
    ...parcelForm(item, todayIso(), settings),
    subject: say('receive-form.the-lot'),
    save: async (read) => {
      const input = parcelCall(item, read);
      const answer = input.ok ? await receiveLot(input.value) : input;
      return answer.ok ? [] : answer.problems;
    },
  });
  return (
    <FormSheet
      title={say('receive-form.receive', { itemName: item.name })}
      saveLabel={say('receive-form.put-on-the-shelf')}
      onClose={onClose}
      {...sheet}
    >
      <div className={style.pair}>
        <FormText control={control} name="receivedOn" label={say('common.received-on')} type="date" />
        <FormText control={control} name="supplier" label={say('common.supplier')} />
        <FormText
          control={control}
          name="dyeLot"
          label={say('common.dye-lot')}
          hint={say('receive-form.as-printed-on-the-label-if')}
        />
        <FormQuantity control={control} name="price" {...parcelPrice} />
      </div>
      {kindRecords[item.kind].hasLengths ? (
        <Lengths control={control} item={item} lastRow={() => getValues('lengths').at(-1)} />
      ) : (
        <FormQuantity control={control} name="amount" {...parcelAmount(item)} />
      )}
    </FormSheet>
  );
}

interface LengthsProps {
  readonly control: Control<TypedParcel, unknown, ReadParcel>;
  readonly item: Item;
  /** As it is typed now. */
  readonly lastRow: () => TypedLength | undefined;
}

function Lengths({ control, item, lastRow }: LengthsProps) {
  const { fields, append, remove } = useFieldArray({ control, name: 'lengths' });
  const add = () => {
    const last = lastRow();
    if (last) append(nextRow(last), { shouldFocus: false });
  };
  return (
    <section className={style.rows} aria-label={say('receive-form.lengths-received')}>
      {fields.map(({ id }, index) => (
        <LengthRow
          key={id}
          control={control}
          index={index}
          shrinks={firstWash({}, item) !== null}
          onRemove={fields.length > 1 ? () => remove(index) : null}
        />
      ))}
      <Button onClick={add}>{say('receive-form.add-another-length')}</Button>
    </section>
  );
}
