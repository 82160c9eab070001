/** Needs of one material that are washed at different times, brought to one measure. */
import { ringStretched } from '../../geometry/ring.ts';
import { growthForWash } from './first-wash.ts';
import type { ShapesNeed } from '../need.ts';

/** Whether all are cut washed, or all as the cloth comes off the roll. */
export function isWashedAlike(needs: readonly ShapesNeed[]): boolean {
  const first = needs[0]?.firstWash?.isBeforeCutting ?? false;
  return needs.every(({ firstWash }) => (firstWash?.isBeforeCutting ?? false) === first);
}

/** The need as if its pieces were cut from unwashed cloth, each larger by what the wash takes. */
export function asCutUnwashed(need: ShapesNeed): ShapesNeed {
  if (!need.firstWash?.isBeforeCutting) return need;
  const firstWash = { ...need.firstWash, isBeforeCutting: false };
  const { along, across } = growthForWash(firstWash);
  return {
    ...need,
    firstWash,
    areaMm2: need.areaMm2 * along * across,
    shapes: need.shapes.map((shape) => ({
      ...shape,
      ring: ringStretched(shape.ring, along, across),
      areaMm2: shape.areaMm2 * along * across,
      ...(shape.keptRing && { keptRing: ringStretched(shape.keptRing, along, across) }),
    })),
  };
}
