/** What stands in the form of a parcel, and what is sent. */
import { say } from '../../../../shared-core/wording/say.ts';
import { z } from 'zod';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { ok, type Problem, type Result, err } from '../../../../shared-core/measure/problem.ts';
import { kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import { countedQuantity } from '../../../client/wording/words.ts';
import { amountUnit } from '../../../parts/figures/Amount.tsx';
import type { QuantityAsked } from '../../../parts/forms/QuantityInput.tsx';
import { quantityText, type Units } from '../../../parts/forms/quantity-text.ts';
import type { FormShape } from '../../../parts/forms/typed-form.ts';
import { firstRow, lengthsIn, lengthsSchema, type ReadLength, type TypedLength } from './length-rows.ts';

export interface TypedParcel {
  receivedOn: string;
  supplier: string;
  dyeLot: string;
  price: string;
  /** Of kinds that do not lie as lengths. */
  amount: string;
  lengths: TypedLength[];
}

export interface ReadParcel extends Pick<TypedParcel, 'receivedOn' | 'supplier' | 'dyeLot'> {
  readonly priceMinor: number | null;
  readonly amount: number | null;
  readonly lengths: readonly ReadLength[];
}

export const parcelPrice: QuantityAsked = {
  label: say('typed-parcel.price-of-the-lot'),
  quantity: 'money',
  hint: say('typed-parcel.paid-for-all-of-it'),
};

export function parcelAmount(item: Item): QuantityAsked {
  return {
    label: say('common.amount'),
    quantity: countedQuantity(kindRecords[item.kind].counted),
    unit: amountUnit(item.kind),
    hint: amountHint(item),
    aboveZero: true,
  };
}

export function parcelForm(item: Item, today: string, units: Units): FormShape<TypedParcel, ReadParcel> {
  const { hasLengths } = kindRecords[item.kind];
  const schema = z
    .object({
      receivedOn: z.string(),
      supplier: z.string(),
      dyeLot: z.string(),
      price: quantityText(parcelPrice, units),
      amount: quantityText(parcelAmount(item), units),
      lengths: lengthsSchema(units),
    })
    .transform(({ price: priceMinor, ...read }): ReadParcel => ({ ...read, priceMinor }));
  return {
    start: {
      receivedOn: today,
      supplier: '',
      dyeLot: '',
      price: '',
      amount: '',
      lengths: hasLengths ? [firstRow(item, units.system)] : [],
    },
    schema: () => schema,
  };
}

/** What is sent for a parcel of an item, or what is missing. */
export function parcelCall(item: Item, read: ReadParcel): Result<CallInput<'receiveLot'>> {
  const { hasLengths } = kindRecords[item.kind];
  const lengths = lengthsIn(read.lengths);
  const missing: Problem[] = lengths.ok ? [] : [...lengths.problems];
  if (!hasLengths && read.amount === null)
    missing.push({
      where: say('typed-parcel.amount-of', { itemName: item.name }),
      what: say('common.is-missing'),
      fix: say('common.type-how-much-came-in'),
    });
  if (read.priceMinor === null)
    missing.push({
      where: say('typed-parcel.price-of-the-lot'),
      what: say('common.is-missing'),
      fix: say('typed-parcel.type-what-was-paid-for-all'),
    });
  if (!lengths.ok || missing.length > 0 || read.priceMinor === null) return err(...missing);
  return ok({
    itemId: item.id,
    receivedOn: read.receivedOn,
    supplier: read.supplier.trim(),
    dyeLot: read.dyeLot.trim(),
    priceMinor: read.priceMinor,
    amount: hasLengths ? null : read.amount,
    lengths: lengths.value,
  });
}

function amountHint(item: Item): string {
  switch (item.kind) {
    case 'thread':
      return item.facts.spoolM === null
        ? say('typed-parcel.metres-or-yards-of-thread-in')
        : say('typed-parcel.all-of-it-a-full-spool', {
            spoolM: item.typed.spoolM ?? `${item.facts.spoolM} m`,
          });
    case 'fill':
      return say('typed-parcel.mass-without-the-bag');
    case 'needle':
    case 'fastening':
      return say('typed-parcel.how-many-pieces');
    case 'cloth':
    case 'batting':
      return '';
    default:
      return item satisfies never;
  }
}
