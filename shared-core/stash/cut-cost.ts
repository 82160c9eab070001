/** What a cut from a lot costs the coats, and what of it fell away. */
import { shareMinor } from '../measure/money/money.ts';
import type { CutLine, KeptRest } from './cutting.ts';
import { areaLeftRatio, noShrinkage, type Shrinkage } from './shrinkage.ts';
import { type Item, toMilli } from './stash.ts';

export interface Cut {
  readonly item: Item;
  readonly lot: { readonly priceMinor: number; readonly receivedMilli: number };
  /** Of the length that is cut; null for what is used up by amount. */
  readonly widthMm: number | null;
  readonly worthRatio: number;
  /** In the kind's unit. */
  readonly amount: number;
  /** Of the pieces as they are laid. */
  readonly pieceMm2: number | null;
  /** Of that: what is trimmed off after quilting; absent: nothing. */
  readonly trimmedMm2?: number;
  readonly kept: readonly KeptRest[];
  /** What it lost by being washed before it was cut: pieces and remnants are measured washed. Absent: nothing. */
  readonly washed?: Shrinkage;
}

/**
 * The share of its lot's price that a millimetre of a remnant carries: by its width, and where the cloth was washed by
 * the area that it was before. Never more than a whole one; what the wash takes beyond that the coats pay.
 */
export function remnantWorth(
  {
    widthMm,
    worthRatio,
    washed = noShrinkage,
  }: Pick<Cut, 'worthRatio' | 'washed'> & { readonly widthMm: number },
  restWidthMm: number,
): number {
  return Math.min(1, (worthRatio * restWidthMm) / (widthMm * areaLeftRatio(washed)));
}

/** Remnants that are kept cost the coats nothing: they go back at their share of the width. Areas are told unwashed. */
export function cutCost(cut: Cut): Pick<CutLine, 'usedMilli' | 'costMinor' | 'area'> {
  const { item, lot, widthMm, worthRatio, amount, kept, washed = noShrinkage } = cut;
  const left = areaLeftRatio(washed);
  const keptMm2 = kept.reduce((sum, rest) => sum + rest.widthMm * rest.lengthMm, 0) / left;
  const keptMm =
    widthMm === null
      ? 0
      : kept.reduce(
          (sum, rest) => sum + rest.lengthMm * remnantWorth({ widthMm, worthRatio, washed }, rest.widthMm),
          0,
        );
  const usedMilli = Math.max(0, toMilli(amount * worthRatio - keptMm));
  const costMinor = shareMinor(lot.priceMinor, usedMilli, lot.receivedMilli);
  if (widthMm === null) return { usedMilli, costMinor, area: null };
  const laidMm2 = (cut.pieceMm2 ?? 0) / left;
  const trimmedMm2 = Math.min((cut.trimmedMm2 ?? 0) / left, laidMm2);
  const wasteMm2 = Math.max(0, amount * widthMm - keptMm2 - laidMm2);
  const massGPerM2 = item.kind === 'cloth' || item.kind === 'batting' ? item.facts.arealMassGPerM2 : null;
  const paidMm2 = laidMm2 + wasteMm2;
  const massG = (mm2: number) => (massGPerM2 === null ? null : (mm2 / 1e6) * massGPerM2);
  const shareOf = (mm2: number) => (paidMm2 > 0 ? shareMinor(costMinor, mm2, paidMm2) : 0);
  return {
    usedMilli,
    costMinor,
    area: {
      pieceMm2: laidMm2 - trimmedMm2,
      keptMm2,
      wasteMm2,
      wasteG: massG(wasteMm2),
      wasteMinor: shareOf(wasteMm2),
      ...(trimmedMm2 > 0 && {
        trimmedMm2,
        trimmedG: massG(trimmedMm2),
        trimmedMinor: shareOf(trimmedMm2),
      }),
    },
  };
}
