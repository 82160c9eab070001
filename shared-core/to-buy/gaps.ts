/** What the stash leaves open, slot by slot, ready to be bought: gaps of several plans may stand in one list. */
import { type CoatPlan, slotById } from '../plan/model/coat-plan.ts';
import { asCutUnwashed, isWashedAlike } from '../requirement/cut/cut-unwashed.ts';
import type { SlotCover } from '../cover/slot-cover.ts';
import type { Need, ShapesNeed } from '../requirement/need.ts';
import type { ItemId, PlanId } from '../stash/stash.ts';

/** Pieces for which no length on the shelf has room. */
export interface CutGap {
  readonly kind: 'cut';
  /** The need with the copies that are missing, and no others. */
  readonly missing: ShapesNeed;
  /** Length of the missing pieces' lay on cloth of `widthMm`, both as it is bought, mm. */
  readonly lengthMm: number;
  /** Margin for safety beside it, mm; on cloth of another width it is the same length. */
  readonly marginMm: number;
  readonly widthMm: number | null;
  readonly clearanceMm: number;
}

export interface AmountGap {
  readonly kind: 'amount';
  /** What the coats lack, in the kind's unit. */
  readonly amount: number;
  /** Margin for safety that is lacking beside it. */
  readonly marginAmount: number;
  /** Length each piece must have at least, mm; null where it does not matter. */
  readonly wantedLengthMm: number | null;
  /** Thread: spools that are missing for the machine that wants most of them at once, whatever they hold. Absent: none. */
  readonly missingConeCount?: number;
}

export interface Gap {
  /** One of a kind among all plans. */
  readonly id: string;
  readonly planId: PlanId;
  readonly slotId: string;
  /** What the maker calls the slot. */
  readonly slotName: string;
  readonly itemId: ItemId;
  /** Seen: all of the item is bought from one offer, so that it is of one dye lot. */
  readonly isSeen: boolean;
  readonly needs: CutGap | AmountGap;
}

/** The gaps of one plan, in the order of its covers. Slots without an item are none: nobody knows what to buy. */
export function gapsOf(plan: CoatPlan, needs: readonly Need[], covers: readonly SlotCover[]): Gap[] {
  return covers.flatMap((slotCover) => {
    const need = needs.find((candidate) => candidate.slotId === slotCover.slotId);
    if (!need || !slotCover.shortage || slotCover.itemId === null) return [];
    const slot = slotById(plan, slotCover.slotId);
    const { amount, marginAmount = 0, widthMm, wantedLengthMm, missingConeCount } = slotCover.shortage;
    return [
      {
        id: gapId(plan, slot.id),
        planId: plan.id,
        slotId: slot.id,
        slotName: slot.name,
        itemId: slotCover.itemId,
        isSeen: slot.isSeen,
        needs:
          need.kind === 'shapes'
            ? {
                kind: 'cut',
                missing: missingShapes(need, slotCover),
                lengthMm: amount,
                marginMm: marginAmount,
                widthMm,
                clearanceMm: plan.clearanceMm,
              }
            : {
                kind: 'amount',
                amount,
                marginAmount,
                wantedLengthMm,
                ...(missingConeCount !== undefined && { missingConeCount }),
              },
      },
    ];
  });
}

export function gapId(plan: Pick<CoatPlan, 'id'>, slotId: string): string {
  return `${plan.id} ${slotId}`;
}

/** The copies that the cover's lay put on the cloth to be bought, which is its last length. */
function missingShapes(need: ShapesNeed, slotCover: SlotCover): ShapesNeed {
  if (!slotCover.lay) return need;
  const { job, result } = slotCover.lay;
  const toBuy = job.lengths.length - 1;
  const shapes = need.shapes.flatMap((shape, index) => {
    const missing = result.placements.filter(({ shape: of, length }) => of === index && length === toBuy);
    const mirroredCount = missing.filter(({ mirrored }) => mirrored).length;
    const count = missing.length - mirroredCount;
    return count + mirroredCount > 0 ? [{ ...shape, count, mirroredCount }] : [];
  });
  return { ...need, shapes, areaMm2: areaOf(shapes) };
}

function areaOf(shapes: ShapesNeed['shapes']): number {
  return shapes.reduce((sum, shape) => sum + shape.areaMm2 * (shape.count + shape.mirroredCount), 0);
}

/**
 * The missing pieces of several gaps of one item as one need, so that they may share a sheet or a length. Where some of
 * them are washed before they are cut and others are not, all are laid as on unwashed cloth.
 */
export function jointNeed(gaps: readonly { readonly needs: CutGap }[]): ShapesNeed {
  const first = gaps[0];
  if (!first) throw new RangeError('no gap to join');
  if (gaps.length === 1) return first.needs.missing;
  const missing = gaps.map(({ needs }) => needs.missing);
  const alike = isWashedAlike(missing) ? missing : missing.map(asCutUnwashed);
  const shapes = alike.flatMap((need) => need.shapes);
  return { ...alike[0]!, shapes, areaMm2: areaOf(shapes), basis: [] };
}
