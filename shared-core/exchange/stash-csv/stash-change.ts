/** What a stash file would change, as plain data: shown before anything is written, and then written as it was shown. */
import type { ItemKind } from '../../stash/kinds.ts';
import type { Item, Length } from '../../stash/stash.ts';

export interface NewLength extends Length {
  readonly amountMilli: number;
}

export interface NewLot {
  readonly id: string;
  readonly itemId: string;
  readonly receivedOn: string;
  readonly supplier: string;
  readonly dyeLot: string;
  readonly priceMinor: number;
  /** Of the whole purchase, which the price is for. */
  readonly receivedMilli: number;
  /** What is on hand of it. */
  readonly amountMilli: number;
  /** Empty for kinds without lengths. */
  readonly lengths: readonly NewLength[];
  /** Why more is on hand than was received; '' where it is not. */
  readonly reason: string;
}

/** One change of what is known: the label of it, and both texts. */
export interface ChangedFact {
  readonly label: string;
  readonly from: string;
  readonly to: string;
}

interface Of {
  readonly line: number;
  readonly itemKind: ItemKind;
  readonly itemName: string;
}

export type StashChange =
  | (Of & { readonly kind: 'new item'; readonly item: Item })
  | (Of & { readonly kind: 'changed item'; readonly item: Item; readonly changed: readonly ChangedFact[] })
  | (Of & { readonly kind: 'new lot'; readonly lot: NewLot })
  | (Of & {
      readonly kind: 'correction';
      readonly lotId: string;
      readonly lengthId: string | null;
      readonly fromMilli: number;
      readonly toMilli: number;
      readonly reason: string;
    });
