/** Shortage + offers -> the cheapest basket of sellable units for one plan, with its reasons and what is next best. */
import type { CoverInput, SlotCover } from '../cover/slot-cover.ts';
import type { RunLay } from '../lay/plan-lay.ts';
import type { ItemId } from '../stash/stash.ts';
import type { Supplier } from '../stash/supplier.ts';
import { basket } from './basket.ts';
import type { Basket, Buy, Delivery } from './basket-sums.ts';
import { gapsOf } from './gaps.ts';
import type { Solve } from './programme.ts';
import type { Why } from './whys.ts';

/** What to buy of one item from one offer, and which slots it covers. */
export interface ToBuyLine extends Omit<Buy, 'gaps'> {
  readonly slotIds: readonly string[];
}

/** A gap that no offer closes, and why. */
export interface Unbuyable {
  readonly slotIds: readonly string[];
  readonly itemId: ItemId | null;
  readonly why: 'no item chosen' | 'no offer';
}

/** One basket: its lines in the order of the slots, and what its suppliers ask to bring it. */
export interface BoughtBasket {
  readonly lines: readonly ToBuyLine[];
  readonly deliveries: readonly Delivery[];
  /** Goods alone. */
  readonly totalMinor: number;
  readonly deliveryMinor: number;
  /** Goods and deliveries. */
  readonly payMinor: number;
}

/** The cheapest basket, and what else the maker may want to know of it. */
export interface ToBuy extends BoughtBasket {
  readonly unbuyable: readonly Unbuyable[];
  readonly whys: readonly Why[];
  /** The cheapest baskets with fewer suppliers, the nearest first. */
  readonly fewer: readonly BoughtBasket[];
}

export interface ToBuyInput extends CoverInput {
  readonly suppliers: readonly Supplier[];
}

/** The list for all short slots of a plan. */
export async function toBuy(
  input: ToBuyInput,
  covers: readonly SlotCover[],
  runLay: RunLay,
  solve: Solve,
): Promise<ToBuy> {
  const gaps = gapsOf(input.plan, input.needs, covers);
  const answer = await basket({ ...input, gaps }, runLay, solve);
  const openSlots = covers.filter(({ state }) => state === 'open').map(({ slotId }) => slotId);
  const open: Unbuyable[] =
    openSlots.length > 0 ? [{ slotIds: openSlots, itemId: null, why: 'no item chosen' }] : [];
  const noOffer = answer.unbuyable.map(
    ({ itemId, gaps }): Unbuyable => ({ slotIds: gaps.map(({ slotId }) => slotId), itemId, why: 'no offer' }),
  );
  return {
    ...bought(answer.cheapest),
    unbuyable: [...open, ...noOffer],
    whys: answer.whys,
    fewer: answer.fewer.map(bought),
  };
}

function bought({ buys, deliveries, goodsMinor, deliveryMinor, totalMinor }: Basket): BoughtBasket {
  return {
    lines: buys.map(({ gaps, ...buy }) => ({ ...buy, slotIds: gaps.map(({ slotId }) => slotId) })),
    deliveries,
    totalMinor: goodsMinor,
    deliveryMinor,
    payMinor: totalMinor,
  };
}
