/** What a supplier sells an item as, and for how much. */
import type { ItemId, OfferId } from './stash.ts';

/**
 * The smallest thing that can be bought:
 * by length: steps along the cloth at a width; sheet: a fixed rectangle; spool: metres of thread;
 * by mass: steps of g; pack: a number of pieces; each: one piece, with its length where it has one (zips).
 */
export type SellingUnit =
  | {
      readonly kind: 'by length';
      readonly stepMm: number;
      readonly widthMm: number;
      readonly leastMm: number;
    }
  | { readonly kind: 'sheet'; readonly widthMm: number; readonly lengthMm: number }
  | { readonly kind: 'spool'; readonly threadM: number }
  | { readonly kind: 'by mass'; readonly stepG: number; readonly leastG: number }
  | { readonly kind: 'pack'; readonly pieceCount: number }
  | { readonly kind: 'each'; readonly lengthMm: number | null };

export interface Offer {
  readonly id: OfferId;
  readonly itemId: ItemId;
  readonly supplier: string;
  readonly unit: SellingUnit;
  /** Price of one step, sheet, spool, pack or piece. */
  readonly priceMinor: number;
  /** ISO date of the price. */
  readonly pricedOn: string;
}
