/** The cheapest basket that closes all gaps of one or several plans, why it is that one, and the next best with fewer suppliers. */
import type { RunLay } from '../lay/plan-lay.ts';
import type { ItemId } from '../stash/stash.ts';
import type { Supplier } from '../stash/supplier.ts';
import { basketProgramme, type Limits, offersOf } from './basket-programme.ts';
import { type Basket, basketOf, type ChosenBasket, holdsAll, isSold, trimmed } from './basket-sums.ts';
import { type Demand, demandsOf, type DemandSources } from './demand.ts';
import type { Gap } from './gaps.ts';
import type { Solve } from './programme.ts';
import { type Why, whysOf } from './whys.ts';

export interface BasketAnswer {
  readonly cheapest: Basket;
  readonly whys: readonly Why[];
  /** The cheapest with fewer suppliers, the nearest first; two at most. */
  readonly fewer: readonly Basket[];
  /** Items that no offer closes; nothing is bought for them. */
  readonly unbuyable: readonly { readonly itemId: ItemId; readonly gaps: readonly Gap[] }[];
}

/**
 * Closes all gaps at the least sum of goods and deliveries, proven by the solver.
 *
 * gaps: from `gapsOf` of each plan, in one list; what two plans lack of one item is laid and bought together.
 * shelf, offers, suppliers: those of the whole workshop. runLay: for other widths and for sheets, as `estimate`
 * takes it. solve: see Solve; it decides counts, and the sums are made anew from these in integers.
 */
export async function basket(sources: DemandSources, runLay: RunLay, solve: Solve): Promise<BasketAnswer> {
  const all = await demandsOf(sources, runLay);
  const demands = all.filter((demand) => offersOf(demand).length > 0);
  const unbuyable = all
    .filter((demand) => offersOf(demand).length === 0)
    .map(({ itemId, gaps }) => ({ itemId, gaps }));
  const best = (limits?: Limits) => cheapestBasket(demands, sources.suppliers, solve, limits);
  const cheapest = await best();
  if (cheapest === null) throw new Error('every gap has an offer, and yet no basket closes them');
  const fewer: Basket[] = [];
  let supplierCount = cheapest.basket.deliveries.length;
  while (fewer.length < maxFewer && supplierCount > 1) {
    const next = await best({ maxSuppliers: supplierCount - 1 });
    if (next === null) break;
    fewer.push(next.basket);
    supplierCount = next.basket.deliveries.length;
  }
  return {
    cheapest: cheapest.basket,
    whys: await whysOf({ demands, suppliers: sources.suppliers, cheapest, best }),
    fewer,
    unbuyable,
  };
}

/** Further ones are seldom wanted, and each has to be proven. */
const maxFewer = 2;

/** The cheapest basket within limits, or null where these leave none. Every demand must have something that closes it. */
export async function cheapestBasket(
  demands: readonly Demand[],
  suppliers: readonly Supplier[],
  solve: Solve,
  limits: Limits = {},
): Promise<ChosenBasket | null> {
  if (demands.length === 0) return { basket: emptyBasket, choice: { ways: new Map(), counts: new Map() } };
  const { programme, choiceOf } = basketProgramme(demands, suppliers, limits);
  const numbers = await solve(programme);
  if (numbers === null) return null;
  const choice = trimmed(demands, suppliers, choiceOf(numbers));
  if (!holdsAll(demands, choice) || !isSold(choice.counts)) {
    throw new Error('the basket that was solved for leaves a gap');
  }
  return { basket: basketOf(demands, suppliers, choice), choice };
}

const emptyBasket: Basket = { buys: [], deliveries: [], goodsMinor: 0, deliveryMinor: 0, totalMinor: 0 };
