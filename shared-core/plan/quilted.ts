/** Edits of the quilting: which way a piece is quilted, and what the maker measured on a swatch. */
import { found, type Outcome, refused } from '../measure/problem.ts';
import type { CoatPlan } from './coat-plan.ts';
import { type Edited, notInPlan, withPiece } from './edited.ts';

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

/** A square of cloth and batting before and after quilting, mm. */
export interface Swatch {
  readonly beforeAlongMm: number;
  readonly afterAlongMm: number;
  readonly beforeAcrossMm: number;
  readonly afterAcrossMm: number;
}

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
