/** One caution of the trade: what it says, of what, and who decides. */

export type CautionKind =
  | 'blade'
  | 'hot iron'
  | 'down dust'
  | 'drawstrings, US'
  | 'drawstrings, EU'
  | 'flammability'
  | 'filled goods';

export interface Caution {
  readonly kind: CautionKind;
  /** Slots that call for it; empty where it is the whole coat. */
  readonly slotIds: readonly string[];
  readonly says: string;
  /** Who decides. */
  readonly defersTo: string;
  readonly source: string;
}
