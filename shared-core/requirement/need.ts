/** What a slot of the plan needs: shapes to cut, or an amount. Cover, to-buy and cost read these alone. */
import type { Ring } from '../geometry/ring.ts';
import type { Basis } from '../measure/basis.ts';
import type { Margin } from '../plan/coat-plan.ts';
import type { Item } from '../stash/stash.ts';
import type { Counted } from '../stash/kinds.ts';

/** The stash item of each slot that has one. */
export type SlotItems = ReadonlyMap<string, Item>;

/** One shape of a slot, as it is cut: take-up, allowance and shrinkage inside, opened flat, grain along x. */
export interface ShapeToCut {
  /** Tells it from the shapes of other pieces and sizes; the lay knows it by that. */
  readonly shapeId: string;
  readonly pieceId: string;
  /** The size that the piece belongs to, whichever is at hand. */
  readonly size: string;
  readonly name: string;
  readonly ring: Ring;
  readonly areaMm2: number;
  /** For the whole batch. */
  readonly count: number;
  readonly mirroredCount: number;
  readonly turnsDeg: readonly number[];
}

export interface ShapesNeed {
  readonly kind: 'shapes';
  readonly slotId: string;
  readonly shapes: readonly ShapeToCut[];
  readonly areaMm2: number;
  readonly basis: readonly Basis[];
  /** Goes onto the length of the lay, once; in an amount it is a part already. Absent: none. */
  readonly margin?: Margin;
}

export interface NeedPart {
  readonly what: string;
  readonly amount: number;
}

export interface AmountNeed {
  readonly kind: 'amount';
  readonly slotId: string;
  readonly counted: Counted;
  /** For the whole batch, in the unit of `counted`: mm, g, m of thread or pieces; unrounded but for pieces. */
  readonly amount: number;
  readonly parts: readonly NeedPart[];
  /** Length each piece must have at least, mm (zips, cords); null where it does not matter. */
  readonly wantedLengthMm: number | null;
  readonly basis: readonly Basis[];
}

export type Need = ShapesNeed | AmountNeed;
