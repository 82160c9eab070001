/** Edits of the quilting: which way a piece is quilted, how far apart its lines are, and their stitches. */
import { ok, type Result, err } from '../../measure/problem.ts';
import type { CoatPlan } from '../model/coat-plan.ts';
import { type Edited, inMm, notInPlan, withPiece } from './edited.ts';
import { defaultOrder, defaultSpacingMm } from '../model/new-plan.ts';
import { quiltingSpacingProblem } from '../validation/quilting-problems.ts';

/** Lines run across the piece, along it, or there are none. */
export function setQuilted(
  plan: CoatPlan,
  pieceId: string,
  quilted: 'across' | 'along' | null,
): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  const said = quilted === null ? `${piece.name} is not quilted.` : `${piece.name} is quilted ${quilted}.`;
  return ok({ plan: withPiece(plan, { ...piece, quilted }), said });
}

/** How far apart the lines of one piece are; null: as the plan has it. */
export function setOwnSpacing(
  plan: CoatPlan,
  pieceId: string,
  spacingMm: number | null,
  text = inMm,
): Result<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return err(notInPlan('piece', pieceId));
  if (plan.quilting === null) return err(notQuilted(plan));
  const { quiltingSpacingMm: _, ...alike } = piece;
  if (spacingMm === null) {
    return ok({
      plan: withPiece(plan, alike),
      said: `Lines of ${piece.name} are ${text(plan.quilting.spacingMm)} apart, as in the whole coat.`,
    });
  }
  const problem = quiltingSpacingProblem(spacingMm, `Distance of the lines of ${piece.name}`);
  if (problem) return err(problem);
  return ok({
    plan: withPiece(plan, { ...piece, quiltingSpacingMm: spacingMm }),
    said: `Lines of ${piece.name} are now ${text(spacingMm)} apart.`,
  });
}

const minStitchMm = 0.5;
const maxStitchMm = 50;

/** Length of one stitch of the quilting lines. */
export function setStitchLength(plan: CoatPlan, stitchLengthMm: number, text = inMm): Result<Edited> {
  const { quilting } = plan;
  if (quilting === null) return err(notQuilted(plan));
  if (!(stitchLengthMm >= minStitchMm && stitchLengthMm <= maxStitchMm)) {
    return err({
      where: 'Stitch length of the quilting',
      what: Number.isFinite(stitchLengthMm) ? `is ${text(stitchLengthMm)}` : 'is not a number',
      fix: `Type a length from ${text(minStitchMm)} to ${text(maxStitchMm)}.`,
    });
  }
  return ok({
    plan: { ...plan, quilting: { ...quilting, stitchLengthMm } },
    said: `Quilting stitches are now ${text(stitchLengthMm)} long.`,
  });
}

/** Gives a plan that is not quilted its lines: 3 in apart, lockstitch, with its first thread. No piece has any yet. */
export function startQuilting(plan: CoatPlan, text = inMm): Result<Edited> {
  if (plan.quilting !== null) {
    return err({ where: plan.name, what: 'is quilted already', fix: 'Change its lines instead.' });
  }
  const threads = plan.slots.filter((slot) => slot.kind === 'thread');
  const thread = threads.find((slot) => slot.name.includes('quilt')) ?? threads[0];
  if (!thread) {
    return err({
      where: plan.name,
      what: 'has no slot for thread',
      fix: 'Give it one before it is quilted.',
    });
  }
  return ok({
    plan: {
      ...plan,
      quilting: {
        spacingMm: defaultSpacingMm,
        stitch: '301',
        stitchLengthMm: 3,
        threadSlotId: thread.id,
        order: defaultOrder,
      },
    },
    said: `Quilting lines are ${text(defaultSpacingMm)} apart. Choose the pieces that have them.`,
  });
}

function notQuilted(plan: CoatPlan) {
  return { where: plan.name, what: 'is not quilted', fix: 'Turn quilting on first.' };
}
