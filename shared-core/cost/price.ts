/**
 * From what a coat uses up to what it is sold for: material, work, overhead, wholesale, retail. Rates, shares and
 * factors are the maker's own; minutes are the maker's estimate.
 *
 * Each of a coat's figures is rounded once to minor units, where it is made, and only whole minor units are added.
 */
import { shareMinor, wholeShareMinor } from '../measure/money/money.ts';
import { type CoatPlan, labourMinutesPerCoat } from '../plan/model/coat-plan.ts';
import type { CostSheet } from './cost.ts';

/**
 * What is put on top. margin: the share of the price that is not cost, price = cost / (1 - margin).
 * mark-up: the share of the cost that is added, price = cost x (1 + mark-up). 50 % margin is 100 % mark-up.
 */
export interface Addition {
  readonly kind: 'margin' | 'mark-up';
  readonly ratio: number;
}

/** share: of material and work together. */
export type Overhead =
  | { readonly kind: 'share'; readonly ratio: number }
  | { readonly kind: 'per coat'; readonly amountMinor: number };

/** The workshop's rules; null: not counted. */
export interface PriceRules {
  /** null: an hour of work has no rate. */
  readonly hourlyRateMinor: number | null;
  /** True: the maker has said that work is not counted. Without that and without a rate there is no price. */
  readonly isWorkLeftOut?: boolean;
  readonly overhead: Overhead | null;
  /** On the cost of a coat. */
  readonly wholesale: Addition;
  /** On the wholesale price. */
  readonly retail: Addition;
}

/** Doubled to wholesale and doubled again to retail: common practice, no source. Work has no rate yet, and overhead is not counted. */
export const defaultPriceRules: PriceRules = {
  hourlyRateMinor: null,
  overhead: null,
  wholesale: { kind: 'mark-up', ratio: 1 },
  retail: { kind: 'mark-up', ratio: 1 },
};

export interface CostParts {
  readonly materialMinor: number;
  readonly labourMinor: number;
  readonly overheadMinor: number;
  readonly costMinor: number;
}

export interface Price {
  readonly priceMinor: number;
  readonly addition: Addition;
  /** Above the cost of the coat, whichever of the two it was made by. null where there is no price to divide by. */
  readonly marginRatio: number | null;
  readonly markUpRatio: number | null;
}

export interface PriceSheet {
  readonly minutesPerCoat: number;
  /** The coat that carries the odd minor unit of the batch. */
  readonly coat: CostParts;
  /** All coats of the batch, each rounded for itself. */
  readonly batch: CostParts;
  /** Both null while nothing is said of the work: a price without it would sell the maker's hours for nothing. */
  readonly wholesale: Price | null;
  readonly retail: Price | null;
}

/** Whether work has a rate, or is left out on purpose. */
export function isWorkSaid({ hourlyRateMinor, isWorkLeftOut }: PriceRules): boolean {
  return hourlyRateMinor !== null || isWorkLeftOut === true;
}

/** What a coat of the plan costs in all and its two prices, by the workshop's rules. */
export function priceSheet(
  plan: CoatPlan,
  cost: Pick<CostSheet, 'perCoatMinor'>,
  rules: PriceRules,
): PriceSheet {
  const minutesPerCoat = labourMinutesPerCoat(plan);
  const labourMinor =
    rules.hourlyRateMinor === null ? 0 : shareMinor(rules.hourlyRateMinor, minutesPerCoat, 60);
  const coats = cost.perCoatMinor.map((materialMinor): CostParts => {
    const overheadMinor = overheadOf(rules.overhead, materialMinor + labourMinor);
    const costMinor = materialMinor + labourMinor + overheadMinor;
    return { materialMinor, labourMinor, overheadMinor, costMinor };
  });
  const coat = coats[0] ?? { materialMinor: 0, labourMinor: 0, overheadMinor: 0, costMinor: 0 };
  const wholesaleMinor = added(coat.costMinor, rules.wholesale);
  const isPriced = isWorkSaid(rules);
  return {
    minutesPerCoat,
    coat,
    batch: coats.reduce(sumOfParts, { materialMinor: 0, labourMinor: 0, overheadMinor: 0, costMinor: 0 }),
    wholesale: isPriced ? priceOf(wholesaleMinor, rules.wholesale, coat.costMinor) : null,
    retail: isPriced ? priceOf(added(wholesaleMinor, rules.retail), rules.retail, coat.costMinor) : null,
  };
}

/** The price over a cost, rounded once, half away from zero. Throws for a margin of 1 or more: no price has that. */
export function added(costMinor: number, { kind, ratio }: Addition): number {
  const parts = wholeParts(ratio);
  switch (kind) {
    case 'margin':
      return wholeShareMinor(costMinor, oneInParts, oneInParts - parts);
    case 'mark-up':
      return wholeShareMinor(costMinor, oneInParts + parts, oneInParts);
    default:
      return kind satisfies never;
  }
}

/** A share is taken to the millionth, so that no float enters the multiplication. */
const oneInParts = 1_000_000;

function wholeParts(ratio: number): number {
  return Math.round(ratio * oneInParts);
}

function overheadOf(overhead: Overhead | null, onMinor: number): number {
  if (overhead === null) return 0;
  switch (overhead.kind) {
    case 'share':
      return wholeShareMinor(onMinor, wholeParts(overhead.ratio), oneInParts);
    case 'per coat':
      return overhead.amountMinor;
    default:
      return overhead satisfies never;
  }
}

function sumOfParts(sum: CostParts, part: CostParts): CostParts {
  return {
    materialMinor: sum.materialMinor + part.materialMinor,
    labourMinor: sum.labourMinor + part.labourMinor,
    overheadMinor: sum.overheadMinor + part.overheadMinor,
    costMinor: sum.costMinor + part.costMinor,
  };
}

function priceOf(priceMinor: number, addition: Addition, costMinor: number): Price {
  return {
    priceMinor,
    addition,
    marginRatio: priceMinor > 0 ? (priceMinor - costMinor) / priceMinor : null,
    markUpRatio: costMinor > 0 ? (priceMinor - costMinor) / costMinor : null,
  };
}
