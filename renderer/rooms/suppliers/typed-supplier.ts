/** What stands in the form for a supplier, and what is sent. */
import { say } from '../../../shared-core/wording/say.ts';
import { z } from 'zod';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import type { SupplierRow } from '../../../shared-core/contract/offer-calls.ts';
import { moneyNumber } from '../../../shared-core/measure/money/money.ts';
import type { QuantityAsked } from '../../parts/forms/QuantityInput.tsx';
import {
  nothingShown,
  quantityText,
  type Shown,
  shownCount,
  type Units,
} from '../../parts/forms/quantity-text.ts';
import type { FormShape } from '../../parts/forms/typed-form.ts';

export interface TypedSupplier {
  name: string;
  delivery: string;
  freeFrom: string;
  days: string;
}

export const supplierFields = {
  delivery: {
    label: say('common.delivery'),
    quantity: 'money',
    hint: say('typed-supplier.for-one-parcel-whatever-is-in'),
  },
  freeFrom: {
    label: say('typed-supplier.free-from'),
    quantity: 'money',
    hint: say('typed-supplier.sum-of-goods-that-makes-it'),
    aboveZero: true,
  },
  days: {
    label: say('typed-supplier.days'),
    quantity: 'count',
    hint: say('typed-supplier.from-the-order-until-it-is'),
    max: 1000,
  },
} as const satisfies Record<string, QuantityAsked>;

/** supplier: null for a new one. */
export function supplierForm(
  supplier: SupplierRow | null,
  units: Units,
): FormShape<TypedSupplier, CallInput<'saveSupplier'>> {
  const facts = supplier?.facts ?? null;
  const money = (amountMinor: number | null | undefined): Shown =>
    amountMinor == null
      ? nothingShown
      : { text: moneyNumber(amountMinor, units.currency), value: amountMinor };
  const delivery = money(facts?.deliveryMinor);
  const freeFrom = money(facts?.freeFromMinor);
  const days = shownCount(facts?.leadDays);
  const schema = z
    .object({
      name: z.string(),
      delivery: quantityText(supplierFields.delivery, units, delivery),
      freeFrom: quantityText(supplierFields.freeFrom, units, freeFrom),
      days: quantityText(supplierFields.days, units, days),
    })
    .transform(({ name, delivery: deliveryMinor, freeFrom: freeFromMinor, days: leadDays }) => ({
      name,
      deliveryMinor: deliveryMinor ?? 0,
      freeFromMinor,
      leadDays,
    }));
  return {
    start: {
      name: supplier?.name ?? '',
      delivery: delivery.text,
      freeFrom: freeFrom.text,
      days: days.text,
    },
    schema: () => schema,
  };
}
