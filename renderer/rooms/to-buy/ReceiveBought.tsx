/** All that was ticked comes in at once: each purchase as it was on the list until the maker types what it truly was. */
import { say } from '../../../shared-core/wording/say.ts';
import { useState } from 'react';
import type { Control } from 'react-hook-form';
import type { CoatPlan } from '../../../shared-core/plan/model/coat-plan.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';
import type { ToBuyLine } from '../../../shared-core/to-buy/to-buy.ts';
import { useCoat, useCoatChange } from '../../client/coat/coat-context.ts';
import { itemById } from '../../client/wording/coat-words.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { todayIso } from '../../parts/figures/calendar.ts';
import { FormQuantity, FormText } from '../../parts/forms/FormFields.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import { useTypedForm } from '../../parts/forms/typed-form.ts';
import {
  type Bought,
  boughtForm,
  boughtLots,
  purchaseFields,
  type ReadBought,
  type TypedBought,
} from './typed-bought.ts';
import style from './ReceiveBought.module.css';

export interface ReceiveBoughtProps {
  readonly plan: CoatPlan;
  readonly lines: readonly ToBuyLine[];
  readonly onClose: () => void;
  readonly onReceived: (lotCount: number) => void;
}

export function ReceiveBought({ plan, lines, onClose, onReceived }: ReceiveBoughtProps) {
  const { settings } = useWorkshop().facts;
  const { make: receiveLots } = useCoatChange('receiveLots');
  const { input } = useCoat('input');
  // As the list stood when the sheet was opened.
  const [all] = useState<readonly Bought[]>(() =>
    lines.flatMap((line) => {
      const item = input && itemById(input, line.itemId);
      return item ? [{ item, line }] : [];
    }),
  );
  const { control, sheet } = useTypedForm({
    ...boughtForm(all, todayIso(), settings),
    subject: (_, [, index]) => all[Number(index)]?.item.name ?? say('receive-bought.the-purchase'),
    save: async (read) => {
      const lots = boughtLots(all, read);
      if (!lots.ok) return lots.problems;
      const answer = await receiveLots({ planId: plan.id, lots: lots.value });
      if (!answer.ok) return answer.problems;
      onReceived(answer.value.lotIds.length);
      return [];
    },
  });
  return (
    <FormSheet
      title={say('receive-bought.receive-purchases', { allCount: all.length })}
      saveLabel={say('receive-bought.put-all-on-the-shelf')}
      onClose={onClose}
      {...sheet}
    >
      <p className="quiet">{say('receive-bought.each-stands-as-it-was-on')}</p>
      <FormText control={control} name="receivedOn" label={say('common.received-on')} type="date" />
      {all.map(({ item, line }, index) => (
        <Purchase key={line.offer.id} item={item} index={index} control={control} />
      ))}
    </FormSheet>
  );
}

interface PurchaseProps {
  readonly item: Item;
  readonly index: number;
  readonly control: Control<TypedBought, unknown, ReadBought>;
}

function Purchase({ item, index, control }: PurchaseProps) {
  const fields = purchaseFields(item);
  const row = `purchases.${index}` as const;
  return (
    <fieldset className={style.purchase}>
      <legend>{item.name}</legend>
      <div className={style.fields}>
        {kindRecords[item.kind].hasLengths ? (
          <>
            <FormQuantity control={control} name={`${row}.width`} {...fields.width} />
            <FormQuantity control={control} name={`${row}.along`} {...fields.along} />
            <FormQuantity control={control} name={`${row}.count`} {...fields.count} />
          </>
        ) : (
          <FormQuantity control={control} name={`${row}.amount`} {...fields.amount} />
        )}
        <FormQuantity control={control} name={`${row}.price`} {...fields.price} />
        <FormText control={control} name={`${row}.supplier`} label={say('common.supplier')} />
        {item.kind !== 'needle' && (
          <FormText control={control} name={`${row}.dyeLot`} label={say('common.dye-lot')} />
        )}
      </div>
    </fieldset>
  );
}
