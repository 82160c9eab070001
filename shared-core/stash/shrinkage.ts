/** What cloth and batting lose in their first wash, and what is left of a measure after it. */
import type { Item } from './stash.ts';

/** Shares of what there was before the wash, 0 to below 1; 0.05 is 5 %. */
export interface Shrinkage {
  readonly alongRatio: number;
  readonly acrossRatio: number;
}

export const noShrinkage: Shrinkage = { alongRatio: 0, acrossRatio: 0 };

export interface KnownShrinkage extends Shrinkage {
  /** The direction of which nothing is written down: taken as the other one. Null: both are. */
  readonly assumed: 'along' | 'across' | null;
}

/**
 * As it is written down of an item; null where nothing is, since not known is not 0. Where one direction alone is
 * written down, the other is taken as much: a seller's single figure seldom says which way it goes, and too little
 * cloth is worse than a little too much (common practice, no source).
 */
export function shrinkageOf(item: Item | undefined): KnownShrinkage | null {
  if (item?.kind !== 'cloth' && item?.kind !== 'batting') return null;
  const { shrinkageAlongRatio: along, shrinkageAcrossRatio: across } = item.facts;
  if (along === null && across === null) return null;
  return {
    alongRatio: along ?? across ?? 0,
    acrossRatio: across ?? along ?? 0,
    assumed: along === null ? 'along' : across === null ? 'across' : null,
  };
}

/**
 * Length to have before the first wash so that needMm is left after it: need / (1 - shrinkage).
 * shrinkageRatio: 0 to below 1, else it throws.
 */
export function beforeWashMm(needMm: number, shrinkageRatio: number): number {
  if (!(shrinkageRatio >= 0 && shrinkageRatio < 1)) throw new RangeError(`a shrinkage of ${shrinkageRatio}`);
  return needMm / (1 - shrinkageRatio);
}

/** Of an area before the wash, the share that is left after it, above 0 to 1. */
export function areaLeftRatio({ alongRatio, acrossRatio }: Shrinkage): number {
  return (1 - alongRatio) * (1 - acrossRatio);
}
