/**
 * A piece's outline as it is drafted: a closed ring of named edges at the seam line. Each edge is a chain of straight
 * lines and cubic curves with its own seam allowance and the seam that joins it to another piece's edge.
 * Polygons are made from it (plan/geometry/outline-ring.ts) only where they are needed.
 * Frame of a piece: x along the grain (hem to neck for a body), y across it; mm; counter-clockwise.
 */
import type { Point } from '../../geometry/ring.ts';

export type Segment =
  | { readonly kind: 'line'; readonly to: Point }
  | { readonly kind: 'cubic'; readonly control1: Point; readonly control2: Point; readonly to: Point };

/** Stitch types of ISO 4915 that a seam may be sewn with, and stitching by hand. */
export type StitchType = '301' | '304' | '401' | '503' | '504' | '516' | '605' | 'hand';

export interface Edge {
  /** Unique in the piece, and what the maker reads: "side", "armhole", "hem". */
  readonly name: string;
  readonly segments: readonly Segment[];
  /** Added outside this edge when the piece is cut. 0 or more; 0 on a fold. */
  readonly allowanceMm: number;
  /** The seam this edge is sewn in, shared with the edge it meets; null for a fold or raw edge. */
  readonly seam: string | null;
}

export interface Outline {
  /** Where the first edge starts; the last edge ends here again. */
  readonly start: Point;
  readonly edges: readonly Edge[];
}

/** One edge of one piece. */
export interface EdgePlace {
  readonly pieceId: string;
  readonly edge: string;
}

/** A seam of the plan: which stitch joins its edges, and topstitching rows beside it. */
export interface Seam {
  readonly id: string;
  readonly label: string;
  readonly stitch: StitchType;
  /** The thread slot it is sewn from. */
  readonly threadSlotId: string;
  /** Stitch the raw edges are overcast with, if they are. */
  readonly overcast: '503' | '504' | null;
  readonly topstitchRowCount: number;
  /** Length of one stitch of the seam, mm; absent: the usual of its stitch. */
  readonly stitchLengthMm?: number;
  /**
   * The edges of its first side; its other edges are sewn to these. All of its edges: it is sewn by itself, as a hem
   * is, or laid on the middle of another piece. Absent: two edges meet each other, more are parted as evenly as can be.
   */
  readonly firstSide?: readonly EdgePlace[];
  /** How much longer the first side is meant to be, for one coat: a cap's ease, a pleat. Absent: both are equal. */
  readonly ease?: { readonly leastMm: number; readonly maxMm: number };
}

/** The point where an edge starts: where the one before it ended. */
export function edgeStart(outline: Outline, edgeIndex: number): Point {
  if (edgeIndex === 0) return outline.start;
  const previous = outline.edges[edgeIndex - 1];
  const last = previous?.segments.at(-1);
  if (!last) throw new RangeError(`edge ${edgeIndex} has none before it`);
  return last.to;
}
