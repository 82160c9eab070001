/** How far quilted cloth stands off the flat between two lines. */
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import type { CoatPlan, Piece } from '../../plan/model/coat-plan.ts';
import { battingPlyCount, measureOf, nearestRise } from '../../plan/model/quilted-layers.ts';
import { isStuffed } from '../../plan/model/stuffing.ts';
import { isPieceQuilted } from '../../quilting/lines.ts';
import type { SlotItems } from '../need.ts';
import { wornLoftRatio } from '../finished/padding.ts';
import { stuffedRise } from './stuffed-rise.ts';

/**
 * Share of the batting's loft that is left midway between two lines of quilting. Over the arc of its cloth that is half
 * of the loft on the mean, as it is worn everywhere else (requirement/finished/padding.ts).
 */
const loftLeftRatio = 1.5 * wornLoftRatio;

/** The maker's own measure of a quilted piece of so many layers; null: not measured, or it has no lines. */
export function measuredRiseMm(plan: CoatPlan, piece: Piece): number | null {
  return isPieceQuilted(plan, piece) ? (measureOf(plan, battingPlyCount(plan, piece))?.riseMm ?? null) : null;
}

/**
 * Rise of one face in mm: the maker's own measure of as many layers; for a stuffed piece what its fill
 * lofts to; for a
 * piece with batting the measure of other layers in proportion, else half of the loft that is left midway.
 * 0 for a piece without padding or whose loft is not written down.
 */
export function quiltedRise(
  plan: CoatPlan,
  piece: Piece,
  items: SlotItems,
): { riseMm: number; basis: Basis } {
  const measuredMm = measuredRiseMm(plan, piece);
  if (measuredMm !== null) {
    return {
      riseMm: measuredMm,
      basis: { kind: 'measured', how: say('rise.rise-between-two-lines-as-measured'), source: '' },
    };
  }
  if (isStuffed(plan, piece)) return stuffedRise(plan, piece, items);
  const plyCount = battingPlyCount(plan, piece);
  const nearest = plyCount > 0 && isPieceQuilted(plan, piece) ? nearestRise(plan, plyCount) : null;
  if (nearest) {
    return {
      riseMm: (nearest.riseMm * plyCount) / nearest.battingPlyCount,
      basis: {
        kind: 'rule of thumb',
        how: say('rise.rise-of-layers-that-were-not'),
        source: say('common.common-practice-no-source'),
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
      how: say('rise.rise-of-a-face-half-of', {
        loftLeftRatio: loftLeftRatio * 100,
        wornLoftRatio: wornLoftRatio * 100,
      }),
      source: say('common.common-practice-no-source'),
    },
  };
}
