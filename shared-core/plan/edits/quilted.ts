/** Edits of the quilting: which way a piece is quilted, how far apart its lines are, and their stitches. */
import { speaksOf } from '../../wording/words-in-names.ts';
import { codeWords } from '../../wording/code-words.ts';
import { say } from '../../wording/say.ts';
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
  const said =
    quilted === null
      ? say('quilted.is-not-quilted', { pieceName: piece.name })
      : say('quilted.is-quilted', { pieceName: piece.name, quilted: codeWords(quilted) });
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
      said: say('quilted.lines-of-are-apart-as-in', {
        pieceName: piece.name,
        text: text(plan.quilting.spacingMm),
      }),
    });
  }
  const problem = quiltingSpacingProblem(
    spacingMm,
    say('quilted.distance-of-the-lines-of', { pieceName: piece.name }),
  );
  if (problem) return err(problem);
  return ok({
    plan: withPiece(plan, { ...piece, quiltingSpacingMm: spacingMm }),
    said: say('quilted.lines-of-are-now-apart', { pieceName: piece.name, text: text(spacingMm) }),
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
      where: say('quilted.stitch-length-of-the-quilting'),
      what: Number.isFinite(stitchLengthMm)
        ? say('quilted.is', { text: text(stitchLengthMm) })
        : say('common.is-not-a-number'),
      fix: say('quilted.type-a-length-from-to', { text: text(minStitchMm), text2: text(maxStitchMm) }),
    });
  }
  return ok({
    plan: { ...plan, quilting: { ...quilting, stitchLengthMm } },
    said: say('quilted.quilting-stitches-are-now-long', { text: text(stitchLengthMm) }),
  });
}

/** Gives a plan that is not quilted its lines: 3 in apart, lockstitch, with its first thread. No piece has any yet. */
export function startQuilting(plan: CoatPlan, text = inMm): Result<Edited> {
  if (plan.quilting !== null) {
    return err({
      where: plan.name,
      what: say('quilted.is-quilted-already'),
      fix: say('quilted.change-its-lines-instead'),
    });
  }
  const threads = plan.slots.filter((slot) => slot.kind === 'thread');
  const thread = threads.find((slot) => speaksOf('quilting', slot.name)) ?? threads[0];
  if (!thread) {
    return err({
      where: plan.name,
      what: say('quilted.has-no-slot-for-thread'),
      fix: say('quilted.give-it-one-before-it-is'),
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
    said: say('quilted.quilting-lines-are-apart-choose-the', { text: text(defaultSpacingMm) }),
  });
}

function notQuilted(plan: CoatPlan) {
  return { where: plan.name, what: say('common.is-not-quilted'), fix: say('common.turn-quilting-on-first') };
}
