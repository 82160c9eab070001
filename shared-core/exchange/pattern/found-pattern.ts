/** The last step that every format shares: drawn pieces become the plan's, with the unit they were taken in. */
import { say } from '../../wording/say.ts';
import type { Problem } from '../../measure/problem.ts';
import type { DrawnPiece } from './drawn.ts';
import { settledPiece } from './found-piece.ts';
import {
  type FoundPattern,
  nothingFound,
  type ReadChoices,
  type ReadLimits,
  type ReadPattern,
} from './pattern.ts';
import { BeyondLimit, type ReadMeter } from '../read-meter.ts';

/** A pattern whose largest piece is smaller or larger than this was read in the wrong unit, as a rule; mm. */
const plausibleMm = { min: 120, max: 2200 };

/** How a file is read: within what, by what the maker says, and what it has taken so far. */
export interface Reading {
  readonly limits: ReadLimits;
  readonly choices: ReadChoices;
  readonly meter: ReadMeter;
}

/** mm for one unit of the file, as it is taken. */
export function unitOfFile(statedMmPerUnit: number | null, choices: ReadChoices): number {
  return choices.mmPerUnit ?? statedMmPerUnit ?? 1;
}

/** No coordinate of the drawn pieces lies beyond furthestMm. Throws BeyondLimit where they are too many, or too rough. */
export function settledPieces(
  drawn: readonly DrawnPiece[],
  problemsBefore: readonly Problem[],
  { limits, choices, meter }: Reading,
  facts: Omit<FoundPattern, 'pieces' | 'mmPerUnit'>,
): ReadPattern {
  const where = say('common.the-file');
  if (drawn.length === 0) {
    return nothingFound(
      ...(problemsBefore.length > 0
        ? problemsBefore
        : [
            {
              where,
              what: say('found-pattern.draws-no-closed-outline'),
              fix: say('found-pattern.save-the-pieces-as-closed-lines'),
            },
          ]),
    );
  }
  if (drawn.length > limits.pieceCount)
    throw new BeyondLimit(
      where,
      say('found-pattern.has-pieces-more-than-the', { drawn: drawn.length, pieceCount: limits.pieceCount }),
    );
  const mmPerUnit = unitOfFile(facts.statedMmPerUnit, choices);
  const settled = drawn.map((piece) => settledPiece(piece, mmPerUnit, choices, meter));
  const pieces = settled.flatMap(({ piece }) => (piece ? [piece] : []));
  const problems = [...problemsBefore, ...settled.flatMap((each) => each.problems)];
  if (choices.mmPerUnit === null && facts.statedMmPerUnit === null)
    problems.push({
      where,
      what: say('found-pattern.does-not-say-its-unit-mm'),
      fix: say('found-pattern.compare-the-overall-size-and-choose'),
    });
  if (pieces.length > 0) {
    const largestMm = Math.max(
      ...pieces.map(({ extentMm }) => Math.max(extentMm.alongMm, extentMm.acrossMm)),
    );
    if (largestMm < plausibleMm.min || largestMm > plausibleMm.max) {
      const isSmall = largestMm < plausibleMm.min;
      problems.push({
        where: say('found-pattern.the-largest-piece'),
        what: say('found-pattern.would-be-mm-large-for-a', {
          largestMm: Math.round(largestMm),
          ifSmall: isSmall ? 'yes' : 'no',
        }),
        fix: say('found-pattern.check-the-unit'),
      });
    }
  }
  const notes = [...facts.notes, ...settled.flatMap((each) => each.notes)];
  return { found: { ...facts, mmPerUnit, pieces, notes }, problems };
}
