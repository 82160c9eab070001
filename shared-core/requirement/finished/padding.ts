/** What padding takes from the girth, how many sizes that is, and the ease that is left at each place. */
import { say } from '../../wording/say.ts';
import type { Basis } from '../../measure/basis.ts';
import { ok, type Result, err } from '../../measure/problem.ts';
import type { SizeRow, SizeTable } from './size-tables.ts';

/** Share of a batting's loft that is left as worn, pressed by cloth and lines: common practice, no source. */
export const wornLoftRatio = 0.5;

/**
 * Thickness of layered padding as worn, mm: plies x loft x the share that is left. All 0 or more, the share at most 1.
 * Throws outside these. The share is a rule of thumb.
 */
export function effectiveThicknessMm(plyCount: number, loftMm: number, leftRatio: number): number {
  if (!(plyCount >= 0) || !(loftMm >= 0) || !(leftRatio >= 0 && leftRatio <= 1)) {
    throw new RangeError(`${plyCount} plies of ${loftMm} mm, ${leftRatio} of it left`);
  }
  return plyCount * loftMm * leftRatio;
}

/**
 * Girth that the padding takes from the wearer, all round.
 *
 * thicknessMm: effective, as worn, the average and not the peak; 0 or more. Returns mm, unrounded.
 * Negative or non-finite thickness is a programmer's mistake and throws.
 * Source: circumference of a circle, 2 pi t; holds for an even layer on a convex girth.
 */
export function girthTakenMm(thicknessMm: number): number {
  if (!(thicknessMm >= 0) || !Number.isFinite(thicknessMm))
    throw new RangeError(`padding of ${thicknessMm} mm`);
  return 2 * Math.PI * thicknessMm;
}

export interface SizesUp {
  readonly sizeCount: number;
  readonly size: string;
  /** What the larger size gives at the bust beyond what the padding takes, mm, 0 or more. */
  readonly spareMm: number;
  readonly basis: Basis;
}

/**
 * The least number of sizes to go up so that the bust grows by what the padding takes.
 * A size that the table does not have, and a girth beyond its end, are problems.
 */
export function sizesToGoUp(table: Omit<SizeTable, 'id'>, size: string, takenMm: number): Result<SizesUp> {
  const at = table.rows.findIndex((row) => row.size === size);
  const from = table.rows[at];
  if (!from) {
    return err({
      where: say('padding.size', { size }),
      what: say('padding.is-not-in-the-table', { tableLabel: table.label }),
      fix: say('padding.choose-one-of', { rows: table.rows.map((row) => row.size).join(', ') }),
    });
  }
  // Less than a tenth of a millimetre short is rounding of the table.
  const next = table.rows.findIndex((row, index) => index >= at && row.bustMm - from.bustMm >= takenMm - 0.1);
  const to: SizeRow | undefined = table.rows[next];
  if (!to) {
    return err({
      where: say('padding.size', { size }),
      what: say('padding.has-no-size-above-it-in'),
      fix: say('padding.use-thinner-padding-or-draft-the'),
    });
  }
  return ok({
    sizeCount: next - at,
    size: to.size,
    spareMm: Math.max(0, to.bustMm - from.bustMm - takenMm),
    basis: {
      kind: 'computed',
      how: say('padding.grade-steps-of-the-bust-until'),
      source: table.source,
    },
  });
}

export type EasePlace = 'bust' | 'waist' | 'hip' | 'upper arm';

export interface EaseAsked {
  readonly place: EasePlace;
  readonly bodyMm: number;
  /** Girth of the pattern at the seam line. */
  readonly garmentMm: number;
  readonly thicknessMm: number;
}

export interface EaseLeft {
  readonly place: EasePlace;
  readonly draftedMm: number;
  readonly takenMm: number;
  /** Drafted less taken; below 0 the coat does not close. */
  readonly leftMm: number;
  readonly words: string;
  readonly basis: Basis;
}

/**
 * Upper limits of ease at the bust, in inches, and what such a coat is like inside. All from one chart, that of the
 * large pattern companies: dresses close-fitting to 2 7/8 and fitted from 3, jackets fitted from 3 3/4 and semi-fitted
 * from 4 3/8, coats fitted from 5 1/4, semi-fitted from 6 7/8, loose from 8 1/8 and very loose over 12; from memory.
 */
const easeWords: readonly { readonly belowIn: number; readonly words: string }[] = [
  {
    belowIn: 0,
    get words() {
      return say('padding.does-not-close');
    },
  },
  {
    belowIn: 3,
    get words() {
      return say('padding.as-close-as-a-close-fitting');
    },
  },
  {
    belowIn: 3.75,
    get words() {
      return say('padding.as-close-as-a-fitted-dress');
    },
  },
  {
    belowIn: 4.375,
    get words() {
      return say('padding.a-fitted-jacket');
    },
  },
  {
    belowIn: 5.25,
    get words() {
      return say('padding.a-semi-fitted-jacket');
    },
  },
  {
    belowIn: 6.875,
    get words() {
      return say('padding.a-fitted-coat');
    },
  },
  {
    belowIn: 8.125,
    get words() {
      return say('padding.a-semi-fitted-coat');
    },
  },
  {
    belowIn: 12,
    get words() {
      return say('padding.a-loose-coat');
    },
  },
  {
    belowIn: Number.POSITIVE_INFINITY,
    get words() {
      return say('padding.a-very-loose-coat');
    },
  },
];

/** An arm is about half as easy as a body for the same fit: common practice, no source. */
const upperArmEaseShare = 0.5;

/** Ease left inside the padding at each place, in mm and in words. Girths above 0, thickness 0 or more, else it throws. */
export function easeLeft(asked: readonly EaseAsked[]): readonly EaseLeft[] {
  return asked.map(({ place, bodyMm, garmentMm, thicknessMm }) => {
    if (!(bodyMm > 0) || !(garmentMm > 0))
      throw new RangeError(`${place} of ${bodyMm} mm in ${garmentMm} mm`);
    const draftedMm = garmentMm - bodyMm;
    const takenMm = girthTakenMm(thicknessMm);
    const leftMm = draftedMm - takenMm;
    const likeBustIn = leftMm / 25.4 / (place === 'upper arm' ? upperArmEaseShare : 1);
    const words = easeWords.find((row) => likeBustIn < row.belowIn)!.words;
    return {
      place,
      draftedMm,
      takenMm,
      leftMm,
      words,
      basis: {
        kind: 'rule of thumb',
        how: say('padding.ease-drafted-less-2-pi-t'),
        source: say('padding.ease-chart-of-the-large-pattern'),
      },
    };
  });
}
