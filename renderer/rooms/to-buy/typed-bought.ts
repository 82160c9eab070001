/** What stands in the form of all that was bought: each purchase as it was on the list until its truth is typed. */
import { say } from '../../../shared-core/wording/say.ts';
import { z } from 'zod';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import type { Settings } from '../../../shared-core/contract/schemas.ts';
import { moneyNumber } from '../../../shared-core/measure/money/money.ts';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import { showQuantity } from '../../../shared-core/measure/show.ts';
import { kindRecords } from '../../../shared-core/stash/kinds.ts';
import type { Item } from '../../../shared-core/stash/stash.ts';
import { receiptOf } from '../../../shared-core/to-buy/receipt.ts';
import type { ToBuyLine } from '../../../shared-core/to-buy/to-buy.ts';
import { countedQuantity } from '../../client/wording/words.ts';
import { amountText, amountUnit, clothLengthUnit, clothWidthUnit } from '../../parts/figures/Amount.tsx';
import type { QuantityAsked } from '../../parts/forms/QuantityInput.tsx';
import {
  nothingShown,
  quantityText,
  type Shown,
  shownCount,
  type Units,
} from '../../parts/forms/quantity-text.ts';
import type { FormShape } from '../../parts/forms/typed-form.ts';

/** A line of the list with its item. */
export interface Bought {
  readonly item: Item;
  readonly line: ToBuyLine;
}

type Measure = 'amount' | 'width' | 'along' | 'count' | 'price';

export type TypedPurchase = Record<Measure | 'supplier' | 'dyeLot', string>;

export interface TypedBought {
  receivedOn: string;
  /** In the order of the lines. */
  purchases: TypedPurchase[];
}

/** A measure that this item has none of is null. */
export type ReadPurchase = Readonly<Record<Measure, number | null>> &
  Pick<TypedPurchase, 'supplier' | 'dyeLot'>;

export interface ReadBought {
  readonly receivedOn: string;
  readonly purchases: readonly ReadPurchase[];
}

export function purchaseFields({ kind }: Item): Readonly<Record<Measure, QuantityAsked>> {
  return {
    width: { label: say('common.width'), quantity: 'length', unit: clothWidthUnit, aboveZero: true },
    along: { label: say('common.length'), quantity: 'length', unit: clothLengthUnit, aboveZero: true },
    count: { label: say('common.how-many'), quantity: 'count', min: 1, max: 500 },
    amount: {
      label: say('common.amount'),
      quantity: countedQuantity(kindRecords[kind].counted),
      unit: amountUnit(kind),
      aboveZero: true,
    },
    price: { label: say('common.price'), quantity: 'money', hint: say('typed-bought.paid-for-all-of-it') },
  };
}

function shownOf({ line, item }: Bought, { system, currency }: Settings): Record<Measure, Shown> {
  const { priceMinor, lengths, amount } = receiptOf(line, item);
  const length = (mm: number, unit: typeof clothLengthUnit | typeof clothWidthUnit) => ({
    value: mm,
    text: showQuantity('length', mm, { system, unit }),
  });
  return {
    price: { value: priceMinor, text: moneyNumber(priceMinor, currency) },
    amount: amount === null ? nothingShown : { value: amount, text: amountText(item.kind, amount, system) },
    width: lengths ? length(lengths.widthMm, clothWidthUnit) : nothingShown,
    along: lengths ? length(lengths.lengthMm, clothLengthUnit) : nothingShown,
    count: shownCount(lengths?.count ?? 1),
  };
}

export function boughtForm(
  all: readonly Bought[],
  today: string,
  settings: Settings,
): FormShape<TypedBought, ReadBought> {
  const shown = all.map((bought) => shownOf(bought, settings));
  return {
    start: {
      receivedOn: today,
      purchases: all.map(({ line, item }, index): TypedPurchase => {
        const { price, amount, width, along, count } = shown[index]!;
        return {
          price: price.text,
          amount: amount.text,
          width: width.text,
          along: along.text,
          count: count.text,
          supplier: receiptOf(line, item).supplier,
          dyeLot: '',
        };
      }),
    },
    schema: () => {
      const purchases = all.map(({ item }, index) => purchaseSchema(item, shown[index]!, settings));
      const [first, ...others] = purchases;
      return z.object({
        receivedOn: z.string(),
        purchases: first ? z.tuple([first, ...others]) : z.tuple([]),
      });
    },
  };
}

function purchaseSchema(
  item: Item,
  shown: Readonly<Record<Measure, Shown>>,
  units: Units,
): z.ZodType<ReadPurchase, TypedPurchase> {
  const fields = purchaseFields(item);
  const { hasLengths } = kindRecords[item.kind];
  const nothing = z.string().transform(() => null);
  const read = (name: Measure, isAsked: boolean) =>
    isAsked ? quantityText(fields[name], units, shown[name]) : nothing;
  return z.object({
    width: read('width', hasLengths),
    along: read('along', hasLengths),
    count: read('count', hasLengths),
    amount: read('amount', !hasLengths),
    price: read('price', true),
    supplier: z.string(),
    dyeLot: z.string(),
  });
}

type Lot = CallInput<'receiveLots'>['lots'][number];

/** What is sent for all purchases, or everything that is missing. */
export function boughtLots(all: readonly Bought[], { receivedOn, purchases }: ReadBought): Result<Lot[]> {
  const lots = all.map((bought, index) => lotOf(bought, purchases[index]!, receivedOn));
  const problems = lots.flatMap((lot) => (lot.ok ? [] : lot.problems));
  return problems.length > 0 ? err(...problems) : ok(lots.flatMap((lot) => (lot.ok ? [lot.value] : [])));
}

function lotOf({ item, line }: Bought, read: ReadPurchase, receivedOn: string): Result<Lot> {
  const { hasLengths } = kindRecords[item.kind];
  const { price, amount, width, along, count } = read;
  const measures: readonly (readonly [string, number | null])[] = hasLengths
    ? [
        [say('common.width'), width],
        [say('common.length'), along],
        [say('typed-bought.number'), count],
      ]
    : [[say('common.amount'), amount]];
  const problems = [...measures, [say('common.price'), price] as const].flatMap(([what, value]) =>
    value === null
      ? [
          {
            where: say('typed-bought.of', { what, itemName: item.name }),
            what: say('common.is-missing'),
            fix: say('typed-bought.type-it-a-price-of-0'),
          },
        ]
      : [],
  );
  if (problems.length > 0 || price === null) return err(...problems);
  const form = receiptOf(line, item).lengths?.form ?? 'cut';
  const lot = {
    itemId: item.id,
    receivedOn,
    supplier: read.supplier.trim(),
    dyeLot: read.dyeLot.trim(),
    priceMinor: price,
    amount: hasLengths ? null : amount,
    lengths: hasLengths
      ? [{ widthMm: width ?? 0, lengthMm: along ?? 0, form, flaws: [], count: count ?? 1 }]
      : [],
  };
  return ok({ offerId: line.offer.id, lot });
}
