/** Lower prices for many, one line each. */
import { say } from '../../../../shared-core/wording/say.ts';
import { type Control, useFieldArray } from 'react-hook-form';
import type { SellingUnit } from '../../../../shared-core/stash/offer.ts';
import { Button } from '../../../parts/forms/Button.tsx';
import { FormQuantity } from '../../../parts/forms/FormFields.tsx';
import { breakPrice, emptyBreak, fromFields } from './break-rows.ts';
import style from '../forms.module.css';
import type { ReadOffer, TypedOffer } from './typed-offer.ts';

export interface BreakFieldsProps {
  readonly way: SellingUnit['kind'];
  readonly control: Control<TypedOffer, unknown, ReadOffer>;
}

export function BreakFields({ way, control }: BreakFieldsProps) {
  const { fields, append, remove } = useFieldArray({ control, name: 'breaks' });
  return (
    <div className={style.rows}>
      {fields.map(({ id }, index) => (
        <fieldset key={id} className={style.row}>
          <legend>{say('break-fields.price-break', { index: index + 1 })}</legend>
          <div className={style.pair}>
            <FormQuantity control={control} name={`breaks.${index}.from`} {...fromFields[way]} />
            <FormQuantity control={control} name={`breaks.${index}.price`} {...breakPrice} />
          </div>
          <div className={style.rowActions}>
            <Button
              look="quiet"
              aria-label={say('break-fields.remove-price-break', { index: index + 1 })}
              onClick={() => remove(index)}
            >
              {say('break-fields.remove-this-line')}
            </Button>
          </div>
        </fieldset>
      ))}
      <Button look="quiet" onClick={() => append(emptyBreak, { shouldFocus: false })}>
        {say('break-fields.add-a-price-break')}
      </Button>
    </div>
  );
}
