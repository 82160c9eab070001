/** What a cutting would book, slot by slot: what the cover takes, and the rests that its lay leaves. */
import { type Ring, ringMoved, ringTurned } from '../geometry/ring.ts';
import type { LayRect } from '../lay/job.ts';
import type { SlotLay } from '../lay/plan-lay.ts';
import { restRectangles } from '../lay/rest.ts';
import type { Shrinkage } from '../stash/shrinkage.ts';
import { type CoatPlan, slotById } from '../plan/model/coat-plan.ts';
import type { Need, ShapesNeed, ShapeToCut } from '../requirement/need.ts';
import { trimmedOfOneMm2 } from '../requirement/cut/trimmings.ts';
import type { CutShape, Met } from '../stash/cutting.ts';
import type { ItemId, LengthId, LotId } from '../stash/stash.ts';
import type { SlotCover, Use } from './slot-cover.ts';

export interface ProposedLine {
  readonly lotId: LotId;
  readonly lengthId: LengthId | null;
  /** What the lay uses, as it lies on the shelf, or the amount needed; the maker may cut more or less. */
  readonly amount: number;
  readonly free: number;
  /**
   * What it loses by being washed before it is cut: pieces and rests are then measures of washed cloth. All 0: it was
   * washed before. Absent: it is cut as it lies on the shelf.
   */
  readonly washed?: Shrinkage;
  /** Of the pieces on it; null for what is used up by amount. */
  readonly pieceAreaMm2: number | null;
  /** Of that: what is trimmed off after quilting. */
  readonly trimmedMm2: number;
  readonly rests: readonly LayRect[];
  /** The pieces as they lie on it, for a drawing. */
  readonly placed: readonly Ring[];
}

export interface ProposedSlot {
  readonly slotId: string;
  readonly itemId: ItemId;
  readonly met: Met;
  readonly lines: readonly ProposedLine[];
  /** What its lines were laid for and how; absent where nothing is laid. */
  readonly laid?: { readonly need: ShapesNeed; readonly lay: SlotLay };
  /** True where the stash has not enough for the coats: what it has is proposed. */
  readonly isShort: boolean;
}

/** Slots of which nothing is left to cut, or nothing is there to cut from, are left out. */
export function cuttingProposal(
  plan: CoatPlan,
  needs: readonly Need[],
  covers: readonly SlotCover[],
): ProposedSlot[] {
  return covers.flatMap((slotCover): ProposedSlot[] => {
    const need = needs.find((candidate) => candidate.slotId === slotCover.slotId);
    const uses = slotCover.uses.filter(({ amount }) => amount > 0);
    if (!need || !slotCover.itemId || uses.length === 0) return [];
    const counted = slotById(plan, slotCover.slotId).kind;
    return [
      {
        slotId: slotCover.slotId,
        itemId: slotCover.itemId,
        isShort: (slotCover.shortage?.amount ?? 0) > 0,
        met: need.kind === 'shapes' ? metShapes(need, slotCover) : metAmount(uses),
        ...(need.kind === 'shapes' && slotCover.lay && { laid: { need, lay: slotCover.lay } }),
        lines: uses.map((use) => line(need, slotCover, use, counted === 'needle')),
      },
    ];
  });
}

function metAmount(uses: readonly Use[]): Met {
  return { kind: 'amount', amount: uses.reduce((sum, use) => sum + use.amount, 0) };
}

/** The pieces that lie on lengths of the stash, not on cloth yet to be bought. */
function metShapes(need: ShapesNeed, slotCover: SlotCover): Met {
  const isWashed = need.firstWash?.isBeforeCutting ?? false;
  const onStash = new Set(slotCover.uses.map((use) => use.layLength));
  const shapes = need.shapes.flatMap((shape, index): CutShape[] => {
    const placed = (slotCover.lay?.result.placements ?? []).filter(
      (placement) => placement.shape === index && onStash.has(placement.length),
    );
    const mirroredCount = placed.filter((placement) => placement.mirrored).length;
    if (!shape.carries) return [cutShape(shape, placed.length - mirroredCount, mirroredCount, isWashed)];
    // A panel meets the need of the pieces that it gives.
    return shape.carries.map((carried) =>
      cutShape(carried.shape, carried.count * placed.length, carried.mirroredCount * placed.length, isWashed),
    );
  });
  return { kind: 'shapes', shapes: shapes.filter((shape) => shape.count + shape.mirroredCount > 0) };
}

function cutShape(
  { pieceId, size, name, ring }: ShapeToCut,
  count: number,
  mirroredCount: number,
  isWashed: boolean,
): CutShape {
  const kept = Array.from(ring, (value) => Number(value.toFixed(2)));
  return { pieceId, size, name, ring: kept, count, mirroredCount, ...(isWashed && { isWashed }) };
}

function line(need: Need, slotCover: SlotCover, use: Use, isWhole: boolean): ProposedLine {
  const { lotId, lengthId, free } = use;
  const lay = slotCover.lay;
  if (need.kind === 'amount' || !lay || use.layLength === null) {
    const amount = isWhole ? Math.min(Math.ceil(use.amount - 1e-9), free) : use.amount;
    return { lotId, lengthId, free, amount, pieceAreaMm2: null, trimmedMm2: 0, rests: [], placed: [] };
  }
  const index = use.layLength;
  const placed = lay.result.placements.filter((placement) => placement.length === index);
  const shapes = placed.flatMap((placement) => need.shapes[placement.shape] ?? []);
  // A blade is set to the millimetre, and never short of the last piece.
  const amount = Math.min(Math.ceil(use.amount - 1e-6), free);
  const washed = lay.washed?.[index];
  const laidMm = amount * (1 - (washed?.alongRatio ?? 0));
  return {
    lotId,
    lengthId,
    free,
    amount,
    ...(washed && { washed }),
    pieceAreaMm2: shapes.reduce((sum, { areaMm2 }) => sum + areaMm2, 0),
    trimmedMm2: shapes.reduce((sum, shape) => sum + trimmedOfOneMm2(shape), 0),
    rests: restRectangles(lay.job, lay.result, index, laidMm),
    placed: placed.map((placement) => {
      const ring = need.shapes[placement.shape]?.ring ?? new Float64Array();
      return ringMoved(ringTurned(ring, placement.turnDeg, placement.mirrored), placement.x, placement.y);
    }),
  };
}
