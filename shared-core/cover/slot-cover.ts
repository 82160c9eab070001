/** What a cover says of a slot, and what it is asked with. */
import type { SlotLay } from '../lay/plan-lay.ts';
import type { CoatPlan } from '../plan/model/coat-plan.ts';
import type { Need } from '../requirement/need.ts';
import type { Trimmings } from '../requirement/cut/trimmings.ts';
import type { Cutting } from '../stash/cutting.ts';
import type { Offer } from '../stash/offer.ts';
import type { ItemId, ItemOnShelf, LengthId, LotId } from '../stash/stash.ts';

/** What is taken from one lot (and one length of it), in the kind's unit. */
export interface Use {
  readonly lotId: LotId;
  readonly lengthId: LengthId | null;
  /** What is cut or used up; 0 where a margin alone is held back. */
  readonly amount: number;
  /** For lengths: what is free of it before, mm; else the amount free of the lot. */
  readonly free: number;
  /** Index of this length in the cover lay's job, or null. */
  readonly layLength: number | null;
  /** Held back of it beside `amount` as the slot's margin for safety (plan/model/margin.ts); absent: nothing. */
  readonly marginAmount?: number;
}

/** What no length or lot had room for. */
export interface Shortage {
  /** What the coats lack, in the kind's unit; for cloth mm of `widthMm`. 0 where a margin alone is missing. */
  readonly amount: number;
  readonly widthMm: number | null;
  /** For zips and cords: the length each missing piece must have at least. */
  readonly wantedLengthMm: number | null;
  /** Of what the coats lack. */
  readonly missingPieceCount: number;
  /** Missing beside `amount` of the slot's margin for safety (plan/model/margin.ts); absent: nothing. */
  readonly marginAmount?: number;
  /** Spools of thread that are missing on the machine, whatever they hold; absent: none. */
  readonly missingConeCount?: number;
}

export type CoverState = 'covered' | 'covered with care' | 'short' | 'open';

export interface SlotCover {
  readonly slotId: string;
  readonly itemId: ItemId | null;
  readonly state: CoverState;
  readonly uses: readonly Use[];
  readonly shortage: Shortage | null;
  /** The lay on the stash's own lengths (and on cloth to be bought, last), for shapes slots with an item. */
  readonly lay: SlotLay | null;
  /** Why care is asked: two dye lots, a narrow margin. */
  readonly warnings: readonly string[];
  /** Remnants that carry whole pieces: which, and what lies on them. */
  readonly remnants: readonly {
    readonly lengthId: LengthId;
    readonly lengthMm: number;
    readonly pieceNames: readonly string[];
  }[];
  /** What is trimmed off quilted pieces of all that it lays; absent: nothing. */
  readonly trimmings?: Trimmings;
  /** Other items of the stash that are like it and have at least as much free. */
  readonly substitutes: readonly ItemId[];
}

export interface CoverInput {
  readonly plan: CoatPlan;
  readonly needs: readonly Need[];
  /** The lay of each shapes need on endless cloth of its item's width, by slot. */
  readonly lays: ReadonlyMap<string, SlotLay>;
  readonly shelf: readonly ItemOnShelf[];
  readonly offers: readonly Offer[];
  /** What was cut for the plan: the rest is cut from the same lots where they carry it. Absent: nothing. */
  readonly cuttings?: readonly Cutting[];
}
