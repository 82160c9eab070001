/**
 * The quilting map: where the lines of every quilted piece lie. One origin carries from piece to piece over the
 * seams: the first piece starts at its hem; each next one is set so that its lines meet at the lower end of the seam
 * that joins it to a piece already set (the hem end of a side seam, the underarm of an armhole).
 */
import { ringBox, type Point } from '../geometry/ring.ts';
import type { CoatPlan, Piece } from '../plan/coat-plan.ts';
import { edgePoints } from '../plan/outline-ring.ts';
import { isPieceQuilted, type PieceLines, ringLines, wholeSeamRing } from './lines.ts';

export interface QuiltedPiece extends PieceLines {
  readonly pieceId: string;
  readonly name: string;
  readonly direction: 'across' | 'along';
  /** Lowest x of the piece, where its hem is (lowest y for lines along). Offsets are measured from here. */
  readonly hemAtMm: number;
  /** Distance of each line from the hem, mm, rising. */
  readonly offsetsMm: readonly number[];
  /** How many copies the batch has. */
  readonly copyCount: number;
}

/** Lines and channels of every quilted piece, in the order of the plan; empty when the plan is not quilted. */
export function quiltingMap(plan: CoatPlan): readonly QuiltedPiece[] {
  const quilting = plan.quilting;
  if (quilting === null) return [];
  const origins = lineOrigins(plan);
  return plan.pieces
    .filter((piece) => isPieceQuilted(plan, piece))
    .map((piece) => {
      const direction = piece.quilted ?? 'across';
      const ring = wholeSeamRing(piece);
      const box = ringBox(ring);
      const hemAtMm = direction === 'across' ? box.minX : box.minY;
      const lines = ringLines(ring, direction, quilting.spacingMm, origins.get(piece.id) ?? hemAtMm);
      return {
        ...lines,
        pieceId: piece.id,
        name: piece.name,
        direction,
        hemAtMm,
        offsetsMm: lines.lines.map((line) => line.atMm - hemAtMm),
        copyCount: piece.cutCount * plan.coatCount,
      };
    });
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

/** Origin of the lines of each quilted piece, in its own frame. Lines along start at the fold, else at the middle. */
export function lineOrigins(plan: CoatPlan): ReadonlyMap<string, number> {
  const origins = new Map<string, number>();
  const waiting: Piece[] = [];
  for (const piece of plan.pieces) {
    if (!isPieceQuilted(plan, piece)) continue;
    if (piece.quilted === 'along') {
      const box = ringBox(wholeSeamRing(piece));
      origins.set(piece.id, (box.minY + box.maxY) / 2);
    } else {
      waiting.push(piece);
    }
  }
  const joins = joinsOf(plan);
  while (waiting.length > 0) {
    const join = joins.find(({ a, b }) => origins.has(a.piece.id) !== origins.has(b.piece.id));
    if (!join) {
      const piece = waiting.shift()!;
      origins.set(piece.id, ringBox(wholeSeamRing(piece)).minX);
      continue;
    }
    const [set, next] = origins.has(join.a.piece.id) ? [join.a, join.b] : [join.b, join.a];
    origins.set(next.piece.id, origins.get(set.piece.id)! + next.points[0]!.x - set.points[0]!.x);
    waiting.splice(waiting.indexOf(next.piece), 1);
  }
  return origins;
}

/** Pairs of edges across which an origin may carry, those that run most along the grain first. */
function joinsOf(plan: CoatPlan): { a: SeamSide; b: SeamSide }[] {
  const joins: { a: SeamSide; b: SeamSide; alongRatio: number }[] = [];
  for (const seam of plan.seams) {
    const sides = seamSides(plan, seam.id).filter((side) => side.piece.quilted === 'across');
    for (const [index, a] of sides.entries()) {
      for (const b of sides.slice(index + 1)) {
        if (a.piece.id === b.piece.id) continue;
        joins.push({ a, b, alongRatio: Math.min(alongRatio(a.points), alongRatio(b.points)) });
      }
    }
  }
  return joins.sort((one, other) => other.alongRatio - one.alongRatio);
}

/** Share of a chain's run that goes along the grain, 0 to 1. */
function alongRatio(points: readonly Point[]): number {
  const from = points[0]!;
  const to = points[points.length - 1]!;
  const spanMm = Math.hypot(to.x - from.x, to.y - from.y);
  return spanMm === 0 ? 0 : Math.abs(to.x - from.x) / spanMm;
}
