/** What a line of the shopping list puts on the shelf if it was bought just so: where the maker's receipt begins. */
import { kindRecords } from '../stash/kinds.ts';
import type { Item, ItemId, Length, OfferId } from '../stash/stash.ts';
import type { ToBuyLine } from './to-buy.ts';

/** Lengths of one measure. */
export interface ReceiptLengths {
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly form: Length['form'];
  readonly count: number;
}

export interface Receipt {
  readonly itemId: ItemId;
  readonly offerId: OfferId;
  readonly supplier: string;
  /** Goods alone. */
  readonly priceMinor: number;
  /** For kinds that lie as lengths; null for others, and where the offer does not say how long a piece is. */
  readonly lengths: ReceiptLengths | null;
  /** In the kind's unit, for kinds that do not lie as lengths; null for those that do. */
  readonly amount: number | null;
}

/** Cloth comes as one piece of all that was bought; sheets come one by one. */
export function receiptOf(line: ToBuyLine, item: Item): Receipt {
  const { unit } = line.offer;
  const base = {
    itemId: line.itemId,
    offerId: line.offer.id,
    supplier: line.offer.supplier,
    priceMinor: line.priceMinor,
  };
  if (!kindRecords[item.kind].hasLengths) return { ...base, lengths: null, amount: line.boughtAmount };
  switch (unit.kind) {
    case 'by length': {
      const { widthMm } = unit;
      return {
        ...base,
        lengths: { widthMm, lengthMm: line.boughtAmount, form: 'cut', count: 1 },
        amount: null,
      };
    }
    case 'sheet': {
      const { widthMm, lengthMm } = unit;
      return { ...base, lengths: { widthMm, lengthMm, form: 'sheet', count: line.unitCount }, amount: null };
    }
    case 'spool':
    case 'by mass':
    case 'pack':
    case 'each':
      return { ...base, lengths: null, amount: null };
    default:
      return unit satisfies never;
  }
}
