/** Why the cheapest basket is as it is: each fact sets it against the same basket with one thing changed. */
import { leastUnits, type Offer, offerPriceMinor, unitPriceMinor } from '../stash/offer.ts';
import type { ItemId } from '../stash/stash.ts';
import type { Supplier } from '../stash/supplier.ts';
import { type Buy, type ChosenBasket, holdsAll, sumsOf } from './basket-sums.ts';
import { closingAlone, type Limits, offersOf } from './basket-programme.ts';
import type { Demand } from './demand.ts';

/** Units of one offer. */
export interface Units {
  readonly offer: Offer;
  readonly unitCount: number;
}

export type Why =
  | {
      /** The next best way to close the gap of this item, all else the same, costs so much more in goods and deliveries of the whole basket. */
      readonly kind: 'instead';
      readonly itemId: ItemId;
      readonly bought: readonly Units[];
      readonly instead: readonly Units[];
      readonly cheaperMinor: number;
      /** The item's goods alone against those of the other way; below 0: dearer, and worth it by deliveries. */
      readonly goodsCheaperMinor: number;
      /** What is left over of it: mm2 for sheets, else the kind's unit. */
      readonly left: number;
      readonly isLeftArea: boolean;
    }
  | {
      /** More is bought than is missing, since that is cheaper. */
      readonly kind: 'more for less';
      readonly itemId: ItemId;
      readonly offer: Offer;
      readonly unitCount: number;
      /** Units that would do. */
      readonly neededCount: number;
      readonly through: 'price break' | 'free delivery' | 'least count';
      readonly cheaperMinor: number;
    }
  | {
      /** The item is seen, so all of it is bought from one offer; mixing offers would be cheaper by so much. */
      readonly kind: 'one dye lot';
      readonly itemId: ItemId;
      readonly supplier: string;
      readonly mixedCheaperMinor: number;
    };

export interface WhySources {
  readonly demands: readonly Demand[];
  readonly suppliers: readonly Supplier[];
  readonly cheapest: ChosenBasket;
  /** The cheapest basket within limits. */
  readonly best: (limits: Limits) => Promise<ChosenBasket | null>;
}

/** The reasons, in the order of the demands. */
export async function whysOf(sources: WhySources): Promise<readonly Why[]> {
  const { demands, cheapest, best } = sources;
  const whys: Why[] = [];
  for (const demand of demands) {
    const buys = cheapest.basket.buys.filter(({ itemId }) => itemId === demand.itemId);
    const other = nextBest(sources, demand);
    if (other) whys.push(insteadOf(demand, buys, cheapest, other));
    whys.push(...buys.flatMap((buy) => moreForLess(sources, buy)));
    const offerCount = offersOf(demand).length;
    if (demand.isOneLot && demand.kind === 'amount' && offerCount > 1) {
      const mixed = await best({ isMixed: true });
      const mixedCheaperMinor = mixed ? cheapest.basket.totalMinor - mixed.basket.totalMinor : 0;
      const supplier = buys[0]?.offer.supplier ?? '';
      if (mixedCheaperMinor > 0) {
        whys.push({ kind: 'one dye lot', itemId: demand.itemId, supplier, mixedCheaperMinor });
      }
    }
  }
  return whys;
}

interface OtherWay {
  readonly units: readonly Units[];
  readonly goodsMinor: number;
  /** Of the whole basket. */
  readonly totalMinor: number;
}

/** The cheapest of the other ways and single offers that close a demand while all other items stay as they are. */
function nextBest({ suppliers, cheapest }: WhySources, demand: Demand): OtherWay | null {
  const { ways, counts } = cheapest.choice;
  const offers = new Set(offersOf(demand));
  const rest = [...counts].filter(([offer]) => !offers.has(offer));
  const others: Units[][] =
    demand.kind === 'cut'
      ? demand.ways
          .filter((way) => way !== ways.get(demand))
          .map(({ parts }) => parts.map(({ offer, unitCount }) => ({ offer, unitCount })))
      : demand.offers.flatMap((offer) => {
          const unitCount = counts.has(offer) ? null : closingAlone(demand, offer);
          return unitCount === null ? [] : [[{ offer, unitCount }]];
        });
  return others.reduce<OtherWay | null>((best, units) => {
    const bought = units.map(({ offer, unitCount }) => [offer, unitCount] as const);
    const { totalMinor } = sumsOf(new Map([...rest, ...bought]), suppliers);
    if (best && best.totalMinor <= totalMinor) return best;
    const goodsMinor = units.reduce(
      (sum, { offer, unitCount }) => sum + offerPriceMinor(offer, unitCount),
      0,
    );
    return { units, goodsMinor, totalMinor };
  }, null);
}

function insteadOf(demand: Demand, buys: readonly Buy[], cheapest: ChosenBasket, other: OtherWay): Why {
  const leftArea = buys[0]?.leftAreaMm2 ?? null;
  return {
    kind: 'instead',
    itemId: demand.itemId,
    bought: buys.map(({ offer, unitCount }) => ({ offer, unitCount })),
    instead: other.units,
    cheaperMinor: other.totalMinor - cheapest.basket.totalMinor,
    goodsCheaperMinor: other.goodsMinor - buys.reduce((sum, { priceMinor }) => sum + priceMinor, 0),
    left: leftArea ?? buys.reduce((sum, { boughtAmount, usedAmount }) => sum + boughtAmount - usedAmount, 0),
    isLeftArea: leftArea !== null,
  };
}

/** Where fewer units would do, and cost more or are not sold. */
function moreForLess({ demands, suppliers, cheapest }: WhySources, buy: Buy): Why[] {
  const { choice, basket } = cheapest;
  const { offer, unitCount, itemId } = buy;
  const withCount = (count: number) => new Map(choice.counts).set(offer, count);
  let neededCount = unitCount;
  while (neededCount > 1 && holdsAll(demands, { ...choice, counts: withCount(neededCount - 1) }))
    neededCount--;
  if (neededCount === unitCount) return [];
  const base = { kind: 'more for less', itemId, offer, unitCount, neededCount } as const;
  if (unitCount === leastUnits(offer)) return [{ ...base, through: 'least count', cheaperMinor: 0 }];
  const cheaperMinor = sumsOf(withCount(neededCount), suppliers).totalMinor - basket.totalMinor;
  const isBreak = unitPriceMinor(offer, unitCount) < unitPriceMinor(offer, neededCount);
  return [{ ...base, through: isBreak ? 'price break' : 'free delivery', cheaperMinor }];
}
