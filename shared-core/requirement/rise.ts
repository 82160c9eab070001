/** How far quilted cloth stands off the flat between two lines. */
import type { Basis } from '../measure/basis.ts';
import type { CoatPlan, Piece } from '../plan/coat-plan.ts';
import type { SlotItems } from './need.ts';

/** Share of the batting's loft that is left in the middle between two lines of quilting. */
const loftLeftRatio = 0.5;

/**
 * Rise of one face in mm: the maker's own measure, or half of the loft that quilting leaves of the piece's batting.
 * 0 for a piece without batting or whose batting has no loft written down.
 */
export function quiltedRise(plan: CoatPlan, piece: Piece, items: SlotItems): { riseMm: number; basis: Basis } {
  if (plan.quilting?.riseMm != null) {
    return { riseMm: plan.quilting.riseMm, basis: { kind: 'measured', how: 'rise between two lines as measured', source: '' } };
  }
  let loftMm = 0;
  for (const from of piece.cutFrom) {
    const item = items.get(from.slotId);
    if (item?.kind === 'batting') loftMm += (item.facts.loftMm ?? 0) * from.plyCount;
  }
  return {
    riseMm: (loftMm * loftLeftRatio) / 2,
    basis: {
      kind: 'rule of thumb',
      how: 'rise of a face: half of the loft that quilting leaves, taken as 50 % of the loft of the batting',
      source: 'common practice, no source',
    },
  };
}
