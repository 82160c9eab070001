/** Layers of batting by piece, and the loft that is left of them in the finished coat. */
import { say } from '../../wording/say.ts';
import { type CoatPlan, slotById } from '../../plan/model/coat-plan.ts';
import { nearestRise } from '../../plan/model/quilted-layers.ts';
import { isPieceQuilted } from '../../quilting/lines.ts';
import type { Basis } from '../../measure/basis.ts';
import type { SlotItems } from '../need.ts';
import { wornLoftRatio } from '../finished/padding.ts';
import { quiltedRise } from './rise.ts';

export interface BattedPiece {
  readonly pieceId: string;
  readonly pieceName: string;
  readonly plyCount: number;
  /** All layers as bought, mm; null where a loft is not written down. */
  readonly loftMm: number | null;
  /** Midway between two lines, or as worn where there are none, mm; null where it is not known. */
  readonly finishedMm: number | null;
  readonly basis: Basis;
}

/** Every piece of the size at hand that is cut from the slot of batting; other slots of batting in it count along. */
export function battedPieces(plan: CoatPlan, slotId: string, items: SlotItems): readonly BattedPiece[] {
  return plan.pieces.flatMap((piece) => {
    if (!piece.cutFrom.some((from) => from.slotId === slotId && from.plyCount > 0)) return [];
    let plyCount = 0;
    let loftMm: number | null = 0;
    for (const from of piece.cutFrom) {
      if (slotById(plan, from.slotId).kind !== 'batting') continue;
      const item = items.get(from.slotId);
      const oneMm = item?.kind === 'batting' ? item.facts.loftMm : null;
      plyCount += from.plyCount;
      if (from.plyCount > 0)
        loftMm = loftMm === null || oneMm === null ? null : loftMm + oneMm * from.plyCount;
    }
    const place = { pieceId: piece.id, pieceName: piece.name, plyCount, loftMm };
    if (!isPieceQuilted(plan, piece)) {
      const basis: Basis = {
        kind: 'rule of thumb',
        how: say('batted-pieces.without-lines-of-the-loft-is', { wornLoftRatio: wornLoftRatio * 100 }),
        source: say('common.common-practice-no-source'),
      };
      return [{ ...place, finishedMm: loftMm === null ? null : loftMm * wornLoftRatio, basis }];
    }
    const { riseMm, basis } = quiltedRise(plan, piece, items);
    const isKnown = loftMm !== null || basis.kind === 'measured' || nearestRise(plan, plyCount) !== null;
    return [{ ...place, finishedMm: isKnown ? 2 * riseMm : null, basis }];
  });
}
