/** How many of a piece one coat needs, and whether half of them are cut mirrored. */
import { say } from '../../../wording/say.ts';
import { ok, type Result, err } from '../../../measure/problem.ts';
import type { CoatPlan } from '../../model/coat-plan.ts';
import { type Edited, notInPlan, unfitted, withPiece } from '../edited.ts';
import { pieceProblems } from '../../validation/outline-problems.ts';

/** cutCount: the mirrored ones counted in; even where they are. */
export function setCutCount(
  plan: CoatPlan,
  pieceId: string,
  cutCount: number,
  isMirrored: boolean,
): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  const changed = { ...piece, cutCount, isMirrored };
  const [problem] = pieceProblems(changed);
  if (problem) return err(problem);
  const edited = withPiece(plan, changed);
  const how = isMirrored ? say('cut-count.half-of-them-mirrored') : '';
  return ok({
    plan: edited,
    said: [
      say('cut-count.of-for-one-coat', { cutCount, pieceName: piece.name, how }),
      ...unfitted(plan, edited),
    ].join(' '),
  });
}
