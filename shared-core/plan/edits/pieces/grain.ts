/** Turning the grain of a piece: it is cut across the cloth, or on the bias. */
import { codeWords } from '../../../wording/code-words.ts';
import { say } from '../../../wording/say.ts';
import { turnCosSin } from '../../../geometry/ring.ts';
import { ok, type Result, err } from '../../../measure/problem.ts';
import type { CoatPlan, Piece } from '../../model/coat-plan.ts';
import { type Edited, notInPlan, withPiece } from '../edited.ts';
import { outlineMoved } from '../../geometry/outline-moved.ts';

/**
 * The grain arrow turned by turnDeg counter-clockwise on the piece as it is drawn (45: bias, 90: across). Quilting lines stay where
 * they are on the piece for quarter turns; else they follow the grain.
 */
export function turnGrain(plan: CoatPlan, pieceId: string, turnDeg: number): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  if (!Number.isFinite(turnDeg) || turnDeg % 360 === 0 || Math.abs(turnDeg) > 360) {
    return err({
      where: say('grain.turn-of-the-grain-of', { pieceName: piece.name }),
      what: say('grain.is', { turnDeg }),
      fix: say('grain.type-a-number-of-degrees-such'),
    });
  }
  const turned = grainTurned(piece, turnDeg);
  const rest = ((turnDeg % 180) + 180) % 180;
  const how =
    rest === 0
      ? say('grain.it-is-cut-the-other-way')
      : rest === 90
        ? say('grain.what-ran-along-it-now-runs')
        : rest === 45 || rest === 135
          ? say('grain.it-is-cut-on-the-bias')
          : say('grain.it-is-cut-off-the-grain', { rest: Number(rest.toFixed(1)) });
  const lines =
    piece.quilted !== null && rest !== 0 && rest !== 90
      ? ` ${say('grain.its-quilting-lines-still-run-the', { quilted: codeWords(piece.quilted) })}`
      : '';
  return ok({
    plan: withPiece(plan, turned),
    said: say('grain.grain-of-turned-by', {
      pieceName: piece.name,
      turnDeg: Number(turnDeg.toFixed(1)),
      how,
      lines,
    }),
  });
}

/** The frame follows the grain, so the outline turns the other way. */
export function grainTurned(piece: Piece, turnDeg: number): Piece {
  const [cos, sin] = turnCosSin(-turnDeg);
  const outline = outlineMoved(piece.outline, ({ x, y }) => ({ x: x * cos - y * sin, y: x * sin + y * cos }));
  const isQuarter = ((turnDeg % 180) + 180) % 180 === 90;
  const quilted =
    piece.quilted === null || !isQuarter ? piece.quilted : piece.quilted === 'across' ? 'along' : 'across';
  return { ...piece, outline, quilted };
}
