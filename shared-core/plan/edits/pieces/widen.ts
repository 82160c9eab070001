/**
 * Widening: a line is drawn along the grain, and all on its far side from the fold (or from the right side as drawn)
 * is moved away. It is lengthening with the axes changed, so curves that cross the line are trued in the same way.
 */
import { say } from '../../../wording/say.ts';
import { ok, type Result, type Problem, err } from '../../../measure/problem.ts';
import type { CoatPlan, Piece } from '../../model/coat-plan.ts';
import { listed } from '../../../wording/listed.ts';
import { type Edited, inMm, notInPlan, unfitted } from '../edited.ts';
import { crossesLine, lengthenedPiece } from './lengthen.ts';
import { outlineMoved, swapAxes } from '../../geometry/outline-moved.ts';
import { pieceProblems } from '../../validation/outline-problems.ts';
import { lineAt, linePlaceWords, lineProblem, lineRoomMm } from '../../geometry/piece-line.ts';

/** A widening in one stroke is at most this. */
const maxWideningMm = 1000;

/**
 * Pieces wider by byMm (narrower below 0), each at a line fromSideMm from its own fold or right side. Without it the
 * line lies in the middle of the first. A piece on the fold is widened on both sides of it, by twice as much in all.
 */
export function widenPieces(
  plan: CoatPlan,
  pieceIds: readonly string[],
  byMm: number,
  fromSideMm?: number,
  text = inMm,
): Result<Edited> {
  const missing = pieceIds.filter((id) => !plan.pieces.some((piece) => piece.id === id));
  if (missing.length > 0) return err(...missing.map((id) => notInPlan('piece', id)));
  const pieces = plan.pieces.filter((piece) => pieceIds.includes(piece.id));
  const first = pieces.find((piece) => piece.id === pieceIds[0]);
  if (!first)
    return err({
      where: say('widen.widening'),
      what: say('widen.names-no-piece'),
      fix: say('widen.choose-a-piece'),
    });
  if (!Number.isFinite(byMm) || byMm === 0 || Math.abs(byMm) > maxWideningMm) {
    return err({
      where: say('widen.width-to-add'),
      what: say('widen.is-mm', { byMm }),
      fix: say('widen.type-a-length-up-to-mm', { maxWideningMm }),
    });
  }
  const atMm = fromSideMm ?? lineRoomMm(first, 'along') / 2;
  const problems: Problem[] = [];
  const changed = new Map<string, Piece>();
  for (const piece of pieces) {
    const outside = lineProblem(piece, 'along', atMm, text);
    const beyondMm = lineRoomMm(piece, 'along') - atMm;
    if (outside) problems.push(outside);
    else if (byMm < 0 && -byMm >= beyondMm) {
      problems.push({
        where: piece.name,
        what: say('widen.has-only-beyond-the-line', { text: text(beyondMm) }),
        fix: say('widen.narrow-it-by-less-or-choose'),
      });
    } else {
      const wider = widenedPiece(piece, byMm, atMm);
      problems.push(...pieceProblems(wider));
      changed.set(piece.id, wider);
    }
  }
  if (problems.length > 0) return err(...problems);
  const edited = { ...plan, pieces: plan.pieces.map((piece) => changed.get(piece.id) ?? piece) };
  const names = pieces.map((piece) => piece.name);
  const done = say('widen.narrowed-by', {
    names: listed(names),
    ifByMm: byMm > 0 ? 'yes' : 'no',
    text: text(Math.abs(byMm)),
    linePlaceWords: linePlaceWords(first, 'along', atMm, text),
  });
  const folded = pieces.filter((piece) => piece.foldEdge !== null).map((piece) => piece.name);
  const twice =
    folded.length === 0
      ? []
      : [say('widen.on-the-fold-in-all', { folded: listed(folded), text: text(Math.abs(byMm) * 2) })];
  return ok({ plan: edited, said: [done, ...twice, ...unfitted(plan, edited)].join(' ') });
}

/** Pieces sewn to this one along edges that a line along the grain crosses: a shoulder, a hem facing. */
export function piecesSewnAlong(plan: CoatPlan, pieceId: string, fromSideMm: number): string[] {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return [];
  const { atMm } = lineAt(piece, 'along', fromSideMm);
  const swapped = outlineMoved(piece.outline, swapAxes);
  const seams = piece.outline.edges.flatMap((edge, index) =>
    edge.seam !== null && crossesLine(swapped, index, atMm) ? [edge.seam] : [],
  );
  return plan.pieces
    .filter(
      (other) =>
        other.id !== pieceId &&
        other.outline.edges.some((edge) => edge.seam !== null && seams.includes(edge.seam)),
    )
    .map((other) => other.id);
}

/** The piece with all beyond the line moved by byMm; below 0 it is narrowed. Notches keep to their side. */
export function widenedPiece(piece: Piece, byMm: number, fromSideMm: number): Piece {
  const { atMm } = lineAt(piece, 'along', fromSideMm);
  // Lengthening moves what lies below its line: the frame is turned so that the far side does.
  const isFarHigh = atMm > lineAt(piece, 'along', 0).atMm;
  const turn = (point: { x: number; y: number }) => ({ x: isFarHigh ? -point.y : point.y, y: point.x });
  const back = (point: { x: number; y: number }) => ({ x: point.y, y: isFarHigh ? -point.x : point.x });
  const longer = lengthenedPiece(
    { ...piece, outline: outlineMoved(piece.outline, turn) },
    byMm,
    isFarHigh ? -atMm : atMm,
  );
  return { ...longer, outline: outlineMoved(longer.outline, back) };
}
