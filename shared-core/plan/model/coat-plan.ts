/**
 * A coat plan: a style's pieces at a size, a slot for each material, how many coats, and the choices.
 * Plain readonly data; edits are functions that return a new plan (plan/edits/edit.ts).
 */
import type { ItemId, PlanId } from '../../stash/stash.ts';
import type { ItemKind } from '../../stash/kinds.ts';
import type { EdgePlace, Outline, Seam, StitchType } from './outline.ts';

/** The role that a material plays. `seen` roles want one dye lot; hidden ones may be cut from remnants. */
export interface Slot {
  readonly id: string;
  /** What the maker reads: "shell", "sleeve lining", "batting". */
  readonly name: string;
  readonly kind: ItemKind;
  /** The stash item that fills it, or null: still to be chosen. */
  readonly itemId: ItemId | null;
  readonly isSeen: boolean;
  /** Take-up of the slot's own, whatever the layers; 0.03 is 3 %. Null: by swatch or estimate of the layers. */
  readonly takeUpAlongRatio: number | null;
  readonly takeUpAcrossRatio: number | null;
  readonly isQuilted: boolean;
  /** For slots that are not cut: how much one coat takes, in the kind's unit; null: an estimate decides. */
  readonly amountPerCoat: number | null;
  /** For zips, cords and tapes: one piece of the fastening runs along these edges, less `shorterByMm`. */
  readonly alongEdges: readonly { readonly pieceId: string; readonly edge: string }[];
  readonly shorterByMm: number;
  /** True: along the edges of each copy of the pieces, left and right; absent: of one. */
  readonly alongEveryCopy?: boolean;
  /** Length over that of its edges, as elastic is cut shorter and stretched on: 0.8 is 80 %. Absent: as long as they. */
  readonly lengthRatio?: number;
  /** Held ready beyond what the coats take (plan/model/margin.ts); absent: none. */
  readonly margin?: Margin;
  /** Of its own, before that of the plan; absent: as the plan has it. */
  readonly quiltingOrder?: QuiltingOrder;
  /** Cloth that shrinks is cut before its first wash, its pieces larger. Absent: it is washed, then cut. */
  readonly isCutUnwashed?: true;
}

/** What comes first where a piece is quilted, cutting or quilting (plan/model/quilting-order.ts says which holds). */
export type QuiltingOrder =
  /** Cut to the outline, larger by the take-up, then quilted. */
  | { readonly kind: 'outline' }
  /** Cut with so much to spare all round, quilted, and recut to the outline. */
  | { readonly kind: 'rough'; readonly marginMm: number }
  | PanelOrder;

/** Cloth and padding are quilted as a panel, and the pieces cut from it. */
export interface PanelOrder {
  readonly kind: 'panel';
  /** So much of its edge, all round, is left unused, mm before quilting. */
  readonly marginMm: number;
  /** As wide as that before quilting; null: as the narrowest of its layers. */
  readonly widthMm: number | null;
  /** One panel for each coat, or one length for all of them. */
  readonly coats: 'each' | 'all';
}

/** A share of what a slot takes (0.05 is 5 %), or a length of its cloth. */
export type Margin =
  | { readonly kind: 'share'; readonly ratio: number }
  | { readonly kind: 'length'; readonly lengthMm: number };

/** A slot with nothing chosen yet. */
export function emptySlot(id: string, name: string, kind: ItemKind): Slot {
  return {
    id,
    name,
    kind,
    itemId: null,
    isSeen: kind === 'cloth',
    isQuilted: kind === 'batting',
    takeUpAlongRatio: null,
    takeUpAcrossRatio: null,
    amountPerCoat: null,
    alongEdges: [],
    shorterByMm: 0,
  };
}

/** From which slot a piece is cut, and in how many plies of it. */
export interface CutFrom {
  readonly slotId: string;
  readonly plyCount: number;
}

/** How a binding or a rib is cut for the edges that it is sewn to. */
export interface Band {
  readonly kind: 'straight binding' | 'bias binding' | 'rib';
  readonly edges: readonly EdgePlace[];
  /** True: one for each copy of the piece, as at cuffs; false: one along all of them, as at the hem. */
  readonly isEach: boolean;
  /** As cut, both turnings in it. */
  readonly cutWidthMm: number;
  /** Length over that of the edges: 1 for a binding, less for a rib. */
  readonly lengthRatio: number;
  /** Added to each band for its seam or for turning its ends in. */
  readonly endsMm: number;
  /** The longest strip that the cloth gives, joined to others on the diagonal; null: in one length. */
  readonly stripMm: number | null;
}

export type TurnRule = 'grain' | 'one way' | 'free';

export interface Notch {
  readonly edge: string;
  /** Along the edge from its start, mm. */
  readonly atMm: number;
}

export interface Piece {
  readonly id: string;
  readonly name: string;
  readonly outline: Outline;
  /** How many one coat needs in each ply, the mirrored ones counted in. A piece on the fold counts once. */
  readonly cutCount: number;
  /** True: half of them are cut mirrored (left and right). cutCount is then even. */
  readonly isMirrored: boolean;
  /** Name of the straight edge that lies on the fold, or null. The outline is the half. */
  readonly foldEdge: string | null;
  readonly turns: TurnRule;
  readonly notches: readonly Notch[];
  readonly cutFrom: readonly CutFrom[];
  /** Lines are quilted across or along the piece; null when it is not quilted. */
  readonly quilted: 'across' | 'along' | null;
  /** The piece is a binding or a rib and is made anew from the edges that it is sewn to (plan/edits/bands.ts); absent: it is not. */
  readonly band?: Band;
  /** Distance of the piece's own lines; absent: as the plan has it. */
  readonly quiltingSpacingMm?: number;
  /** Of its own, before that of slots and plan; absent: as they have it. */
  readonly quiltingOrder?: QuiltingOrder;
}

/** How the quilting is done. Spacing is between finished lines. */
export interface Quilting {
  readonly spacingMm: number;
  readonly stitch: StitchType;
  readonly stitchLengthMm: number;
  readonly threadSlotId: string;
  /** Absent: cut to the outline, then quilted. */
  readonly order?: QuiltingOrder;
  /** What swatches of so many layers showed, each number of layers once; absent: nothing was measured. */
  readonly measures?: readonly QuiltedMeasure[];
}

/** A swatch of one number of layers, in the place of estimates; null: not measured. */
export interface QuiltedMeasure {
  /** Layers of batting between the cloths; 0: loose fill, or none. */
  readonly battingPlyCount: number;
  /** How far apart the lines of the swatch are, finished. */
  readonly spacingMm: number;
  /** Rise of one face midway between two lines, as worn. */
  readonly riseMm: number | null;
  /** Extra to cut for each unit of finished length: at right angles to the lines, and along them. 0.03 is 3 %. */
  readonly overLinesRatio: number | null;
  readonly alongLinesRatio: number | null;
}

export interface CoatPlan {
  readonly id: PlanId;
  readonly name: string;
  readonly size: string;
  readonly coatCount: number;
  readonly slots: readonly Slot[];
  readonly pieces: readonly Piece[];
  readonly seams: readonly Seam[];
  readonly quilting: Quilting | null;
  /** Least distance between two pieces on the cloth. */
  readonly clearanceMm: number;
  /** Wastage on thread, 0.15 is 15 %. */
  readonly threadWastageRatio: number;
  /** Sewing time of one coat, for needles and optional labour. */
  readonly sewingMinutesPerCoat: number;
  readonly notes: string;
  /** All work on one coat that is paid for, as the maker estimates it. Absent: the sewing time. */
  readonly labourMinutesPerCoat?: number;
  /** Thread that quilted pieces are basted with round their edge, by hand. Absent: they are not. */
  readonly bastingThreadSlotId?: string;
  /** How full pieces are stuffed, as the maker asks for it. Absent: as is usual, or by the width of their channels. */
  readonly fillAim?: FillAim;
  /** Loose fill over what the chambers hold by their volume: 1.2 is 20 % over. Absent: the usual. */
  readonly overfillFactor?: number;
  /** Loose fill to have at hand beyond the filling list, 0.05 is 5 %. Absent: the usual. */
  readonly spareFillRatio?: number;
  /** How far the foot of the machine lifts, mm. Absent: as that of a usual domestic one. */
  readonly footLiftMm?: number;
  /** Whether it is for a child, as the maker said. Absent: guessed from name and size. */
  readonly isForChild?: boolean;
  /** What was measured on a finished coat of the size at hand. Absent: nothing. */
  readonly measured?: MeasuredCoat;
  /** Sizes beside the one at hand (plan/model/sizes.ts); absent: none. */
  readonly sizes?: readonly PlanSize[];
}

/** A loft midway between two lines, both faces together, or a weight of fill over the area of the pieces. */
export type FillAim =
  | { readonly kind: 'loft'; readonly loftMm: number }
  | { readonly kind: 'weight'; readonly gPerM2: number };

/** Measures of a finished coat that stand in the place of estimates; null: not measured. */
export interface MeasuredCoat {
  readonly massG: number | null;
  readonly packedCm3: number | null;
  readonly clo: number | null;
}

/** A size that waits beside the plan's own, cut from the same slots. */
export interface PlanSize {
  readonly size: string;
  /** 0: the size is kept and none is made. */
  readonly coatCount: number;
  readonly pieces: readonly Piece[];
  readonly measured?: MeasuredCoat;
}

export function slotById(plan: CoatPlan, slotId: string): Slot {
  const slot = plan.slots.find((candidate) => candidate.id === slotId);
  if (!slot) throw new RangeError(`plan ${plan.name} has no slot ${slotId}`);
  return slot;
}

export function pieceById(plan: CoatPlan, pieceId: string): Piece {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) throw new RangeError(`plan ${plan.name} has no piece ${pieceId}`);
  return piece;
}

/** What the price counts as work on one coat, minutes. */
export function labourMinutesPerCoat(plan: CoatPlan): number {
  return plan.labourMinutesPerCoat ?? plan.sewingMinutesPerCoat;
}
