/** What quilting takes from a piece: as a swatch measured it, else by the arc of its cloth and the pull of its stitches. */
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import type { CoatPlan, Piece, Slot } from '../../plan/model/coat-plan.ts';
import { battingPlyCount, isPadded, measureOf } from '../../plan/model/quilted-layers.ts';
import { lineSpacingMm } from '../../quilting/lines.ts';
import type { QuiltedPiece } from '../../quilting/map.ts';
import {
  arcRatio,
  type EstimatedTakeUp,
  stitchPull,
  type TakeUp,
  takeUpAlongLines,
  takeUpOverLines,
} from '../../quilting/take-up.ts';
import type { SlotItems } from '../need.ts';
import { quiltedRise } from '../fill/rise.ts';

/** From where to where an estimate may lie. */
export type TakeUpRange = Pick<EstimatedTakeUp, 'minRatio' | 'maxRatio'>;

export interface PieceTakeUp extends TakeUp {
  /** Null in a direction that was measured, or that padding does not draw in. */
  readonly alongRange: TakeUpRange | null;
  readonly acrossRange: TakeUpRange | null;
  /** Of a face between two lines, with how it was got. */
  readonly rise: ReturnType<typeof quiltedRise>;
  /** A swatch decided, in one direction at least. */
  readonly isMeasured: boolean;
}

/** One direction: measured, or estimated with its range. */
interface OneWay {
  readonly ratio: number;
  readonly range: TakeUpRange | null;
  readonly isMeasured: boolean;
}

/** Of one piece in one slot; null where the slot or the piece is not quilted. */
export function slotTakeUp(plan: CoatPlan, slot: Slot, piece: Piece, items: SlotItems): PieceTakeUp | null {
  if (!slot.isQuilted || plan.quilting === null || piece.quilted === null) return null;
  const rise = quiltedRise(plan, piece, items);
  const measure = measureOf(plan, battingPlyCount(plan, piece));
  const padded = isPadded(plan, piece);
  const spacingMm = lineSpacingMm(plan.quilting, piece);
  const isAcross = piece.quilted === 'across';
  const over = oneWay(
    measure?.overLinesRatio ?? (isAcross ? slot.takeUpAlongRatio : slot.takeUpAcrossRatio),
    padded ? takeUpOverLines(spacingMm, rise.riseMm) : null,
    arcRatio(spacingMm, rise.riseMm),
  );
  const beside = oneWay(
    measure?.alongLinesRatio ?? (isAcross ? slot.takeUpAcrossRatio : slot.takeUpAlongRatio),
    padded ? takeUpAlongLines : null,
    0,
  );
  const [along, across] = isAcross ? [over, beside] : [beside, over];
  return {
    alongRatio: along.ratio,
    acrossRatio: across.ratio,
    alongRange: along.range,
    acrossRange: across.range,
    rise,
    isMeasured: along.isMeasured || across.isMeasured,
  };
}

/** bareRatio: without padding, where only a rise of the cloth itself takes anything up. */
function oneWay(measured: number | null, estimated: EstimatedTakeUp | null, bareRatio: number): OneWay {
  if (measured !== null) return { ratio: measured, range: null, isMeasured: true };
  if (estimated === null) return { ratio: bareRatio, range: null, isMeasured: false };
  const { ratio, minRatio, maxRatio } = estimated;
  return { ratio, range: { minRatio, maxRatio }, isMeasured: false };
}

/** How a take-up was got; none where nothing is taken up. */
export function takeUpBasis(takeUp: PieceTakeUp): readonly Basis[] {
  const basis: Basis[] = [];
  if (takeUp.isMeasured)
    basis.push({ kind: 'measured', how: say('slot-take-up.take-up-of-quilting-as-measured'), source: '' });
  if (takeUp.alongRange || takeUp.acrossRange) {
    const percent = (ratio: number) => Number((ratio * 100).toFixed(1));
    basis.push({
      kind: 'rule of thumb',
      how: say('slot-take-up.take-up-of-quilting-both-ways', {
        percent: percent(stitchPull.usual),
        percent2: percent(stitchPull.min),
        percent3: percent(stitchPull.max),
      }),
      source: say('slot-take-up.quilts-and-swatches-before-and-after'),
    });
    basis.push(takeUp.rise.basis);
  } else if (!takeUp.isMeasured && takeUp.alongRatio + takeUp.acrossRatio > 0) {
    const source = say('slot-take-up.geometry-of-a-circular-arc');
    basis.push({
      kind: 'computed',
      how: say('slot-take-up.take-up-of-quilting-arc-over'),
      source,
    });
    basis.push(takeUp.rise.basis);
  }
  return basis;
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
  takeUp: TakeUp | null,
): readonly number[] {
  const ratio = takeUp === null ? 0 : quilted.direction === 'across' ? takeUp.alongRatio : takeUp.acrossRatio;
  return quilted.offsetsMm.map((offsetMm) => offsetMm * (1 + ratio));
}
