/** What a basket holds and costs: reckoned from whole counts in integers, without the solver. */
import { byName } from '../wording/in-order.ts';
import { leastUnits, type Offer, offerPriceMinor } from '../stash/offer.ts';
import type { ItemId } from '../stash/stash.ts';
import { deliveryMinor, type Supplier, supplierKey } from '../stash/supplier.ts';
import { type Choice, closingAlone, offersOf } from './basket-programme.ts';
import { amountDust, contentOf, type Demand, isLongEnough } from './demand.ts';
import type { Gap } from './gaps.ts';

/** Units of one offer, and what they cover. */
export interface Buy {
  readonly itemId: ItemId;
  readonly gaps: readonly Gap[];
  readonly offer: Offer;
  /** Steps, sheets, spools, packs or pieces. */
  readonly unitCount: number;
  /**
   * What the units hold, and what of it the plans use up, in the kind's unit (for sheets: mm of sheet length). What is
   * bought as margin for safety is not used up.
   */
  readonly boughtAmount: number;
  readonly usedAmount: number;
  /** At the price that so many units have. */
  readonly priceMinor: number;
  /** For sheets: what no piece of the item lies on, mm2, on all its sheets together; else null. */
  readonly leftAreaMm2: number | null;
  /** Other offers that would close the item's gaps alone, cheapest goods first. */
  readonly alternatives: readonly Alternative[];
}

export interface Alternative {
  readonly offer: Offer;
  readonly unitCount: number;
  readonly priceMinor: number;
}

export interface Delivery {
  readonly supplier: string;
  readonly goodsMinor: number;
  readonly deliveryMinor: number;
  /** True: its goods reach the sum from which its delivery is free. */
  readonly isFree: boolean;
  /** False: nothing is known of the supplier, and its delivery is counted as nothing. */
  readonly isKnown: boolean;
  readonly leadDays: number | null;
}

export interface Basket {
  readonly buys: readonly Buy[];
  /** By name of the supplier. */
  readonly deliveries: readonly Delivery[];
  readonly goodsMinor: number;
  readonly deliveryMinor: number;
  readonly totalMinor: number;
}

/** A basket with the decisions that it came from. */
export interface ChosenBasket {
  readonly basket: Basket;
  readonly choice: Choice;
}

/** Whether the units hold what every demand wants. */
export function holdsAll(demands: readonly Demand[], { ways, counts }: Choice): boolean {
  return demands.every((demand) => {
    if (demand.kind === 'cut') {
      const parts = ways.get(demand)?.parts;
      return parts?.every(({ offer, neededCount }) => (counts.get(offer) ?? 0) >= neededCount) ?? false;
    }
    const unitCount = demand.offers.reduce((sum, offer) => sum + (counts.get(offer) ?? 0), 0);
    if (unitCount < demand.leastUnitCount) return false;
    return demand.wanted.every(({ minLengthMm, amount }) => {
      const held = demand.offers
        .filter((offer) => isLongEnough(offer, minLengthMm))
        .reduce((sum, offer) => sum + (counts.get(offer) ?? 0) * (contentOf(offer) ?? 0), 0);
      return held >= amount - amountDust;
    });
  });
}

/** Whether no less is bought of any offer than is sold at once. */
export function isSold(counts: ReadonlyMap<Offer, number>): boolean {
  return [...counts].every(([offer, count]) => count >= leastUnits(offer));
}

/** The same choice without units that cost nothing and serve nothing. */
export function trimmed(demands: readonly Demand[], suppliers: readonly Supplier[], choice: Choice): Choice {
  const counts = new Map(choice.counts);
  const totalMinor = () => sumsOf(counts, suppliers).totalMinor;
  for (const offer of [...counts.keys()]) {
    for (let before = totalMinor(), count = counts.get(offer)!; count > 0; before = totalMinor()) {
      count--;
      if (count === 0) counts.delete(offer);
      else counts.set(offer, count);
      const isAsGood = totalMinor() <= before && isSold(counts) && holdsAll(demands, { ...choice, counts });
      if (isAsGood) continue;
      counts.set(offer, count + 1);
      break;
    }
  }
  return { ...choice, counts };
}

/** Goods, deliveries and total of counts, in integers. */
export function sumsOf(
  counts: ReadonlyMap<Offer, number>,
  suppliers: readonly Supplier[],
): Pick<Basket, 'deliveries' | 'goodsMinor' | 'deliveryMinor' | 'totalMinor'> {
  const bySupplier = Map.groupBy(counts, ([offer]) => supplierKey(offer.supplier));
  const deliveries = [...bySupplier].map(([key, bought]): Delivery => {
    const supplier = suppliers.find(({ name }) => supplierKey(name) === key);
    const goodsMinor = bought.reduce((sum, [offer, count]) => sum + offerPriceMinor(offer, count), 0);
    const costMinor = deliveryMinor(supplier, goodsMinor);
    return {
      supplier: bought[0]![0].supplier,
      goodsMinor,
      deliveryMinor: costMinor,
      isFree: supplier !== undefined && costMinor === 0 && supplier.deliveryMinor > 0,
      isKnown: supplier !== undefined,
      leadDays: supplier?.leadDays ?? null,
    };
  });
  deliveries.sort((a, b) => byName(a.supplier, b.supplier));
  const goodsMinor = deliveries.reduce((sum, delivery) => sum + delivery.goodsMinor, 0);
  const deliverySumMinor = deliveries.reduce((sum, delivery) => sum + delivery.deliveryMinor, 0);
  return {
    deliveries,
    goodsMinor,
    deliveryMinor: deliverySumMinor,
    totalMinor: goodsMinor + deliverySumMinor,
  };
}

/** The basket that a choice makes. */
export function basketOf(demands: readonly Demand[], suppliers: readonly Supplier[], choice: Choice): Basket {
  const buys = demands.flatMap((demand) => {
    let openAmount = demand.kind === 'amount' ? demand.usedAmount : 0;
    return offersOf(demand).flatMap((offer): Buy[] => {
      const unitCount = choice.counts.get(offer) ?? 0;
      if (unitCount === 0) return [];
      const way = choice.ways.get(demand);
      const boughtAmount = unitCount * unitAmount(offer);
      const usedAmount =
        way?.parts.find((part) => part.offer === offer)?.usedAmount ?? Math.min(openAmount, boughtAmount);
      openAmount -= usedAmount;
      return [
        {
          itemId: demand.itemId,
          gaps: demand.gaps,
          offer,
          unitCount,
          boughtAmount,
          usedAmount,
          priceMinor: offerPriceMinor(offer, unitCount),
          leftAreaMm2: way?.leftAreaMm2 ?? null,
          alternatives: alternativesTo(demand, choice.counts),
        },
      ];
    });
  });
  return { buys, ...sumsOf(choice.counts, suppliers) };
}

function alternativesTo(demand: Demand, counts: ReadonlyMap<Offer, number>): Alternative[] {
  return offersOf(demand)
    .flatMap((offer): Alternative[] => {
      const unitCount = counts.has(offer) ? null : closingAlone(demand, offer);
      return unitCount === null ? [] : [{ offer, unitCount, priceMinor: offerPriceMinor(offer, unitCount) }];
    })
    .sort((a, b) => a.priceMinor - b.priceMinor || a.offer.id.localeCompare(b.offer.id));
}

/** What one unit puts on the shelf, in the kind's unit; a sheet its length. */
function unitAmount(offer: Offer): number {
  if (offer.unit.kind === 'by length') return offer.unit.stepMm;
  if (offer.unit.kind === 'sheet') return offer.unit.lengthMm;
  return contentOf(offer) ?? 0;
}
