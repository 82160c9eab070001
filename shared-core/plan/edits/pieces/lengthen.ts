/**
 * Lengthening: a line is drawn across the grain, and all that lies on its hem side is moved away from it.
 * Lines and curves that cross it are drawn anew between their moved points, as a maker trues a seam after spreading
 * the paper; so nothing is left with a corner, and edges of one shape keep one shape.
 */
import { say } from '../../../wording/say.ts';
import { chainPointAt } from '../../../geometry/chain.ts';
import { type Point, ringBox } from '../../../geometry/ring.ts';
import { ok, type Result, type Problem, err } from '../../../measure/problem.ts';
import type { CoatPlan, Notch, Piece } from '../../model/coat-plan.ts';
import { listed } from '../../../wording/listed.ts';
import { type Edited, inMm, type LengthText, notInPlan, unfitted } from '../edited.ts';
import type { Outline, Segment } from '../../model/outline.ts';
import { pieceProblems } from '../../validation/outline-problems.ts';
import { edgeIndexOf, edgeLengthMm, edgePoints, seamRing } from '../../geometry/outline-ring.ts';

/** A lengthening in one stroke is at most this. */
const maxLengtheningMm = 2000;

/** Where a piece is lengthened if nothing is said: this share of its length up from the hem. */
export const defaultLineRatio = 1 / 3;

/**
 * One piece longer by byMm (shorter below 0) at a line across its grain at x = atX of its own frame.
 * Says which seams cease to fit: the pieces it is sewn to are left as they are (see lengthenPieces).
 */
export function lengthenPiece(
  plan: CoatPlan,
  pieceId: string,
  byMm: number,
  atX?: number,
  text = inMm,
): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  const extent = grainExtent(piece);
  const aboveHemMm = atX === undefined ? undefined : atX - extent.hemX;
  return lengthenPieces(plan, [pieceId], byMm, aboveHemMm, text);
}

/**
 * Several pieces longer by byMm (shorter below 0), each at a line aboveHemMm above its own hem, so that the seams
 * between them still match. Without aboveHemMm the line lies at the lower third of the first.
 */
export function lengthenPieces(
  plan: CoatPlan,
  pieceIds: readonly string[],
  byMm: number,
  aboveHemMm?: number,
  text = inMm,
): Result<Edited> {
  const first = plan.pieces.find((piece) => piece.id === pieceIds[0]);
  const missing = pieceIds.filter((id) => !plan.pieces.some((piece) => piece.id === id));
  if (missing.length > 0) return err(...missing.map((id) => notInPlan('piece', id)));
  if (!first)
    return err({
      where: say('lengthen.lengthening'),
      what: say('lengthen.names-no-piece'),
      fix: say('lengthen.choose-a-piece'),
    });
  if (!Number.isFinite(byMm) || byMm === 0 || Math.abs(byMm) > maxLengtheningMm) {
    return err({
      where: say('lengthen.length-to-add'),
      what: say('lengthen.is-mm', { byMm }),
      fix: say('lengthen.type-a-length-up-to-mm', { maxLengtheningMm }),
    });
  }
  const extent = grainExtent(first);
  const upMm = aboveHemMm ?? (extent.topX - extent.hemX) * defaultLineRatio;
  const problems: Problem[] = [];
  const changed = new Map<string, Piece>();
  for (const piece of plan.pieces.filter((candidate) => pieceIds.includes(candidate.id))) {
    const { hemX, topX } = grainExtent(piece);
    const atX = hemX + upMm;
    if (!(atX > hemX && atX < topX)) {
      problems.push({
        where: say('lengthen.line-above-the-hem', { text: text(upMm) }),
        what: say('lengthen.does-not-cross', { pieceName: piece.name }),
        fix: say('lengthen.choose-one-between-the-hem-and', { text: text(topX - hemX) }),
      });
    } else if (byMm < 0 && hemX - byMm > atX) {
      problems.push({
        where: piece.name,
        what: say('lengthen.has-only-below-the-line', { text: text(upMm) }),
        fix: say('lengthen.shorten-by-less-or-choose-a'),
      });
    } else {
      const longer = lengthenedPiece(piece, byMm, atX);
      problems.push(...pieceProblems(longer));
      changed.set(piece.id, longer);
    }
  }
  if (problems.length > 0) return err(...problems);
  const edited = { ...plan, pieces: plan.pieces.map((piece) => changed.get(piece.id) ?? piece) };
  const names = pieceIds.map((id) => changed.get(id)!.name);
  const done = say('lengthen.shortened-by', {
    names: listed(names),
    ifByMm: byMm > 0 ? 'yes' : 'no',
    text: text(Math.abs(byMm)),
    linePlace: linePlace(upMm, extent.topX - extent.hemX, text),
  });
  return ok({ plan: edited, said: [done, ...unfitted(plan, edited)].join(' ') });
}

/** The piece and all that must be lengthened with it at that height: pieces joined by edges which cross the line. */
export function piecesSewnAcross(plan: CoatPlan, pieceId: string, aboveHemMm: number): string[] {
  const together = [pieceId];
  for (const id of together) {
    const piece = plan.pieces.find((candidate) => candidate.id === id);
    if (!piece) continue;
    for (const seamId of crossingSeams(piece, aboveHemMm)) {
      for (const other of plan.pieces) {
        if (!together.includes(other.id) && crossingSeams(other, aboveHemMm).includes(seamId))
          together.push(other.id);
      }
    }
  }
  return together;
}

function crossingSeams(piece: Piece, aboveHemMm: number): string[] {
  const atX = grainExtent(piece).hemX + aboveHemMm;
  return piece.outline.edges.flatMap((edge, index) =>
    edge.seam !== null && crossesLine(piece.outline, index, atX) ? [edge.seam] : [],
  );
}

function linePlace(upMm: number, lengthMm: number, text: LengthText): string {
  const share = upMm / lengthMm;
  const near = (ratio: number) => Math.abs(share - ratio) < 0.005;
  if (near(1 / 3)) return say('lengthen.at-the-lower-third');
  if (near(1 / 2)) return say('lengthen.at-the-middle');
  if (near(2 / 3)) return say('lengthen.at-the-upper-third');
  return say('lengthen.above-the-hem', { text: text(upMm) });
}

/** Extent of a piece along its grain, hem side first, at the seam line. */
export function grainExtent(piece: Piece): { readonly hemX: number; readonly topX: number } {
  const box = ringBox(seamRing(piece.outline));
  return { hemX: box.minX, topX: box.maxX };
}

/**
 * Where x goes. Lengthening opens a gap below atX; shortening takes the band just below atX out, and what was drawn
 * in the band comes to lie on the line: so shortening undoes a lengthening at the same line exactly.
 */
function movedX(x: number, byMm: number, atX: number): number {
  if (x >= atX) return x;
  return byMm >= 0 ? x - byMm : Math.min(atX, x - byMm);
}

/** The piece with all below atX moved by byMm towards the hem; below 0 it is shortened. Notches keep to their side. */
export function lengthenedPiece(piece: Piece, byMm: number, atX: number): Piece {
  const move = (point: Point): Point => ({ x: movedX(point.x, byMm, atX), y: point.y });
  const segment = (drawn: Segment): Segment =>
    drawn.kind === 'line'
      ? { kind: 'line', to: move(drawn.to) }
      : { kind: 'cubic', control1: move(drawn.control1), control2: move(drawn.control2), to: move(drawn.to) };
  const outline: Outline = {
    start: move(piece.outline.start),
    edges: piece.outline.edges.map((edge) => ({ ...edge, segments: edge.segments.map(segment) })),
  };
  return {
    ...piece,
    outline,
    notches: piece.notches.map((notch) => movedNotch(piece.outline, outline, notch, byMm, atX)),
  };
}

/** A notch keeps its distance from that end of its edge which moves as it does; the start where both do. */
function movedNotch(before: Outline, after: Outline, notch: Notch, byMm: number, atX: number): Notch {
  const index = edgeIndexOf(before, notch.edge);
  const shift = (x: number) => movedX(x, byMm, atX) - x;
  const points = edgePoints(before, index, 0.01);
  const own = shift(chainPointAt(points, notch.atMm).x);
  const fromStart = Math.abs(own - shift(points[0]!.x));
  const fromEnd = Math.abs(own - shift(points.at(-1)!.x));
  const lengthMm = edgeLengthMm(after, notch.edge);
  const atMm =
    fromStart <= fromEnd + 1e-9 ? notch.atMm : lengthMm - (edgeLengthMm(before, notch.edge) - notch.atMm);
  return { ...notch, atMm: Math.min(lengthMm, Math.max(0, atMm)) };
}

/** True when part of the edge lies on each side of the line at x. */
export function crossesLine(outline: Outline, edgeIndex: number, x: number): boolean {
  const points = edgePoints(outline, edgeIndex);
  return points.some((point) => point.x < x) && points.some((point) => point.x > x);
}
