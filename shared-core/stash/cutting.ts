/**
 * A cutting as it was booked: for which coats, slot by slot what was cut, what it was taken from, what came back as
 * remnants, and what fell away. It is never changed; taking it back is a further cutting that names it.
 */
import type { ItemKind } from './kinds.ts';
import type { Shrinkage } from './shrinkage.ts';
import type { ItemId, LengthId, LotId, Movement, PlanId } from './stash.ts';

/** One shape as it was really cut, so that a later plan can be held against it. */
export interface CutShape {
  readonly pieceId: string;
  /** The size that it was cut in; sizes of a plan share the ids of their pieces. */
  readonly size: string;
  readonly name: string;
  /** x0, y0, x1, y1, ... in mm, as in geometry/ring.ts. */
  readonly ring: readonly number[];
  readonly count: number;
  readonly mirroredCount: number;
  /** It was cut from washed cloth, and shrinks no more. Absent: as the cloth came off the roll. */
  readonly isWashed?: true;
}

/** What of a slot's need a cutting met: pieces, or an amount in the kind's unit. */
export type Met =
  | { readonly kind: 'shapes'; readonly shapes: readonly CutShape[] }
  | { readonly kind: 'amount'; readonly amount: number };

/** A rectangle that goes back to the shelf; x and y say where it lay beside the pieces. */
export interface KeptRest {
  readonly x: number;
  readonly y: number;
  readonly lengthMm: number;
  readonly widthMm: number;
}

export interface KeptRemnant extends KeptRest {
  /** The length that it became. */
  readonly lengthId: LengthId;
}

/** What was taken of one lot, or of one length of it. */
export interface CutLine {
  readonly itemId: ItemId;
  /** As it was called then. */
  readonly itemName: string;
  readonly lotId: LotId;
  readonly lengthId: LengthId | null;
  /** As noted for the lot; may be empty. */
  readonly dyeLot: string;
  /** What left the shelf, in the kind's unit; kept remnants are still in it. */
  readonly amount: number;
  readonly kept: readonly KeptRemnant[];
  /** What it lost by being washed before it was cut: remnants are measured washed, the amount is not. Absent: it was not. */
  readonly washed?: Shrinkage;
  /** What the coats pay for: the amount less the remnants by their area, thousandths of the lot's unit. */
  readonly usedMilli: number;
  /** At what the lot cost: price x used / received, rounded. */
  readonly costMinor: number;
  /** For what is cut from lengths, as it lay on the shelf before any wash; null for what is used up by amount. */
  readonly area: {
    /** Of the pieces as they stay in the coats. */
    readonly pieceMm2: number;
    readonly keptMm2: number;
    /** What fell away, selvages included. */
    readonly wasteMm2: number;
    /** Null where the weight of the item is not known. */
    readonly wasteG: number | null;
    /** The share of costMinor that fell away. */
    readonly wasteMinor: number;
    /** Trimmed off quilted pieces when they were recut, with its weight and cost as above; absent: nothing. */
    readonly trimmedMm2?: number;
    readonly trimmedG?: number | null;
    readonly trimmedMinor?: number;
  } | null;
}

export interface CutSlot {
  readonly slotId: string;
  readonly slotName: string;
  readonly kind: ItemKind;
  readonly met: Met;
  readonly lines: readonly CutLine[];
}

/** How many coats of a size: by one cutting, or by several together. */
export interface CutCoats {
  readonly size: string;
  readonly coatCount: number;
}

export interface Cutting {
  readonly id: string;
  readonly planId: PlanId;
  /** The revision of the plan that was cut. */
  readonly revision: number;
  readonly at: string;
  readonly coats: readonly CutCoats[];
  readonly note: string;
  readonly slots: readonly CutSlot[];
  /** The cutting that this one takes back, or null; it then has no slots of its own. */
  readonly undoes: string | null;
  /** The cutting that took this one back, or null. */
  readonly undoneBy: string | null;
  /** Its rows of the ledger, in the order they were written. */
  readonly movements: readonly Movement[];
}

/** What one plan has set aside of a lot, or of a length of it, in the kind's unit. */
export interface SetAside {
  readonly lotId: LotId;
  readonly lengthId: LengthId | null;
  readonly amount: number;
}

/** Cuttings that still count: neither taken back nor a taking back. */
export function standing(cuttings: readonly Cutting[]): readonly Cutting[] {
  return cuttings.filter((cutting) => cutting.undoes === null && cutting.undoneBy === null);
}

/** The items that a slot was cut from, each once, in the order they were taken. */
export function cutItemNames(slot: Pick<CutSlot, 'lines'>): readonly string[] {
  return [...new Map(slot.lines.map(({ itemId, itemName }) => [itemId, itemName])).values()];
}

/** How many coats of each size are cut by all of these. */
export function coatsCut(cuttings: readonly Cutting[]): CutCoats[] {
  const bySize = new Map<string, number>();
  for (const { size, coatCount } of cuttings.flatMap((cutting) => cutting.coats)) {
    bySize.set(size, (bySize.get(size) ?? 0) + coatCount);
  }
  return [...bySize].map(([size, coatCount]) => ({ size, coatCount }));
}
