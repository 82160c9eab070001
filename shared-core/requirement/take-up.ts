/** What quilting takes from a piece: as its slot's swatch measured it, else by the geometry of its lines. */
import type { CoatPlan, Piece, Slot } from '../plan/coat-plan.ts';
import { lineSpacingMm } from '../quilting/lines.ts';
import type { QuiltedPiece } from '../quilting/map.ts';
import { takeUpBoth } from '../quilting/take-up.ts';
import type { SlotItems } from './need.ts';
import { quiltedRise } from './rise.ts';

export interface PieceTakeUp {
  /** Extra to cut for each unit of finished length, along and across the grain; 0 or more. */
  readonly alongRatio: number;
  readonly acrossRatio: number;
  /** Of a face between two lines, with how it was got. */
  readonly rise: ReturnType<typeof quiltedRise>;
  /** A swatch decided, in one direction at least. */
  readonly isMeasured: boolean;
}

/** Of one piece in one slot; null where the slot or the piece is not quilted. */
export function slotTakeUp(plan: CoatPlan, slot: Slot, piece: Piece, items: SlotItems): PieceTakeUp | null {
  if (!slot.isQuilted || plan.quilting === null || piece.quilted === null) return null;
  const rise = quiltedRise(plan, piece, items);
  const byGeometry = takeUpBoth(piece.quilted, lineSpacingMm(plan.quilting, piece), rise.riseMm);
  return {
    alongRatio: slot.takeUpAlongRatio ?? byGeometry.alongRatio,
    acrossRatio: slot.takeUpAcrossRatio ?? byGeometry.acrossRatio,
    rise,
    isMeasured: slot.takeUpAlongRatio !== null || slot.takeUpAcrossRatio !== null,
  };
}

/** Of the cloth that the lines are marked on: the first quilted slot that the piece is cut from; null where there is none. */
export function pieceTakeUp(plan: CoatPlan, piece: Piece, items: SlotItems): PieceTakeUp | null {
  const cut = plan.slots.filter((slot) =>
    piece.cutFrom.some(({ slotId, plyCount }) => slotId === slot.id && plyCount > 0),
  );
  const marked =
    cut.find((slot) => slot.isQuilted && slot.kind === 'cloth') ?? cut.find((slot) => slot.isQuilted);
  return marked ? slotTakeUp(plan, marked, piece, items) : null;
}

/** Where lines are marked on the flat cloth, mm from its hem: quilting draws them in to their finished places. */
export function offsetsToMark(
  quilted: Pick<QuiltedPiece, 'direction' | 'offsetsMm'>,
  takeUp: PieceTakeUp | null,
): readonly number[] {
  const ratio = takeUp === null ? 0 : quilted.direction === 'across' ? takeUp.alongRatio : takeUp.acrossRatio;
  return quilted.offsetsMm.map((offsetMm) => offsetMm * (1 + ratio));
}
