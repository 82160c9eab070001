/** What stands in the form of an offer, and how it is read. */
import { say } from '../../../../shared-core/wording/say.ts';
import { z } from 'zod';
import { moneyNumber } from '../../../../shared-core/measure/money/money.ts';
import type { Problem, Result } from '../../../../shared-core/measure/problem.ts';
import { err, ok } from '../../../../shared-core/measure/problem.ts';
import type { CallInput } from '../../../../shared-core/contract/contract.ts';
import type { Offer, SellingUnit } from '../../../../shared-core/stash/offer.ts';
import type { Item } from '../../../../shared-core/stash/stash.ts';
import type { QuantityAsked } from '../../../parts/forms/QuantityInput.tsx';
import {
  nothingShown,
  quantityText,
  type Shown,
  shownCount,
  type Units,
} from '../../../parts/forms/quantity-text.ts';
import type { FormShape } from '../../../parts/forms/typed-form.ts';
import { breaksIn, breaksOfOffer, breaksSchema, type ReadBreak, type TypedBreak } from './break-rows.ts';
import { figureNames, type Figures, figuresOfOffer, unitFields, unitOf } from './selling-fields.ts';

export interface TypedOffer {
  supplier: string;
  pricedOn: string;
  way: SellingUnit['kind'];
  price: string;
  figures: { -readonly [Name in keyof Figures<string>]: string };
  leastCount: string;
  breaks: TypedBreak[];
}

export interface ReadOffer {
  readonly supplier: string;
  readonly pricedOn: string;
  readonly way: SellingUnit['kind'];
  readonly priceMinor: number | null;
  /** Of those that this way of selling asks for. */
  readonly figures: Partial<Figures<number | null>>;
  readonly leastCount: number | null;
  readonly breaks: readonly ReadBreak[];
}

export const leastCountField: QuantityAsked = {
  label: say('typed-offer.at-least'),
  quantity: 'count',
  hint: say('typed-offer.fewest-sold-at-once-if-more'),
  aboveZero: true,
};

export function priceField(way: SellingUnit['kind']): QuantityAsked {
  return { label: say('common.price'), quantity: 'money', hint: priceHints[way] };
}

const priceHints: Readonly<Record<SellingUnit['kind'], string>> = {
  'by length': say('typed-offer.for-one-step'),
  sheet: say('typed-offer.for-one-sheet'),
  spool: say('typed-offer.for-one-spool'),
  'by mass': say('typed-offer.for-one-step'),
  pack: say('typed-offer.for-one-pack'),
  each: say('typed-offer.for-one-piece'),
};

/** Whether a least number means anything for what is sold so; lengths and masses have a least of their own. */
export function hasLeastCount(way: SellingUnit['kind']): boolean {
  return way !== 'by length' && way !== 'by mass';
}

/** way: what a new offer begins with. */
export function offerForm(
  item: Item,
  offer: Offer | null,
  { way, today }: { readonly way: SellingUnit['kind']; readonly today: string },
  units: Units,
): FormShape<TypedOffer, ReadOffer> {
  const price: Shown = offer
    ? { value: offer.priceMinor, text: moneyNumber(offer.priceMinor, units.currency) }
    : nothingShown;
  const leastCount = shownCount(offer?.leastCount);
  const figures = figuresOfOffer(item, offer, units.system);
  const kinds = Object.keys(unitFields) as [SellingUnit['kind'], ...SellingUnit['kind'][]];
  return {
    start: {
      supplier: offer?.supplier ?? '',
      pricedOn: offer?.pricedOn ?? today,
      way: offer?.unit.kind ?? way,
      price: price.text,
      figures: Object.fromEntries(
        figureNames.map((name) => [name, figures[name].text]),
      ) as TypedOffer['figures'],
      leastCount: leastCount.text,
      breaks: breaksOfOffer(offer, units),
    },
    schema: (typed) =>
      z
        .object({
          supplier: z.string(),
          pricedOn: z.string(),
          way: z.enum(kinds),
          price: quantityText(priceField(typed.way), units, price),
          figures: figuresSchema(typed.way, figures, units),
          leastCount: hasLeastCount(typed.way)
            ? quantityText(leastCountField, units, leastCount)
            : z.string().transform(() => null),
          breaks: breaksSchema(typed.way, units),
        })
        .transform(({ price: priceMinor, ...read }): ReadOffer => ({ ...read, priceMinor })),
  };
}

function figuresSchema(way: SellingUnit['kind'], shown: Figures<Shown>, units: Units) {
  const asked = unitFields[way].map((field) => [field.name, quantityText(field, units, shown[field.name])]);
  return z.object(Object.fromEntries(asked)) as unknown as z.ZodType<
    Partial<Figures<number | null>>,
    TypedOffer['figures']
  >;
}

/** What is sent for an offer of an item, or what is missing. */
export function offerCall(
  ids: { readonly offerId: string | null; readonly itemId: string },
  read: ReadOffer,
): Result<CallInput<'saveOffer'>> {
  const { supplier, pricedOn, way, priceMinor, leastCount } = read;
  const unit = unitOf(way, read.figures);
  const missing: Problem[] = unit.ok ? [] : [...unit.problems];
  if (priceMinor === null)
    missing.push({
      where: say('common.price'),
      what: say('common.is-missing'),
      fix: say('typed-offer.type-what-one-costs'),
    });
  if (!unit.ok || priceMinor === null) return err(...missing);
  const breaks = breaksIn(unit.value, read.breaks);
  if (!breaks.ok) return breaks;
  return ok({
    ...ids,
    supplier,
    unit: unit.value,
    priceMinor,
    pricedOn,
    ...(breaks.value.length > 0 && { breaks: [...breaks.value] }),
    ...(hasLeastCount(way) && leastCount !== null && { leastCount }),
  });
}
