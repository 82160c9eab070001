/**
 * Warmth of the padding as a range in clo, with the reasons for doubt. Never a temperature: how warm a coat is
 * hangs on wind, movement, fit and the wearer more than on its thickness.
 */
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import { type CoatPlan, type Piece, slotById } from '../../plan/model/coat-plan.ts';
import { ringAreaMm2 } from '../../geometry/ring.ts';
import { averageLoftMm } from '../../quilting/chambers.ts';
import { isPadded } from '../../plan/model/quilted-layers.ts';
import { isStuffed } from '../../plan/model/stuffing.ts';
import { isPieceQuilted, lineSpacingMm, wholeSeamRing } from '../../quilting/lines.ts';
import { isPlumage } from '../law/fibre-names.ts';
import { labelSection } from '../law/label.ts';
import type { SlotItems } from '../need.ts';
import { wornLoftRatio } from './padding.ts';
import { measuredRiseMm, quiltedRise } from '../fill/rise.ts';

/** 1 clo in m2 K / W. Source: engineering tables. */
export const cloM2KPerW = 0.155;

/** 1 tog in m2 K / W. Source: definition of the tog. */
export const togM2KPerW = 0.1;

/**
 * Clo for each cm of thickness. Most: 5 clo/in, 0.033 W/mK, fine polyester nonwoven of 100 g/m2 and 15 mm that measured
 * 0.4522 m2 K/W; coarse fibre at 300 g/m2 measured 0.305 (Bangera, Chavan, Patel, Patil, Mechanics of Advanced Composite
 * Structures). Least: 2.5 clo/in, 0.065 W/mK; a patent on down substitutes (US 4,588,635) asks for less than 0.072 even
 * of the lightest. All doubt of the range is in these two; the thickness is one mean.
 */
export const cloPerCm = { min: 2.5 / 2.54, max: 5 / 2.54 } as const;

/**
 * Share of the loft of loose fill that is left in a coat as worn. Source: IDFL laboratory, questions on fill power: down
 * in jackets lofts 10 to 40 % less after sewing and storage; the middle.
 */
export const wornFillRatio = 0.75;

export interface Warmth {
  /** Of the padding alone, over the padded area, without the air on both sides of it; no wind. */
  readonly minClo: number;
  readonly maxClo: number;
  /** Mean thickness as worn over the padded area. */
  readonly thicknessMm: number;
  /** Share of the shell's pieces, facings with them, that is padded, 0 to 1. */
  readonly paddedRatio: number;
  readonly doubts: readonly string[];
  readonly basis: readonly Basis[];
}

/** Conductivity of still insulation that gives a clo for each cm, W/mK. */
export function conductivityWPerMK(cloForEachCm: number): number {
  return 0.01 / (cloForEachCm * cloM2KPerW);
}

/** Range of clo for a thickness as worn. Throws for a negative or non-finite one. */
export function cloOfThickness(thicknessMm: number): { minClo: number; maxClo: number } {
  if (!(thicknessMm >= 0) || !Number.isFinite(thicknessMm))
    throw new RangeError(`padding of ${thicknessMm} mm`);
  return { minClo: (thicknessMm / 10) * cloPerCm.min, maxClo: (thicknessMm / 10) * cloPerCm.max };
}

/**
 * Mean thickness of a piece's padding as worn, mm; 0 without padding; null where a loft is not written down. Between
 * lines it is the mean of the arc, whether its rise was measured or estimated.
 */
export function wornThicknessMm(plan: CoatPlan, piece: Piece, items: SlotItems): number | null {
  if (!isPadded(plan, piece)) return 0;
  const isMeasured = measuredRiseMm(plan, piece) !== null;
  const fills = isStuffed(plan, piece);
  if (!isMeasured && !fills && battingLoftMm(plan, piece, items) === null) return null;
  const { riseMm } = quiltedRise(plan, piece, items);
  const worn = fills && !isMeasured ? wornFillRatio : 1;
  if (plan.quilting !== null && isPieceQuilted(plan, piece)) {
    const spacingMm = lineSpacingMm(plan.quilting, piece);
    return worn * averageLoftMm(spacingMm, Math.min(riseMm, spacingMm / 2));
  }
  return fills ? (worn * 4 * riseMm) / 3 : wornLoftRatio * (battingLoftMm(plan, piece, items) ?? 0);
}

/** All layers of batting of a piece as bought, mm; null where a loft is not written down. */
function battingLoftMm(plan: CoatPlan, piece: Piece, items: SlotItems): number | null {
  return piece.cutFrom.reduce<number | null>((sum, { slotId, plyCount }) => {
    if (plyCount === 0 || slotById(plan, slotId).kind !== 'batting') return sum;
    const item = items.get(slotId);
    const loftMm = item?.kind === 'batting' ? item.facts.loftMm : null;
    return sum === null || loftMm === null ? null : sum + loftMm * plyCount;
  }, 0);
}

/** Warmth of the padding of one coat; null where no piece is padded or a loft is not written down. */
export function warmth(plan: CoatPlan, items: SlotItems): Warmth | null {
  let paddedMm2 = 0;
  let coverMm2 = 0;
  let volumeMm3 = 0;
  for (const piece of plan.pieces) {
    const thicknessMm = wornThicknessMm(plan, piece, items);
    if (thicknessMm === null) return null;
    const areaMm2 = ringAreaMm2(wholeSeamRing(piece)) * piece.cutCount;
    const isShell = piece.cutFrom.some(
      (from) => from.plyCount > 0 && labelSection(slotById(plan, from.slotId)) === 'shell',
    );
    if (isShell || thicknessMm > 0) coverMm2 += areaMm2;
    if (thicknessMm > 0) paddedMm2 += areaMm2;
    volumeMm3 += areaMm2 * thicknessMm;
  }
  if (paddedMm2 === 0) return null;
  const thicknessMm = volumeMm3 / paddedMm2;
  return {
    ...cloOfThickness(thicknessMm),
    thicknessMm,
    paddedRatio: paddedMm2 / coverMm2,
    doubts: doubtsOf(plan, items),
    basis: [
      {
        kind: 'rule of thumb',
        how: say('warmth.mean-thickness-of-the-padding-as'),
        source: say('warmth.bangera-and-others-mechanics-of-advanced'),
      },
      {
        kind: 'rule of thumb',
        how: say('warmth.padding-as-worn-on-the-mean', {
          wornLoftRatio: wornLoftRatio * 100,
          wornFillRatio: wornFillRatio * 100,
        }),
        source: say('warmth.common-practice-no-source-idfl-laboratory'),
      },
    ],
  };
}

function doubtsOf(plan: CoatPlan, items: SlotItems): readonly string[] {
  const doubts = [
    say('warmth.it-is-the-padding-alone-where'),
    say('warmth.openings-seams-pressure-of-straps-and'),
  ];
  if (plan.quilting !== null && plan.pieces.some((piece) => piece.quilted !== null)) {
    doubts.push(say('warmth.lines-that-are-sewn-through-are'));
  }
  for (const slot of plan.slots) {
    const item = items.get(slot.id);
    if (item?.kind === 'fill' && isPlumage(item.facts.fibre ?? item.name)) {
      doubts.push(say('warmth.down-loses-its-loft-when-it'));
      break;
    }
  }
  doubts.push(say('warmth.no-temperature-follows-from-this-figure'));
  return doubts;
}
