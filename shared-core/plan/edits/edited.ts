/** What an edit of a plan gives back, and the words that the edits share. */
import { codeWords } from '../../wording/code-words.ts';
import { listed } from '../../wording/listed.ts';
import { say } from '../../wording/say.ts';
import type { Problem } from '../../measure/problem.ts';
import type { CoatPlan, Piece } from '../model/coat-plan.ts';
import { seamWalk } from '../geometry/seam-walk.ts';

export interface Edited {
  readonly plan: CoatPlan;
  /** What was done, in a sentence or two. */
  readonly said: string;
}

/** A length in the maker's units; millimetres where none is given. */
export type LengthText = (mm: number) => string;

export const inMm: LengthText = (mm) => say('edited.mm', { mm: Number(mm.toFixed(1)) });

/** A sentence when seams that fitted before no longer do. */
export function unfitted(before: CoatPlan, after: CoatPlan): string[] {
  const fitted = new Set(
    seamWalk(before)
      .filter((report) => report.fits)
      .map((report) => report.seamId),
  );
  const names = seamWalk(after)
    .filter((report) => !report.fits && fitted.has(report.seamId))
    .map((report) => report.label);
  if (names.length === 0) return [];
  return [
    names.length === 1
      ? say('edited.the-seam-no-longer-fits', { names: names[0] })
      : say('edited.the-seams-no-longer-fit', { names: listed(names) }),
  ];
}

export function withPiece(plan: CoatPlan, piece: Piece): CoatPlan {
  return { ...plan, pieces: plan.pieces.map((candidate) => (candidate.id === piece.id ? piece : candidate)) };
}

export function notInPlan(word: string, id: string): Problem {
  return {
    where: say('edited.the', { word: codeWords(word), id }),
    what: say('common.is-not-in-the-plan'),
    fix: say('edited.choose-a-of-the-plan', { word: codeWords(word) }),
  };
}
