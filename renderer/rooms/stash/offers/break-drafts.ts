/** Price breaks and the least count of an offer while they are typed: in lengths, masses or numbers, kept as units. */
import { moneyNumber } from '../../../../shared-core/measure/money/money.ts';
import { ok, type Result, type Problem, err } from '../../../../shared-core/measure/problem.ts';
import { stepsUp } from '../../../../shared-core/measure/round-up.ts';
import type { MeasureSystem, QuantityKind } from '../../../../shared-core/measure/quantity.ts';
import { showQuantity } from '../../../../shared-core/measure/show.ts';
import type { FieldUnit } from '../../../../shared-core/measure/units.ts';
import type { Offer, PriceBreak, SellingUnit } from '../../../../shared-core/stash/offer.ts';
import { clothLengthUnit } from '../../../parts/figures/Amount.tsx';
import { draftOf, emptyDraft, type QuantityDraft } from '../../../parts/forms/DraftField.tsx';

export interface BreakDraft {
  readonly key: number;
  readonly from: QuantityDraft;
  readonly price: QuantityDraft;
}

/** In what the maker says from where a price holds. */
export interface FromField {
  readonly quantity: QuantityKind;
  readonly unit: FieldUnit | undefined;
  readonly hint: string;
}

export const fromFields: Readonly<Record<SellingUnit['kind'], FromField>> = {
  'by length': { quantity: 'length', unit: clothLengthUnit, hint: 'This length or more' },
  sheet: { quantity: 'count', unit: undefined, hint: 'So many sheets or more' },
  spool: { quantity: 'count', unit: undefined, hint: 'So many spools or more' },
  'by mass': { quantity: 'mass', unit: undefined, hint: 'This mass or more' },
  pack: { quantity: 'count', unit: undefined, hint: 'So many packs or more' },
  each: { quantity: 'count', unit: undefined, hint: 'So many pieces or more' },
};

export function emptyBreak(key: number): BreakDraft {
  return { key, from: emptyDraft, price: emptyDraft };
}

export function draftsOfBreaks(
  offer: Offer | null,
  system: MeasureSystem,
  currency: string,
): readonly BreakDraft[] {
  if (!offer) return [];
  const { quantity, unit } = fromFields[offer.unit.kind];
  return (offer.breaks ?? []).map(({ fromCount, priceMinor }, index) => {
    const amount = fromCount * perUnit(offer.unit);
    const text =
      quantity === 'count'
        ? String(amount)
        : showQuantity(quantity, amount, { system, ...(unit && { unit }) });
    return {
      key: index,
      from: draftOf(amount, text),
      price: draftOf(priceMinor, moneyNumber(priceMinor, currency)),
    };
  });
}

/** The breaks that the drafts make for this unit, or which figure is missing. */
export function readBreaks(drafts: readonly BreakDraft[], unit: SellingUnit): Result<readonly PriceBreak[]> {
  const problems: Problem[] = [];
  const breaks = drafts.map(({ from, price }, index): PriceBreak => {
    const where = `Price break ${index + 1}`;
    if (from.value === null)
      problems.push({ where, what: 'has no beginning', fix: 'Type from how much on it holds.' });
    if (price.value === null)
      problems.push({ where, what: 'has no price', fix: 'Type what one costs from there on.' });
    return {
      fromCount: Math.max(1, stepsUp(from.value ?? 0, perUnit(unit))),
      priceMinor: price.value ?? 0,
    };
  });
  return problems.length > 0 ? err(...problems) : ok(breaks);
}

/** Length or mass of one step; what is sold one by one counts as one. */
function perUnit(unit: SellingUnit): number {
  return unit.kind === 'by length' ? unit.stepMm : unit.kind === 'by mass' ? unit.stepG : 1;
}
