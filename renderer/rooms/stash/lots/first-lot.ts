/** The first purchase of a new item in its form. */
import { say } from '../../../../shared-core/wording/say.ts';
import { z } from 'zod';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../../shared-core/measure/problem.ts';
import { type ItemKind, kindRecords } from '../../../../shared-core/stash/kinds.ts';
import type { Length } from '../../../../shared-core/stash/stash.ts';
import { countedQuantity } from '../../../client/wording/words.ts';
import { amountUnit, clothLengthUnit } from '../../../parts/figures/Amount.tsx';
import type { QuantityAsked } from '../../../parts/forms/QuantityInput.tsx';
import { quantityText, type Units } from '../../../parts/forms/quantity-text.ts';

export interface TypedFirstLot {
  /** How long the piece is, or how much there is of what has no lengths. */
  amount: string;
  form: Length['form'];
  count: string;
  price: string;
  supplier: string;
  dyeLot: string;
  receivedOn: string;
}

export interface ReadFirstLot extends Omit<TypedFirstLot, 'amount' | 'count' | 'price'> {
  readonly amount: number | null;
  readonly count: number | null;
  readonly priceMinor: number | null;
}

export type FirstLot = NonNullable<CallInput<'saveItem'>['firstLot']>;

export function emptyFirstLot(today: string): TypedFirstLot {
  return { amount: '', form: 'roll', count: '1', price: '', supplier: '', dyeLot: '', receivedOn: today };
}

export function firstLotFields(kind: ItemKind) {
  const { hasLengths, counted } = kindRecords[kind];
  return {
    amount: {
      label: hasLengths ? say('common.length') : say('common.amount'),
      quantity: hasLengths ? 'length' : countedQuantity(counted),
      unit: hasLengths ? clothLengthUnit : amountUnit(kind),
      aboveZero: true,
    },
    count: { label: say('common.how-many'), quantity: 'count', aboveZero: true },
    price: {
      label: say('first-lot.price-of-the-lot'),
      quantity: 'money',
      hint: say('first-lot.paid-for-all-of-it-0'),
    },
  } as const satisfies Record<string, QuantityAsked>;
}

export function firstLotSchema(kind: ItemKind, units: Units): z.ZodType<ReadFirstLot, TypedFirstLot> {
  const fields = firstLotFields(kind);
  return z
    .object({
      amount: quantityText(fields.amount, units),
      form: z.enum(['roll', 'cut', 'remnant', 'sheet']),
      count: quantityText(fields.count, units),
      price: quantityText(fields.price, units),
      supplier: z.string(),
      dyeLot: z.string(),
      receivedOn: z.string(),
    })
    .transform(({ price: priceMinor, ...read }) => ({ ...read, priceMinor }));
}

/** What is sent, null where nothing was typed; widthMm: that of the item. */
export function firstLotIn(
  kind: ItemKind,
  widthMm: number | null,
  read: ReadFirstLot,
): Result<FirstLot | null> {
  const { amount, count, priceMinor: price, form, receivedOn } = read;
  const [supplier, dyeLot] = [read.supplier.trim(), read.dyeLot.trim()];
  if (amount === null && price === null && supplier === '' && dyeLot === '') return ok(null);
  const { hasLengths } = kindRecords[kind];
  const problems: Problem[] = [];
  const needed = (value: number | null, where: string, fix: string): number => {
    if (value === null) problems.push({ where, what: say('common.is-missing'), fix });
    return value ?? Number.NaN;
  };
  const orNone = say('first-lot.where-nothing-of-it-is-here');
  const amountValue = needed(
    amount,
    hasLengths ? say('common.length') : say('common.amount'),
    `${hasLengths ? say('first-lot.type-how-long-it-is') : say('common.type-how-much-came-in')} ${orNone}`,
  );
  const priceMinor = needed(
    price,
    say('first-lot.price-of-the-lot'),
    say('first-lot.type-what-was-paid-for-all', { orNone }),
  );
  const lengths = hasLengths
    ? [
        {
          widthMm: needed(widthMm, say('common.width'), say('first-lot.type-it-what-comes-in-lies')),
          lengthMm: amountValue,
          form,
          flaws: [],
          count: needed(count, say('common.how-many'), say('first-lot.type-how-many-pieces-of-that')),
        },
      ]
    : [];
  if (problems.length > 0) return err(...problems);
  return ok({
    receivedOn,
    supplier,
    dyeLot,
    priceMinor,
    amount: hasLengths ? null : amountValue,
    lengths,
  });
}
