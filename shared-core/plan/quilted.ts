/** Edits of the quilting: which way a piece is quilted, and what the maker measured on a swatch. */
import { found, type Outcome, refused } from '../measure/problem.ts';
import type { CoatPlan } from './coat-plan.ts';
import { type Edited, inMm, notInPlan, withPiece } from './edited.ts';
import { usualSpacingMm } from './new-plan.ts';
import { quiltingSpacingProblem } from './plan-problems.ts';

/** Lines run across the piece, along it, or there are none. */
export function setQuilted(
  plan: CoatPlan,
  pieceId: string,
  quilted: 'across' | 'along' | null,
): Outcome<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return refused(notInPlan('piece', pieceId));
  const said = quilted === null ? `${piece.name} is not quilted.` : `${piece.name} is quilted ${quilted}.`;
  return found({ plan: withPiece(plan, { ...piece, quilted }), said });
}

/** How far apart the lines of one piece are; null: as the plan has it. */
export function setOwnSpacing(
  plan: CoatPlan,
  pieceId: string,
  spacingMm: number | null,
  text = inMm,
): Outcome<Edited> {
  const piece = plan.pieces.find((candidate) => candidate.id === pieceId);
  if (!piece) return refused(notInPlan('piece', pieceId));
  if (plan.quilting === null) return refused(notQuilted(plan));
  const { quiltingSpacingMm: _, ...alike } = piece;
  if (spacingMm === null) {
    return found({
      plan: withPiece(plan, alike),
      said: `Lines of ${piece.name} are ${text(plan.quilting.spacingMm)} apart, as in the whole coat.`,
    });
  }
  const problem = quiltingSpacingProblem(spacingMm, `Distance of the lines of ${piece.name}`);
  if (problem) return refused(problem);
  return found({
    plan: withPiece(plan, { ...piece, quiltingSpacingMm: spacingMm }),
    said: `Lines of ${piece.name} are now ${text(spacingMm)} apart.`,
  });
}

/** A square of cloth and batting before and after quilting, mm. */
export interface Swatch {
  readonly beforeAlongMm: number;
  readonly afterAlongMm: number;
  readonly beforeAcrossMm: number;
  readonly afterAcrossMm: number;
}

const leastStitchMm = 0.5;
const mostStitchMm = 50;

/** More than this is no take-up but a slip of the tape. */
const mostTakeUpRatio = 1;

/**
 * Puts take-up measured on a swatch in the place of the geometry, for every quilted slot: extra to cut = before / after - 1.
 * Null goes back to the geometry.
 */
export function setSwatch(plan: CoatPlan, swatch: Swatch | null): Outcome<Edited> {
  const along = swatch === null ? null : ratio('along', swatch.beforeAlongMm, swatch.afterAlongMm);
  const across = swatch === null ? null : ratio('across', swatch.beforeAcrossMm, swatch.afterAcrossMm);
  const problems = [along, across].flatMap((each) =>
    typeof each === 'object' && each !== null ? [each] : [],
  );
  if (problems.length > 0) return refused(...problems);
  return found({
    plan: {
      ...plan,
      slots: plan.slots.map((slot) =>
        slot.isQuilted
          ? { ...slot, takeUpAlongRatio: along as number | null, takeUpAcrossRatio: across as number | null }
          : slot,
      ),
    },
    said:
      swatch === null ? 'Take-up follows from the geometry again.' : 'Take-up is as the swatch measured it.',
  });
}

function ratio(way: string, beforeMm: number, afterMm: number) {
  const value = beforeMm / afterMm - 1;
  if (Number.isFinite(value) && value >= 0 && value <= mostTakeUpRatio) return value;
  return {
    where: `The swatch ${way} the grain`,
    what: value < 0 ? 'grew in quilting' : 'shrank by more than half',
    mend: 'Measure the square before and after quilting, and type both.',
  };
}

/** How far one face stands off the flat between two lines, as measured; null goes back to the loft of the batting. */
export function setRise(plan: CoatPlan, riseMm: number | null, text = inMm): Outcome<Edited> {
  const { quilting } = plan;
  if (quilting === null) return refused(notQuilted(plan));
  if (riseMm !== null && !(riseMm >= 0 && riseMm <= quilting.spacingMm / 2)) {
    return refused({
      where: 'Rise of the quilting',
      what: Number.isFinite(riseMm) ? `is ${text(riseMm)}` : 'is not a number',
      mend: `Type 0 to ${text(quilting.spacingMm / 2)}, half of what the lines are apart.`,
    });
  }
  return found({
    plan: { ...plan, quilting: { ...quilting, riseMm } },
    said:
      riseMm === null
        ? 'The rise between two lines follows from the batting again.'
        : `The cloth rises ${text(riseMm)} between two lines, as measured.`,
  });
}

/** Length of one stitch of the quilting lines. */
export function setStitchLength(plan: CoatPlan, stitchLengthMm: number, text = inMm): Outcome<Edited> {
  const { quilting } = plan;
  if (quilting === null) return refused(notQuilted(plan));
  if (!(stitchLengthMm >= leastStitchMm && stitchLengthMm <= mostStitchMm)) {
    return refused({
      where: 'Stitch length of the quilting',
      what: Number.isFinite(stitchLengthMm) ? `is ${text(stitchLengthMm)}` : 'is not a number',
      mend: `Type a length from ${text(leastStitchMm)} to ${text(mostStitchMm)}.`,
    });
  }
  return found({
    plan: { ...plan, quilting: { ...quilting, stitchLengthMm } },
    said: `Quilting stitches are now ${text(stitchLengthMm)} long.`,
  });
}

/** Gives a plan that is not quilted its lines: 3 in apart, lockstitch, with its first thread. No piece has any yet. */
export function startQuilting(plan: CoatPlan, text = inMm): Outcome<Edited> {
  if (plan.quilting !== null) {
    return refused({ where: plan.name, what: 'is quilted already', mend: 'Change its lines instead.' });
  }
  const threads = plan.slots.filter((slot) => slot.kind === 'thread');
  const thread = threads.find((slot) => slot.name.includes('quilt')) ?? threads[0];
  if (!thread) {
    return refused({
      where: plan.name,
      what: 'has no slot for thread',
      mend: 'Give it one before it is quilted.',
    });
  }
  return found({
    plan: {
      ...plan,
      quilting: {
        spacingMm: usualSpacingMm,
        stitch: '301',
        stitchLengthMm: 3,
        threadSlotId: thread.id,
        riseMm: null,
      },
    },
    said: `Quilting lines are ${text(usualSpacingMm)} apart. Choose the pieces that have them.`,
  });
}

function notQuilted(plan: CoatPlan) {
  return { where: plan.name, what: 'is not quilted', mend: 'Turn quilting on first.' };
}
