/** What a supplier asks for a delivery. */
import { useState } from 'react';
import type { SupplierRow } from '../../../shared-core/contract/offer-calls.ts';
import { moneyNumber } from '../../../shared-core/measure/money/money.ts';
import type { Problem } from '../../../shared-core/measure/problem.ts';
import { call } from '../../client/api.ts';
import { useWorkshop } from '../../client/workshop.ts';
import { DraftField, draftOf, misreadProblems } from '../../parts/forms/DraftField.tsx';
import { TextField } from '../../parts/forms/Field.tsx';
import { FormSheet } from '../../parts/forms/FormSheet.tsx';
import style from './SuppliersRoom.module.css';

export interface SupplierFormProps {
  /** Null for a new one. */
  readonly supplier: SupplierRow | null;
  readonly onClose: () => void;
  readonly onSaved: () => Promise<void>;
}

export function SupplierForm({ supplier, onClose, onSaved }: SupplierFormProps) {
  const { workshop, facts: ofWorkshop } = useWorkshop();
  const { currency } = ofWorkshop.settings;
  const facts = supplier?.facts ?? null;
  const [name, setName] = useState(supplier?.name ?? '');
  const [delivery, setDelivery] = useState(() => moneyDraft(facts?.deliveryMinor ?? null, currency));
  const [freeFrom, setFreeFrom] = useState(() => moneyDraft(facts?.freeFromMinor ?? null, currency));
  const [days, setDays] = useState(() =>
    draftOf(facts?.leadDays ?? null, facts?.leadDays == null ? '' : String(facts.leadDays)),
  );

  const save = async (): Promise<readonly Problem[]> => {
    const misread = misreadProblems('The supplier', [delivery, freeFrom, days]);
    if (misread.length > 0) return misread;
    const answer = await call('saveSupplier', workshop, {
      name,
      deliveryMinor: delivery.value ?? 0,
      freeFromMinor: freeFrom.value,
      leadDays: days.value,
    });
    if (!answer.ok) return answer.problems;
    await onSaved();
    return [];
  };

  return (
    <FormSheet
      title={supplier ? supplier.name : 'New supplier'}
      saveLabel="Save the supplier"
      onClose={onClose}
      onSave={save}
    >
      {!supplier && <TextField label="Name" value={name} onChange={setName} />}
      <div className={style.pair}>
        <DraftField
          label="Delivery"
          quantity="money"
          draft={delivery}
          onChange={setDelivery}
          hint="For one parcel, whatever is in it; empty where you fetch it"
        />
        <DraftField
          label="Free from"
          quantity="money"
          draft={freeFrom}
          onChange={setFreeFrom}
          hint="Sum of goods that makes it free, if any"
          aboveZero
        />
      </div>
      <DraftField
        label="Days"
        quantity="count"
        draft={days}
        onChange={setDays}
        hint="From the order until it is on your shelf, where you know"
        max={1000}
      />
    </FormSheet>
  );
}

function moneyDraft(amountMinor: number | null, currency: string) {
  return draftOf(amountMinor, amountMinor === null ? '' : moneyNumber(amountMinor, currency));
}
