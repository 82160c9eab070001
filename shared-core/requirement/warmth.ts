/**
 * Warmth of the padding as a range in clo, with the reasons for doubt. Never a temperature: how warm a coat is
 * hangs on wind, movement, fit and the wearer more than on its thickness.
 */
import type { Basis } from '../measure/basis.ts';
import { type CoatPlan, type Piece, slotById } from '../plan/coat-plan.ts';
import { ringAreaMm2 } from '../geometry/ring.ts';
import { averageLoftMm } from '../quilting/chambers.ts';
import { lineSpacingMm, wholeSeamRing } from '../quilting/lines.ts';
import { labelSection } from './label.ts';
import type { SlotItems } from './need.ts';
import { effectiveThicknessMm, wornLoftRatio } from './padding.ts';
import { measuredRiseMm, quiltedRise } from './rise.ts';

/** 1 clo in m2 K / W. Source: engineering tables. */
export const cloM2KPerW = 0.155;

/** 1 tog in m2 K / W. Source: definition of the tog. */
export const togM2KPerW = 0.1;

/**
 * Clo for each cm of thickness. Most: still fibrous insulation at 4 clo/in, military clothing research, from memory.
 * Least: 1.7 clo/in, the lower of two sheets with thickness and clo both stated, hammock makers' forum.
 */
export const cloPerCm = { least: 1.7 / 2.54, most: 4 / 2.54 } as const;

export interface Warmth {
  /** Over the padded area, still air inside and outside, no wind. */
  readonly leastClo: number;
  readonly mostClo: number;
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
export function cloOfThickness(thicknessMm: number): { leastClo: number; mostClo: number } {
  if (!(thicknessMm >= 0) || !Number.isFinite(thicknessMm))
    throw new RangeError(`padding of ${thicknessMm} mm`);
  return { leastClo: (thicknessMm / 10) * cloPerCm.least, mostClo: (thicknessMm / 10) * cloPerCm.most };
}

/** Thickness of a piece's padding as worn, mm; 0 without padding; null where a loft is not written down. */
export function wornThicknessMm(plan: CoatPlan, piece: Piece, items: SlotItems): number | null {
  let battingMm = 0;
  let isBatted = false;
  let isStuffed = false;
  for (const from of piece.cutFrom) {
    if (from.plyCount === 0) continue;
    const kind = slotById(plan, from.slotId).kind;
    if (kind === 'fill') isStuffed = true;
    if (kind !== 'batting') continue;
    isBatted = true;
    const item = items.get(from.slotId);
    const loftMm = item?.kind === 'batting' ? item.facts.loftMm : null;
    if (loftMm === null) return measuredOnly(plan, piece);
    battingMm += effectiveThicknessMm(from.plyCount, loftMm, wornLoftRatio);
  }
  if (!isStuffed && !isBatted) return 0;
  if (!isStuffed) return measuredOnly(plan, piece) ?? battingMm;
  const riseMm = quiltedRise(plan, piece, items).riseMm;
  if (plan.quilting === null || piece.quilted === null) return (4 * riseMm) / 3;
  const spacingMm = lineSpacingMm(plan.quilting, piece);
  return averageLoftMm(spacingMm, Math.min(riseMm, spacingMm / 2));
}

/** Thickness by the maker's own measure of the rise, where the piece is quilted and there is one. */
function measuredOnly(plan: CoatPlan, piece: Piece): number | null {
  const riseMm = measuredRiseMm(plan, piece);
  if (plan.quilting === null || riseMm === null) return null;
  const spacingMm = lineSpacingMm(plan.quilting, piece);
  return averageLoftMm(spacingMm, Math.min(riseMm, spacingMm / 2));
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
        how: 'mean thickness of the padding as worn x 1.7 to 4 clo for each inch (0.67 to 1.57 for each cm)',
        source:
          'hammock makers’ forum (1.7 clo/in); military clothing research, from memory (4 clo/in, a ceiling)',
      },
      {
        kind: 'rule of thumb',
        how: `padding as worn: ${wornLoftRatio * 100} % of the loft of the batting, or the section of the chambers`,
        source: 'common practice, no source',
      },
    ],
  };
}

function doubtsOf(plan: CoatPlan, items: SlotItems): readonly string[] {
  const doubts = [
    'Whole coats measured on the body give far less than their thickness (0.55 to 0.70 clo for jackets), as they cover only a part of it.',
    'Openings, seams, pressure of straps and wind take from it.',
  ];
  if (plan.quilting !== null && plan.pieces.some((piece) => piece.quilted !== null)) {
    doubts.push('Lines that are sewn through are cold lines; the nearer they lie, the more.');
  }
  for (const slot of plan.slots) {
    const item = items.get(slot.id);
    if (item?.kind === 'fill' && /\b(down|feathers?)\b/i.test(item.facts.fibre ?? item.name)) {
      doubts.push('Down loses its loft when it is damp.');
      break;
    }
  }
  doubts.push('No temperature follows from this figure.');
  return doubts;
}
