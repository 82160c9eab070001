/** How far quilted cloth stands off the flat between two lines. */
import { type Basis, measureIn } from '../measure/basis.ts';
import { type CoatPlan, type Piece, slotById } from '../plan/coat-plan.ts';
import { lineSpacingMm } from '../quilting/lines.ts';
import type { SlotItems } from './need.ts';

/** Share of the batting's loft that is left in the middle between two lines of quilting. */
const loftLeftRatio = 0.5;

/** Rise of a stuffed channel over its width, where the maker gave none: 1/2 in between lines 4 in apart. */
const stuffedRiseRatio = 1 / 8;

/** Rise of a stuffed piece without lines, such as a stuffed collar. */
const unquiltedStuffedRiseMm = 12.5;

/**
 * Rise of one face in mm: the maker's own measure; for a stuffed piece a share of the spacing; for a piece with
 * batting half of the loft that quilting leaves of it. 0 for a piece without padding or whose loft is not written down.
 */
export function quiltedRise(
  plan: CoatPlan,
  piece: Piece,
  items: SlotItems,
): { riseMm: number; basis: Basis } {
  if (plan.quilting?.riseMm != null) {
    return {
      riseMm: plan.quilting.riseMm,
      basis: { kind: 'measured', how: 'rise between two lines as measured', source: '' },
    };
  }
  const stuffed = piece.cutFrom.some(
    (from) => from.plyCount > 0 && slotById(plan, from.slotId).kind === 'fill',
  );
  if (stuffed) {
    return {
      riseMm:
        plan.quilting === null
          ? unquiltedStuffedRiseMm
          : lineSpacingMm(plan.quilting, piece) * stuffedRiseRatio,
      basis: {
        kind: 'rule of thumb',
        how: `rise of a face over a stuffed channel: 1/8 of the spacing of the lines (${measureIn('length', unquiltedStuffedRiseMm)} where there are none)`,
        source: 'common practice, no source',
      },
    };
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
