/** What a cut from a lot costs the coats, and what of it fell away. */
import { shareMinor } from '../measure/money.ts';
import type { CutLine, KeptRest } from './cutting.ts';
import { type Item, toMilli } from './stash.ts';

export interface Cut {
  readonly item: Item;
  readonly lot: { readonly priceMinor: number; readonly receivedMilli: number };
  /** Of the length that is cut; null for what is used up by amount. */
  readonly widthMm: number | null;
  readonly worthRatio: number;
  /** In the kind's unit. */
  readonly amount: number;
  readonly pieceMm2: number | null;
  readonly kept: readonly KeptRest[];
}

/** Remnants that are kept cost the coats nothing: they go back at their share of the width. */
export function cutCost(cut: Cut): Pick<CutLine, 'usedMilli' | 'costMinor' | 'area'> {
  const { item, lot, widthMm, worthRatio, amount, kept } = cut;
  const keptMm2 = kept.reduce((sum, rest) => sum + rest.widthMm * rest.lengthMm, 0);
  const keptMm = widthMm === null ? 0 : keptMm2 / widthMm;
  const usedMilli = Math.max(0, toMilli((amount - keptMm) * worthRatio));
  const costMinor = shareMinor(lot.priceMinor, usedMilli, lot.receivedMilli);
  if (widthMm === null) return { usedMilli, costMinor, area: null };
  const pieceMm2 = cut.pieceMm2 ?? 0;
  const wasteMm2 = Math.max(0, amount * widthMm - keptMm2 - pieceMm2);
  const massGPerM2 = item.kind === 'cloth' || item.kind === 'batting' ? item.facts.arealMassGPerM2 : null;
  const paidMm2 = pieceMm2 + wasteMm2;
  return {
    usedMilli,
    costMinor,
    area: {
      pieceMm2,
      keptMm2,
      wasteMm2,
      wasteG: massGPerM2 === null ? null : (wasteMm2 / 1e6) * massGPerM2,
      wasteMinor: paidMm2 > 0 ? shareMinor(costMinor, wasteMm2, paidMm2) : 0,
    },
  };
}
