/** What must be bought of each item, and what closes it: ways for what is cut, amounts for what is counted. */
import { stepsUp } from '../measure/round-up.ts';
import type { RunLay } from '../lay/plan-lay.ts';
import { leastUnits, type Offer } from '../stash/offer.ts';
import type { ItemId, ItemOnShelf } from '../stash/stash.ts';
import type { Supplier } from '../stash/supplier.ts';
import type { AmountGap, Gap } from './gaps.ts';
import { type CutGapOf, type Way, waysToClose } from './ways.ts';

interface DemandBase {
  readonly itemId: ItemId;
  readonly gaps: readonly Gap[];
  /** True: seen somewhere, so that all of it comes from one offer. */
  readonly isOneLot: boolean;
}

/** Exactly one of the ways is taken. */
export interface CutDemand extends DemandBase {
  readonly kind: 'cut';
  readonly ways: readonly Way[];
}

/** Units of these offers hold at least each amount, of pieces that are long enough for it. */
export interface AmountDemand extends DemandBase {
  readonly kind: 'amount';
  readonly offers: readonly Offer[];
  /** Shortest length first, each with all that is wanted of it or longer, margins for safety with it. */
  readonly wanted: readonly { readonly minLengthMm: number; readonly amount: number }[];
  /** What the coats use up of it all, in the kind's unit: without the margins. */
  readonly usedAmount: number;
  /** Units of whatever offers, at least: thread for a machine that runs several spools at once. */
  readonly leastUnitCount: number;
}

export type Demand = CutDemand | AmountDemand;

export interface DemandSources {
  readonly gaps: readonly Gap[];
  readonly shelf: readonly ItemOnShelf[];
  readonly offers: readonly Offer[];
  readonly suppliers: readonly Supplier[];
}

/** The demands of all items with a gap, in the order of the gaps. One that nothing closes has no ways or offers. */
export async function demandsOf(sources: DemandSources, runLay: RunLay): Promise<readonly Demand[]> {
  const byItem = Map.groupBy(sources.gaps, (gap) => gap.itemId);
  return Promise.all(
    [...byItem].map(async ([itemId, gaps]): Promise<Demand> => {
      const offers = sources.offers.filter((offer) => offer.itemId === itemId);
      const base = { itemId, gaps, isOneLot: gaps.some((gap) => gap.isSeen) };
      const cutGaps = gaps.filter((gap): gap is CutGapOf => gap.needs.kind === 'cut');
      if (cutGaps.length === 0) return { ...base, ...amountDemand(base, offers) };
      const item = sources.shelf.find((onShelf) => onShelf.item.id === itemId)?.item;
      if (!item) throw new RangeError(`no item ${itemId} on the shelf`);
      const { suppliers } = sources;
      const ways = await waysToClose({ item, gaps: cutGaps, offers, suppliers }, runLay);
      return { ...base, kind: 'cut', ways };
    }),
  );
}

function amountDemand(base: DemandBase, offers: readonly Offer[]): AmountDemand {
  const parts = base.gaps.map((gap) => gap.needs as AmountGap);
  const lengths = [...new Set(parts.map((part) => part.wantedLengthMm ?? 0))].sort((a, b) => a - b);
  const wanted = lengths.map((minLengthMm) => ({
    minLengthMm,
    amount: parts
      .filter((part) => (part.wantedLengthMm ?? 0) >= minLengthMm)
      .reduce((sum, part) => sum + part.amount + part.marginAmount, 0),
  }));
  const closing = offers.filter((offer) => contentOf(offer) !== null);
  const isClosed = wanted.every(({ minLengthMm }) =>
    closing.some((offer) => isLongEnough(offer, minLengthMm)),
  );
  const usedAmount = parts.reduce((sum, part) => sum + part.amount, 0);
  const leastUnitCount = Math.max(0, ...parts.map(({ missingConeCount = 0 }) => missingConeCount));
  return { ...base, kind: 'amount', wanted, usedAmount, leastUnitCount, offers: isClosed ? closing : [] };
}

/** What one unit holds, in the kind's unit; null for what is cut to a lay. */
export function contentOf({ unit }: Offer): number | null {
  switch (unit.kind) {
    case 'by length':
    case 'sheet':
      return null;
    case 'spool':
      return unit.threadM;
    case 'by mass':
      return unit.stepG;
    case 'pack':
      return unit.pieceCount;
    case 'each':
      return 1;
    default:
      return unit satisfies never;
  }
}

/** Only what is sold one by one says how long it is; a shorter one is of no use. */
export function isLongEnough({ unit }: Offer, minLengthMm: number): boolean {
  return unit.kind !== 'each' || unit.lengthMm === null || unit.lengthMm >= minLengthMm;
}

/** Units of one offer that close an amount demand alone; null where its pieces are too short. */
export function unitsAlone(demand: AmountDemand, offer: Offer): number | null {
  if (demand.wanted.some(({ minLengthMm }) => !isLongEnough(offer, minLengthMm))) return null;
  const content = contentOf(offer);
  const amount = demand.wanted[0]?.amount ?? 0;
  return content === null
    ? null
    : Math.max(leastUnits(offer), demand.leastUnitCount, stepsUp(Math.max(0, amount), content));
}

/** A float's dust above what units hold buys no further one. */
export const amountDust = 1e-6;
