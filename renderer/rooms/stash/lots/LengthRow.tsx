/** One line of a parcel: lengths of the same measure, with their flaws. */
import { say } from '../../../../shared-core/wording/say.ts';
import { type Control, useFieldArray } from 'react-hook-form';
import { Button } from '../../../parts/forms/Button.tsx';
import { FormChoice, FormFlag, FormQuantity } from '../../../parts/forms/FormFields.tsx';
import style from '../forms.module.css';
import { formOptions } from '../items/item-words.ts';
import { emptyFlaw, flawFields, lengthFields } from './length-rows.ts';
import type { ReadParcel, TypedParcel } from './typed-parcel.ts';

export interface LengthRowProps {
  readonly control: Control<TypedParcel, unknown, ReadParcel>;
  readonly index: number;
  /** Whether the item is known to shrink, so that it matters if it was washed. */
  readonly shrinks: boolean;
  /** null where it is the only line. */
  readonly onRemove: (() => void) | null;
}

export function LengthRow({ control, index, shrinks, onRemove }: LengthRowProps) {
  const number = index + 1;
  const row = `lengths.${index}` as const;
  const { fields: flaws, append, remove } = useFieldArray({ control, name: `${row}.flaws` });
  return (
    <fieldset className={style.row}>
      <legend>{say('length-row.length', { number })}</legend>
      <div className={style.measures}>
        <FormChoice
          control={control}
          name={`${row}.form`}
          label={say('length-row.form')}
          options={formOptions}
        />
        <FormQuantity control={control} name={`${row}.width`} {...lengthFields.width} />
        <FormQuantity control={control} name={`${row}.along`} {...lengthFields.along} />
        <FormQuantity control={control} name={`${row}.count`} {...lengthFields.count} />
      </div>
      {shrinks && (
        <FormFlag
          control={control}
          name={`${row}.isWashed`}
          label={say('length-row.washed-already-it-shrinks-no-more')}
        />
      )}
      {flaws.map(({ id }, at) => {
        const flaw = `${row}.flaws.${at}` as const;
        return (
          <fieldset key={id} className={style.flaw}>
            <legend>{say('length-row.flaw', { at: at + 1 })}</legend>
            <div className={style.measures}>
              <FormQuantity control={control} name={`${flaw}.fromStart`} {...flawFields.fromStart} />
              <FormQuantity control={control} name={`${flaw}.fromEdge`} {...flawFields.fromEdge} />
              <FormQuantity control={control} name={`${flaw}.along`} {...flawFields.along} />
              <FormQuantity control={control} name={`${flaw}.across`} {...flawFields.across} />
            </div>
            <div className={style.rowActions}>
              <Button
                look="quiet"
                onClick={() => remove(at)}
                aria-label={say('length-row.remove-this-flaw-flaw', { at: at + 1 })}
              >
                {say('length-row.remove-this-flaw')}
              </Button>
            </div>
          </fieldset>
        );
      })}
      <div className={style.rowActions}>
        <Button look="quiet" onClick={() => append(emptyFlaw, { shouldFocus: false })}>
          {say('length-row.note-a-flaw')}
        </Button>
        {onRemove && (
          <Button
            look="quiet"
            onClick={onRemove}
            aria-label={say('length-row.remove-this-line-length', { number })}
          >
            {say('length-row.remove-this-line')}
          </Button>
        )}
      </div>
    </fieldset>
  );
}
