/**
 * The quilting map: where the lines of every quilted piece lie. One origin carries from piece to piece over the
 * seams: the first piece starts at its hem; each next one is set so that its lines meet at the lowest point of the seam
 * that joins it to a piece already set (the hem end of a side seam, the underarm of an armhole).
 */
import { ringGrown } from '../geometry/grown.ts';
import { type Point, type Ring, ringBox } from '../geometry/ring.ts';
import { remembered } from '../geometry/remembered.ts';
import type { CoatPlan, Piece } from '../plan/model/coat-plan.ts';
import type { EdgePlace } from '../plan/model/outline.ts';
import { cutRing, edgePoints } from '../plan/geometry/outline-ring.ts';
import { faceSlot, quiltingOrder } from '../plan/model/quilting-order.ts';
import { type SeamReport, seamWalk } from '../plan/geometry/seam-walk.ts';
import {
  isPieceQuilted,
  lengthInsideMm,
  lineSpacingMm,
  type PieceLines,
  ringLines,
  wholeSeamRing,
} from './lines.ts';

export interface QuiltedPiece extends PieceLines {
  readonly pieceId: string;
  readonly name: string;
  readonly direction: 'across' | 'along';
  readonly spacingMm: number;
  /** Lowest x of the piece, where its hem is (lowest y for lines along). Offsets are measured from here. */
  readonly hemAtMm: number;
  /** Distance of each line from the hem, mm, rising. */
  readonly offsetsMm: readonly number[];
  /** How many copies the batch has. */
  readonly copyCount: number;
  /** What is really sewn of one copy: lines run on over allowance and spare to where it is cut. */
  readonly sewnMm: number;
}

/** Lines and channels of every quilted piece, in the order of the plan; empty when the plan is not quilted. */
export const quiltingMap = remembered((plan: CoatPlan): readonly QuiltedPiece[] => {
  const quilting = plan.quilting;
  if (quilting === null) return [];
  const origins = lineOrigins(plan);
  return plan.pieces
    .filter((piece) => isPieceQuilted(plan, piece))
    .map((piece) => {
      const direction = piece.quilted ?? 'across';
      const ring = wholeSeamRing(piece);
      const box = ringBox(ring);
      const spacingMm = lineSpacingMm(quilting, piece);
      const hemAtMm = direction === 'across' ? box.minX : box.minY;
      const originMm = origins.get(piece.id) ?? hemAtMm;
      const lines = ringLines(ring, direction, spacingMm, originMm);
      return {
        ...lines,
        pieceId: piece.id,
        name: piece.name,
        direction,
        spacingMm,
        hemAtMm,
        offsetsMm: lines.lines.map((line) => line.atMm - hemAtMm),
        copyCount: piece.cutCount * plan.coatCount,
        sewnMm: lengthInsideMm(
          sewnRing(plan, piece),
          direction,
          lines.lines.map(({ atMm }) => atMm),
        ),
      };
    });
});

/** The piece as it lies under the needle, finished size: its cut line, and what it is cut with to spare. */
function sewnRing(plan: CoatPlan, piece: Piece): Ring {
  const face = faceSlot(plan, piece);
  const order = face && quiltingOrder(plan, piece, face);
  return ringGrown(cutRing(piece.outline, piece.foldEdge), order?.kind === 'rough' ? order.marginMm : 0);
}

/** One edge of a seam with its points, lowest x first. */
export interface SeamSide {
  readonly piece: Piece;
  readonly edgeName: string;
  readonly points: readonly Point[];
}

/** Edges of quilted pieces that a seam joins, each from its lower end (least x) upwards. */
export function seamSides(plan: CoatPlan, seamId: string): readonly SeamSide[] {
  return plan.pieces
    .filter((piece) => isPieceQuilted(plan, piece))
    .flatMap((piece) =>
      piece.outline.edges.flatMap((edge, index) => {
        if (edge.seam !== seamId) return [];
        const points = edgePoints(piece.outline, index);
        const isUpward = points[0]!.x <= points[points.length - 1]!.x;
        return [{ piece, edgeName: edge.name, points: isUpward ? points : points.reverse() }];
      }),
    );
}

/** Pieces whose lines are set to each other: height of a point is its x less the piece's base. */
type Bases = Map<string, number>;

/**
 * Origin of the lines of each quilted piece, in its own frame. Lines along start at the middle of the piece.
 * Lines across: pieces are set to each other seam by seam, those that run most along the grain first.
 */
export const lineOrigins = remembered((plan: CoatPlan): ReadonlyMap<string, number> => {
  const origins = new Map<string, number>();
  const groups: Bases[] = [];
  for (const piece of plan.pieces.filter((candidate) => isPieceQuilted(plan, candidate))) {
    const box = ringBox(wholeSeamRing(piece));
    if (piece.quilted === 'along') origins.set(piece.id, (box.minY + box.maxY) / 2);
    else groups.push(new Map([[piece.id, box.minX]]));
  }
  for (const { first, second } of joinsOf(plan)) {
    for (;;) {
      const pair = partedPair(groups, first, second);
      if (!pair) break;
      const [kept, moved] = pair;
      const byMm = lowestMm(moved, second.concat(first)) - lowestMm(kept, first.concat(second));
      for (const [pieceId, baseMm] of moved) kept.set(pieceId, baseMm + byMm);
      groups.splice(groups.indexOf(moved), 1);
    }
  }
  // The first piece of a group starts at its hem.
  for (const group of groups) {
    const [firstId] = group.keys();
    const piece = plan.pieces.find((candidate) => candidate.id === firstId)!;
    const hemMm = ringBox(wholeSeamRing(piece)).minX - group.get(piece.id)!;
    for (const [pieceId, baseMm] of group) origins.set(pieceId, baseMm + hemMm);
  }
  return origins;
});

/** Two groups that the seam joins and that are not yet set to each other, the earlier first. */
function partedPair(
  groups: readonly Bases[],
  first: readonly SeamSide[],
  second: readonly SeamSide[],
): readonly [Bases, Bases] | null {
  for (const one of first) {
    for (const other of second) {
      const a = groups.find((group) => group.has(one.piece.id))!;
      const b = groups.find((group) => group.has(other.piece.id))!;
      if (a !== b) return groups.indexOf(a) < groups.indexOf(b) ? [a, b] : [b, a];
    }
  }
  return null;
}

/** Least height of those edges that lie on pieces of the group. */
function lowestMm(group: Bases, sides: readonly SeamSide[]): number {
  return Math.min(
    ...sides.flatMap((side) => {
      const baseMm = group.get(side.piece.id);
      return baseMm === undefined ? [] : [lowestOf(side).x - baseMm];
    }),
  );
}

/** The point of an edge that lies lowest on its piece. */
export function lowestOf(side: SeamSide): Point {
  return side.points.reduce((lowest, point) => (point.x < lowest.x ? point : lowest));
}

/** Seams over which lines across carry, with their quilted edges, those that run most along the grain first. */
function joinsOf(plan: CoatPlan): { first: readonly SeamSide[]; second: readonly SeamSide[] }[] {
  const joins = seamWalk(plan).flatMap((walked) => {
    if (walked.sides !== 'two') return [];
    const { first, second } = quiltedSides(plan, walked);
    const isAcross = (side: SeamSide) => side.piece.quilted === 'across';
    const join = { first: first.filter(isAcross), second: second.filter(isAcross) };
    const all = [...join.first, ...join.second];
    return join.first.length === 0 || join.second.length === 0
      ? []
      : [{ ...join, alongRatio: Math.min(...all.map((side) => alongRatio(side.points))) }];
  });
  return joins.sort((one, other) => other.alongRatio - one.alongRatio);
}

/** The quilted edges on both sides of a walked seam. */
export function quiltedSides(
  plan: CoatPlan,
  walked: SeamReport,
): { readonly first: readonly SeamSide[]; readonly second: readonly SeamSide[] } {
  const sides = seamSides(plan, walked.seamId);
  const among = (edges: readonly EdgePlace[]) =>
    sides.filter((side) =>
      edges.some((edge) => edge.pieceId === side.piece.id && edge.edge === side.edgeName),
    );
  return { first: among(walked.first), second: among(walked.second) };
}

/** Share of a chain's run that goes along the grain, 0 to 1. */
function alongRatio(points: readonly Point[]): number {
  const from = points[0]!;
  const to = points[points.length - 1]!;
  const spanMm = Math.hypot(to.x - from.x, to.y - from.y);
  return spanMm === 0 ? 0 : Math.abs(to.x - from.x) / spanMm;
}
