/**
 * Thread for each unit length of seam, all threads of the stitch together, by stitch type of ISO 4915:
 * by table where only the type is known, by geometry where thickness and stitch length are known too.
 */
import { say } from '../../wording/say.ts';
import type { StitchType } from '../../plan/model/outline.ts';

export interface StitchThread {
  /** Metres of thread for each metre of seam. */
  readonly ratio: number;
  /** Share of it that goes through the needles; the rest is bobbin or looper. */
  readonly needleShareRatio: number;
  /** What carries the rest. */
  readonly under: 'bobbin' | 'looper' | 'none';
  /** Spools or cones that stand on the machine at once; a bobbin is wound from the spool of its needle. */
  readonly coneCount: number;
}

/**
 * About 7 stitches to the cm, ordinary cloth. Source: thread maker's consumption guide for the types of ISO 4915,
 * from memory; 2.5 and the split of 401 seen second hand. `hand` is a running or slip stitch with its tails:
 * common practice, no source. Units: m of thread for each m of seam. Cones: one for each needle and each looper or
 * cover thread, by the definitions of ISO 4915.
 */
export const stitchThreads: Readonly<Record<StitchType, StitchThread>> = {
  '301': { ratio: 2.5, needleShareRatio: 0.5, under: 'bobbin', coneCount: 1 },
  '304': { ratio: 7, needleShareRatio: 0.5, under: 'bobbin', coneCount: 1 },
  '401': { ratio: 5.5, needleShareRatio: 0.25, under: 'looper', coneCount: 2 },
  '503': { ratio: 12, needleShareRatio: 0.55, under: 'looper', coneCount: 2 },
  '504': { ratio: 14, needleShareRatio: 0.2, under: 'looper', coneCount: 3 },
  '516': { ratio: 20, needleShareRatio: 0.2, under: 'looper', coneCount: 5 },
  '605': { ratio: 28, needleShareRatio: 0.3, under: 'looper', coneCount: 5 },
  hand: { ratio: 2, needleShareRatio: 1, under: 'none', coneCount: 1 },
};

/** Where the table comes from, as shown beside a figure. */
export const stitchThreadSource = () => say('thread-ratios.thread-maker-s-guide-to-stitch');

/**
 * Usual length of one stitch, mm. Source: vandcdesign.com (most sewing 2.0 to 2.5, topstitching 3.0 to 3.5); quilting
 * lines have their own in the plan.
 */
export const defaultStitchMm = { seam: 2.5, topstitching: 3 } as const;

/**
 * Thread for each unit of seam by the path of the thread, or null for types without a formula here.
 * thicknessMm: sewn seam, compressed, 0 or more. stitchMm: length of one stitch, above 0. biteMm: width of the
 * overedge or cover stitch, 0 or more; lockstitch and chainstitch do without it. Thread diameter is neglected: a floor.
 * Source: textilecalculations.com (301, 401, 504); thread consumption booklet of a machine maker (516, 605).
 */
export function threadRatioByGeometry(
  stitch: StitchType,
  thicknessMm: number,
  stitchMm: number,
  biteMm: number,
): number | null {
  if (!(stitchMm > 0)) throw new RangeError(`stitches of ${stitchMm} mm`);
  if (!(thicknessMm >= 0) || !(biteMm >= 0))
    throw new RangeError(`a seam ${thicknessMm} mm thick, bite ${biteMm} mm`);
  const t = thicknessMm / stitchMm;
  const w = biteMm / stitchMm;
  switch (stitch) {
    case '301':
      return 2 + 2 * t;
    case '401':
      return 4 + 2 * t;
    case '504':
      return 3 + 4 * (w + t);
    case '516':
      return 9 + 2 * (2 * w + 3 * t);
    case '605':
      return 10 + 2 * (2 * w + 3 * t);
    case '304':
    case '503':
    case 'hand':
      return null;
    default:
      return stitch satisfies never;
  }
}

/** Thread of a seam split over needle and bobbin or looper, in the unit of threadM. */
export function threadSplit(stitch: StitchType, threadM: number): { needleM: number; underM: number } {
  const needleM = threadM * stitchThreads[stitch].needleShareRatio;
  return { needleM, underM: threadM - needleM };
}

/**
 * Spools for an amount of thread, rounded up, and no fewer than stand on the machine at once; 0 for no thread.
 * Throws when a spool holds nothing.
 */
export function spoolCount(threadM: number, spoolM: number, coneCount = 1): number {
  if (!(spoolM > 0)) throw new RangeError(`a spool of ${spoolM} m`);
  // A thousandth of a metre too much is rounding, not a reason for one more spool.
  const filled = Math.max(0, Math.ceil((threadM - 0.001) / spoolM));
  return filled === 0 ? 0 : Math.max(filled, coneCount);
}
