/**
 * How high a stuffed piece stands: by the loft or the weight that the maker asks for, else as is usual, and by the width
 * of its channels where nothing usual is known.
 */
import { say } from '../../wording/say.ts';
import { type Basis, measureIn } from '../../measure/basis.ts';
import type { CoatPlan, Piece } from '../../plan/model/coat-plan.ts';
import { ringAreaMm2, ringBox } from '../../geometry/ring.ts';
import { averageLoftMm } from '../../quilting/chambers.ts';
import { isPieceQuilted, lineSpacingMm, wholeSeamRing } from '../../quilting/lines.ts';
import { type FillPower, fillPowerOf, overfillOf } from './fill-power.ts';
import type { SlotItems } from '../need.ts';
import { defaultBasis, defaultMiddleGPerM2, widthOfLoft } from './usual-fill.ts';

/** Rise of a stuffed channel over its width, where nothing is asked or known: 1/2 in between lines 4 in apart. */
const riseRatio = 1 / 8;

/** Rise of a stuffed piece without lines, such as a stuffed collar. */
const unquiltedRiseMm = 12.5;

const noSource = () => say('common.common-practice-no-source');

/** Rise of one face, mm, midway between two lines or in the middle of a piece without any. */
export function stuffedRise(
  plan: CoatPlan,
  piece: Piece,
  items: SlotItems,
): { readonly riseMm: number; readonly basis: Basis } {
  const widthMm = channelWidthMm(plan, piece);
  const aim = plan.fillAim;
  if (aim?.kind === 'loft') {
    return {
      riseMm: Math.min(aim.loftMm, widthMm) / 2,
      basis: {
        kind: 'measured',
        how: say('stuffed-rise.loft-of-midway-between-two-lines', {
          measureIn: measureIn('length', aim.loftMm),
        }),
        source: '',
      },
    };
  }
  if (aim?.kind === 'weight') {
    return {
      riseMm: riseOfMean(widthMm, meanLoftMm(plan, piece, items, aim.gPerM2)),
      basis: {
        kind: 'computed',
        how: say('stuffed-rise.of-fill-as-you-asked-for', { measureIn: measureIn('arealMass', aim.gPerM2) }),
        source: say('stuffed-rise.definition-of-fill-power'),
      },
    };
  }
  if (isStuffedAsUsual(plan, piece, items)) {
    const gPerM2 = defaultMiddleGPerM2(powerOf(plan, piece, items).cm3PerG);
    const defaultMm = riseOfMean(widthMm, meanLoftMm(plan, piece, items, gPerM2));
    const maxMm = widthMm / widthOfLoft.min / 2;
    return { riseMm: Math.min(defaultMm, maxMm), basis: defaultBasis(gPerM2, defaultMm > maxMm) };
  }
  return isPieceQuilted(plan, piece)
    ? {
        riseMm: widthMm * riseRatio,
        basis: {
          kind: 'rule of thumb',
          how: say('stuffed-rise.no-loft-and-no-weight-of'),
          source: noSource(),
        },
      }
    : {
        riseMm: unquiltedRiseMm,
        basis: {
          kind: 'rule of thumb',
          how: say('stuffed-rise.rise-of-a-face-of-a', { measureIn: measureIn('length', unquiltedRiseMm) }),
          source: noSource(),
        },
      };
}

/** Mean loft that a weight of fill has room for, mm: what it takes by its fill power, over the overfill. */
export function meanLoftMm(plan: CoatPlan, piece: Piece, items: SlotItems, gPerM2: number): number {
  return (gPerM2 * powerOf(plan, piece, items).cm3PerG) / overfillOf(plan) / 1000;
}

/** Whether nothing is asked of a stuffed piece and it is filled as is usual: channels of down. */
export function isStuffedAsUsual(plan: CoatPlan, piece: Piece, items: SlotItems): boolean {
  return (
    plan.fillAim === undefined && isPieceQuilted(plan, piece) && powerOf(plan, piece, items).kind === 'down'
  );
}

/** Fill power of what a piece is stuffed with. */
function powerOf(plan: CoatPlan, piece: Piece, items: SlotItems): FillPower {
  const from = piece.cutFrom.find(
    ({ slotId, plyCount }) => plyCount > 0 && plan.slots.find(({ id }) => id === slotId)?.kind === 'fill',
  );
  return fillPowerOf(from ? items.get(from.slotId) : undefined);
}

/** Distance of the lines; of a piece without any its area over its longer side. */
export function channelWidthMm(plan: CoatPlan, piece: Piece): number {
  if (plan.quilting !== null && isPieceQuilted(plan, piece)) return lineSpacingMm(plan.quilting, piece);
  const ring = wholeSeamRing(piece);
  const box = ringBox(ring);
  return ringAreaMm2(ring) / Math.max(box.maxX - box.minX, box.maxY - box.minY);
}

/** The rise whose arcs have that mean loft, at most the half circle, mm. */
function riseOfMean(widthMm: number, meanMm: number): number {
  let low = 0;
  let high = widthMm / 2;
  if (averageLoftMm(widthMm, high) <= meanMm) return high;
  for (let step = 0; step < 50; step++) {
    const middle = (low + high) / 2;
    if (averageLoftMm(widthMm, middle) < meanMm) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
