/** How the pieces of a coat that is written as code are put down: in short, with the usual filled in. */
import type { CutFrom, Piece } from '../plan/model/coat-plan.ts';
import type { Outline } from '../plan/model/outline.ts';

/** Left and right. */
export const pair = { cutCount: 2, isMirrored: true } as const;
/** Half a piece, its centre back on the fold. */
export const onFold = { foldEdge: 'centre back' } as const;

/** Cut once, on its own grain, unless said otherwise. */
export function piece(
  id: string,
  name: string,
  outline: Outline,
  cutFrom: readonly CutFrom[],
  more: Partial<Piece> = {},
): Piece {
  return {
    id,
    name,
    outline,
    cutCount: 1,
    isMirrored: false,
    foldEdge: null,
    turns: 'grain',
    notches: [],
    cutFrom,
    quilted: null,
    ...more,
  };
}
