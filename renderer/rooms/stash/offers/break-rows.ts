/** Price breaks of an offer in its form: typed in lengths, masses or numbers, kept as units. */
import { say } from '../../../../shared-core/wording/say.ts';
import { z } from 'zod';
import { moneyNumber } from '../../../../shared-core/measure/money/money.ts';
import { ok, type Result, type Problem, err } from '../../../../shared-core/measure/problem.ts';
import { stepsUp } from '../../../../shared-core/measure/round-up.ts';
import { showQuantity } from '../../../../shared-core/measure/show.ts';
import type { Offer, PriceBreak, SellingUnit } from '../../../../shared-core/stash/offer.ts';
import { clothLengthUnit } from '../../../parts/figures/Amount.tsx';
import type { QuantityAsked } from '../../../parts/forms/QuantityInput.tsx';
import { nothingShown, readAt, type Shown, type Units } from '../../../parts/forms/quantity-text.ts';

export interface TypedBreak {
  from: string;
  price: string;
  /** What stood in its fields at first. */
  shown: { from: Shown; price: Shown };
}

export interface ReadBreak {
  readonly from: number | null;
  readonly priceMinor: number | null;
}

/** In what the maker says from where a price holds. */
export const fromFields: Readonly<Record<SellingUnit['kind'], QuantityAsked>> = {
  'by length': fromField('length', say('break-rows.this-length-or-more'), clothLengthUnit),
  sheet: fromField('count', say('break-rows.so-many-sheets-or-more')),
  spool: fromField('count', say('break-rows.so-many-spools-or-more')),
  'by mass': fromField('mass', say('break-rows.this-mass-or-more')),
  pack: fromField('count', say('break-rows.so-many-packs-or-more')),
  each: fromField('count', say('break-rows.so-many-pieces-or-more')),
};

export const breakPrice: QuantityAsked = {
  label: say('break-rows.price-then'),
  quantity: 'money',
  hint: say('break-rows.for-one-as-above'),
};

function fromField(
  quantity: QuantityAsked['quantity'],
  hint: string,
  unit?: QuantityAsked['unit'],
): QuantityAsked {
  return { label: say('common.from'), quantity, hint, unit, aboveZero: true };
}

export const emptyBreak: TypedBreak = {
  from: '',
  price: '',
  shown: { from: nothingShown, price: nothingShown },
};

export function breaksOfOffer(offer: Offer | null, { system, currency }: Units): TypedBreak[] {
  if (!offer) return [];
  const { quantity, unit } = fromFields[offer.unit.kind];
  return (offer.breaks ?? []).map(({ fromCount, priceMinor }) => {
    const amount = fromCount * perUnit(offer.unit);
    const text =
      quantity === 'count'
        ? String(amount)
        : showQuantity(quantity, amount, { system, ...(unit && { unit }) });
    const from = { value: amount, text };
    const price = { value: priceMinor, text: moneyNumber(priceMinor, currency) };
    return { from: from.text, price: price.text, shown: { from, price } };
  });
}

export function breaksSchema(way: SellingUnit['kind'], units: Units): z.ZodType<ReadBreak[], TypedBreak[]> {
  return z.array(
    z.object({ from: z.string(), price: z.string(), shown: z.custom<TypedBreak['shown']>() }).transform(
      ({ from, price, shown }, context): ReadBreak => ({
        from: readAt(context, ['from'], fromFields[way], units, { text: from, shown: shown.from }),
        priceMinor: readAt(context, ['price'], breakPrice, units, { text: price, shown: shown.price }),
      }),
    ),
  );
}

/** The breaks that were read, in this unit, or which figure is missing. */
export function breaksIn(unit: SellingUnit, read: readonly ReadBreak[]): Result<readonly PriceBreak[]> {
  const problems: Problem[] = [];
  const breaks = read.map(({ from, priceMinor }, index): PriceBreak => {
    const where = say('break-rows.price-break', { index: index + 1 });
    if (from === null)
      problems.push({
        where,
        what: say('break-rows.has-no-beginning'),
        fix: say('break-rows.type-from-how-much-on-it'),
      });
    if (priceMinor === null)
      problems.push({
        where,
        what: say('break-rows.has-no-price'),
        fix: say('break-rows.type-what-one-costs-from-there'),
      });
    return { fromCount: Math.max(1, stepsUp(from ?? 0, perUnit(unit))), priceMinor: priceMinor ?? 0 };
  });
  return problems.length > 0 ? err(...problems) : ok(breaks);
}

/** Length or mass of one step; what is sold one by one counts as one. */
function perUnit(unit: SellingUnit): number {
  return unit.kind === 'by length' ? unit.stepMm : unit.kind === 'by mass' ? unit.stepG : 1;
}
