/** The last step that every format shares: drawn pieces become the plan's, with the unit they were taken in. */
import type { Problem } from '../measure/problem.ts';
import { ringBox } from '../geometry/ring.ts';
import { cutRing } from '../plan/outline-ring.ts';
import type { DrawnPiece } from './drawn.ts';
import { settledPiece } from './found-piece.ts';
import {
  type FoundPattern,
  type FoundPiece,
  nothingFound,
  type ReadChoices,
  type ReadLimits,
  type ReadPattern,
} from './pattern.ts';

/** A pattern whose largest piece is smaller or larger than this was read in the wrong unit, as a rule; mm. */
const plausibleMm = { least: 120, most: 2200 };

export function settledPieces(
  drawn: readonly DrawnPiece[],
  problemsBefore: readonly Problem[],
  limits: ReadLimits,
  choices: ReadChoices,
  facts: Omit<FoundPattern, 'pieces' | 'mmPerUnit'>,
): ReadPattern {
  const where = 'The file';
  if (drawn.length === 0) {
    return nothingFound(
      ...(problemsBefore.length > 0
        ? problemsBefore
        : [{ where, what: 'draws no closed outline', mend: 'Save the pieces as closed lines.' }]),
    );
  }
  if (drawn.length > limits.pieceCount) {
    return nothingFound({
      where,
      what: `has ${drawn.length} pieces, more than the ${limits.pieceCount} that are read`,
      mend: 'Save fewer pieces or sizes in one file.',
    });
  }
  const mmPerUnit = choices.mmPerUnit ?? facts.statedMmPerUnit ?? 1;
  const settled = drawn.map((piece) => settledPiece(piece, mmPerUnit, choices));
  const pieces = settled.flatMap(({ piece }) => (piece ? [piece] : []));
  const problems = [...problemsBefore, ...settled.flatMap((each) => each.problems)];
  if (choices.mmPerUnit === null && facts.statedMmPerUnit === null)
    problems.push({
      where,
      what: 'does not say its unit; mm are taken',
      mend: 'Compare the overall size, and choose the unit.',
    });
  if (pieces.length > 0) {
    const largestMm = Math.max(...pieces.map((piece) => Math.max(...Object.values(foundExtentMm(piece)))));
    if (largestMm < plausibleMm.least || largestMm > plausibleMm.most) {
      const isSmall = largestMm < plausibleMm.least;
      problems.push({
        where: 'The largest piece',
        what: `would be ${Math.round(largestMm)} mm, ${isSmall ? 'small' : 'large'} for a coat`,
        mend: 'Check the unit.',
      });
    }
  }
  const notes = [...facts.notes, ...settled.flatMap((each) => each.notes)];
  return { found: { ...facts, mmPerUnit, pieces, notes }, problems };
}

/** Size of the piece at its cutting line, the half of one on the fold: along the grain and across it. */
export function foundExtentMm(piece: FoundPiece): { readonly alongMm: number; readonly acrossMm: number } {
  const box = ringBox(cutRing(piece.outline, null, 1));
  return { alongMm: box.maxX - box.minX, acrossMm: box.maxY - box.minY };
}
