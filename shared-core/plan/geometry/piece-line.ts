/**
 * A line across or along the grain of a piece, said as a maker says it: across, so far above the hem; along, so far
 * from the fold, or from the right side as the piece is drawn (its least y) where there is no fold.
 */
import { say } from '../../wording/say.ts';
import { ringBox } from '../../geometry/ring.ts';
import type { Piece } from '../model/coat-plan.ts';
import type { LengthText } from '../edits/edited.ts';
import type { StraightLine } from './outline-cut.ts';
import { edgeIndexOf, edgePoints, seamRing } from './outline-ring.ts';

export type LineDirection = StraightLine['direction'];

/** How far the piece reaches at right angles to the line: the line lies between 0 and this. */
export function lineRoomMm(piece: Piece, direction: LineDirection): number {
  const box = ringBox(seamRing(piece.outline));
  return direction === 'across' ? box.maxX - box.minX : box.maxY - box.minY;
}

/** True where distances along the breadth are measured from the greatest y: the fold lies there. */
export function isMeasuredFromHighY(piece: Piece): boolean {
  if (piece.foldEdge === null) return false;
  const box = ringBox(seamRing(piece.outline));
  const fold = edgePoints(piece.outline, edgeIndexOf(piece.outline, piece.foldEdge));
  const middleY = (fold[0]!.y + fold.at(-1)!.y) / 2;
  return middleY > (box.minY + box.maxY) / 2;
}

/** The line in the piece's own frame. */
export function lineAt(piece: Piece, direction: LineDirection, distanceMm: number): StraightLine {
  const box = ringBox(seamRing(piece.outline));
  if (direction === 'across') return { direction, atMm: box.minX + distanceMm };
  return { direction, atMm: isMeasuredFromHighY(piece) ? box.maxY - distanceMm : box.minY + distanceMm };
}

/** From where a line along the grain is measured. */
export function sideWord(piece: Piece): string {
  return piece.foldEdge === null ? say('piece-line.its-right-side') : say('piece-line.the-fold');
}

/** "210 mm above the hem", "85 mm from the fold". */
export function linePlaceWords(
  piece: Piece,
  direction: LineDirection,
  distanceMm: number,
  text: LengthText,
): string {
  return direction === 'across'
    ? say('piece-line.above-the-hem', { text: text(distanceMm) })
    : say('piece-line.from', { text: text(distanceMm), sideWord: sideWord(piece) });
}

/** Why the line does not cross the piece, or null. */
export function lineProblem(piece: Piece, direction: LineDirection, distanceMm: number, text: LengthText) {
  const roomMm = lineRoomMm(piece, direction);
  if (distanceMm > 0 && distanceMm < roomMm) return null;
  const from = direction === 'across' ? say('piece-line.the-hem') : sideWord(piece);
  return {
    where: Number.isFinite(distanceMm)
      ? say('piece-line.the-line', { linePlaceWords: linePlaceWords(piece, direction, distanceMm, text) })
      : say('piece-line.the-place-of-the-line'),
    what: Number.isFinite(distanceMm)
      ? say('piece-line.does-not-cross', { pieceName: piece.name })
      : say('common.is-not-a-number'),
    fix: say('piece-line.choose-one-up-to-from', { text: text(roomMm), from }),
  };
}
