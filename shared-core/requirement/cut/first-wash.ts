/**
 * The first wash of a slot's cloth or batting: before it is cut, so that its pieces are laid on what the wash leaves of
 * length and width, or as a part of the coat, so that its pieces are cut larger.
 */
import { codeWords } from '../../wording/code-words.ts';
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import type { Slot } from '../../plan/model/coat-plan.ts';
import {
  areaLeftRatio,
  type KnownShrinkage,
  noShrinkage,
  type Shrinkage,
  shrinkageOf,
} from '../../stash/shrinkage.ts';
import type { Item } from '../../stash/stash.ts';

export interface FirstWash extends KnownShrinkage {
  readonly isBeforeCutting: boolean;
}

/** A need, or a part of one, with the wash of what it is cut from; absent: it does not shrink, as far as is known. */
export interface Washed {
  readonly firstWash?: FirstWash;
}

/** Null where the item is not known to shrink: then it matters nothing when it is washed. */
export function firstWash(
  { isCutUnwashed }: Pick<Slot, 'isCutUnwashed'>,
  item: Item | undefined,
): FirstWash | null {
  const shrinkage = shrinkageOf(item);
  if (!shrinkage || (shrinkage.alongRatio === 0 && shrinkage.acrossRatio === 0)) return null;
  return { ...shrinkage, isBeforeCutting: !isCutUnwashed };
}

/** What cloth off the shelf has lost by the time that it is laid. */
export function lostBeforeCutting(wash: FirstWash | null | undefined): Shrinkage {
  if (!wash?.isBeforeCutting) return noShrinkage;
  const { alongRatio, acrossRatio } = wash;
  return { alongRatio, acrossRatio };
}

/** How many times as long and wide a piece is cut for a wash that is still to come: 1 and 1 where none is. */
export function growthForWash(wash: FirstWash | null | undefined): {
  readonly along: number;
  readonly across: number;
} {
  if (!wash || wash.isBeforeCutting) return { along: 1, across: 1 };
  return { along: 1 / (1 - wash.alongRatio), across: 1 / (1 - wash.acrossRatio) };
}

/** An area of what a need is cut from, mm2, as it was on the roll: its weight by area is that of unwashed cloth. */
export function unwashedMm2({ firstWash: wash }: Washed, areaMm2: number): number {
  return areaMm2 / areaLeftRatio(lostBeforeCutting(wash));
}

/** An area of what a need is cut from, mm2, once its first wash is over, whenever that is. */
export function afterWashMm2({ firstWash: wash }: Washed, areaMm2: number): number {
  return wash && !wash.isBeforeCutting ? areaMm2 * areaLeftRatio(wash) : areaMm2;
}

/** How the wash is in the figures of a need. */
export function washBasis({ isBeforeCutting, assumed }: FirstWash): Basis {
  const what = isBeforeCutting
    ? say('first-wash.washed-before-cutting-laid-on-the')
    : say('first-wash.cut-unwashed-each-piece-larger-by');
  if (assumed === null) return { kind: 'computed', how: what, source: '' };
  const other = assumed === 'across' ? 'along' : 'across';
  return {
    kind: 'rule of thumb',
    how: say('first-wash.how-much-it-shrinks-is-not', {
      what,
      assumed: codeWords(assumed),
      other: codeWords(other),
    }),
    source: say('common.common-practice-no-source'),
  };
}
