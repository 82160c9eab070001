/** What lies on the shelf of a new item already: its first purchase, received in the same step. */
import { say } from '../../../../shared-core/wording/say.ts';
import type { Control } from 'react-hook-form';
import { type ItemKind, kindRecords } from '../../../../shared-core/stash/kinds.ts';
import { FormChoice, FormQuantity, FormText } from '../../../parts/forms/FormFields.tsx';
import style from '../forms.module.css';
import type { ReadItemForm, TypedItem } from '../items/typed-item.ts';
import { formOptions } from '../items/item-words.ts';
import { firstLotFields } from './first-lot.ts';

export interface FirstLotFieldsProps {
  readonly kind: ItemKind;
  readonly control: Control<TypedItem, unknown, ReadItemForm>;
}

export function FirstLotFields({ kind, control }: FirstLotFieldsProps) {
  const { hasLengths } = kindRecords[kind];
  const fields = firstLotFields(kind);
  return (
    <fieldset className={style.group}>
      <legend>{say('first-lot-fields.on-the-shelf-already')}</legend>
      <p className={`quiet small ${style.aboutGroup}`}>
        {say('first-lot-fields.your-first-purchase-of-it-if')}
      </p>
      <div className={style.pair}>
        <FormQuantity control={control} name="firstLot.amount" {...fields.amount} />
        {hasLengths && (
          <div className={style.pair}>
            <FormQuantity control={control} name="firstLot.count" {...fields.count} />
            <FormChoice
              control={control}
              name="firstLot.form"
              label={say('first-lot-fields.lies-as')}
              options={formOptions}
            />
          </div>
        )}
        <FormQuantity control={control} name="firstLot.price" {...fields.price} />
        <FormText control={control} name="firstLot.supplier" label={say('common.supplier')} />
        <FormText
          control={control}
          name="firstLot.dyeLot"
          label={say('common.dye-lot')}
          hint={say('first-lot-fields.as-printed-on-the-label-if')}
        />
        <FormText
          control={control}
          name="firstLot.receivedOn"
          label={say('common.received-on')}
          type="date"
        />
      </div>
    </fieldset>
  );
}
