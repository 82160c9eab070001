/** What a slot of the plan needs: shapes to cut, or an amount. Cover, to-buy and cost read these alone. */
import type { Ring } from '../geometry/ring.ts';
import type { Basis } from '../measure/basis.ts';
import type { Margin, PanelOrder } from '../plan/model/coat-plan.ts';
import type { TakeUp } from '../quilting/take-up.ts';
import type { Item } from '../stash/stash.ts';
import type { Counted } from '../stash/kinds.ts';
import type { Washed } from './cut/first-wash.ts';

/** The stash item of each slot that has one. */
export type SlotItems = ReadonlyMap<string, Item>;

interface NeedBase {
  readonly slotId: string;
  readonly basis: readonly Basis[];
  /** Stands beside the need and is not in it (plan/model/margin.ts). Absent: none. */
  readonly margin?: Margin;
}

/** One shape of a slot, as it is cut: take-up, allowance, any wash to come and spare inside, opened flat, grain along x. */
export interface ShapeToCut {
  /** Tells it from the shapes of other pieces and sizes; the lay knows it by that. */
  readonly shapeId: string;
  readonly pieceId: string;
  /** The size that the piece belongs to, whichever is at hand. */
  readonly size: string;
  readonly name: string;
  readonly ring: Ring;
  readonly areaMm2: number;
  /** What is left of it when it is recut to the outline after quilting, in the same frame; absent: all of it. */
  readonly keptRing?: Ring;
  /** Where it is cut from a quilted panel, and not from the cloth itself; absent: from the cloth. */
  readonly panel?: OnPanel;
  /** The pieces that one such panel gives; absent: it is no panel. */
  readonly carries?: readonly CarriedShape[];
  /** For the whole batch. */
  readonly count: number;
  readonly mirroredCount: number;
  readonly turnsDeg: readonly number[];
}

/** How a piece lies on a quilted panel. */
export interface OnPanel {
  /** Pieces of one key are quilted alike and share a panel. */
  readonly key: string;
  readonly order: PanelOrder;
  readonly direction: 'across' | 'along';
  readonly spacingMm: number;
  /** The piece as it is cut from the quilted panel, and a line in the same frame: x of lines across, y of lines along. */
  readonly quiltedRing: Ring;
  readonly lineAtMm: number;
  readonly turnsDeg: readonly number[];
  /** What quilting takes from the layer, plies of it in the panel, and whether the panel is marked on it. */
  readonly takeUp: TakeUp;
  readonly plyCount: number;
  readonly isFace: boolean;
  /** Copies in one coat. */
  readonly oneCoat: { readonly count: number; readonly mirroredCount: number };
}

/** Copies of a piece in one ply of one panel. */
export interface CarriedShape {
  readonly shape: ShapeToCut;
  readonly count: number;
  readonly mirroredCount: number;
}

/** Where its cloth is washed before it is cut, shapes and areas are those of washed cloth. */
export interface ShapesNeed extends NeedBase, Washed {
  readonly kind: 'shapes';
  readonly shapes: readonly ShapeToCut[];
  readonly areaMm2: number;
}

export interface NeedPart {
  readonly what: string;
  readonly amount: number;
}

export interface AmountNeed extends NeedBase {
  readonly kind: 'amount';
  readonly counted: Counted;
  /** For the whole batch, in the unit of `counted`: mm, g, m of thread or pieces; unrounded but for pieces. */
  readonly amount: number;
  readonly parts: readonly NeedPart[];
  /** Length each piece must have at least, mm (zips, cords); null where it does not matter. */
  readonly wantedLengthMm: number | null;
  /** The amount is the least that it can be. Absent: it is as likely too high. */
  readonly isFloor?: boolean;
  /** Thread: spools or cones that stand on one machine at once. Absent: one, or none. */
  readonly coneCount?: number;
}

export type Need = ShapesNeed | AmountNeed;
