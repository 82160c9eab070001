/**
 * From a slot's shapes to the lay's question, and from its answer to words: the one place where coats meet the engine.
 */
import { lostBeforeCutting } from '../requirement/cut/first-wash.ts';
import type { ShapesNeed } from '../requirement/need.ts';
import { noShrinkage, type Shrinkage } from '../stash/shrinkage.ts';
import type { Item } from '../stash/stash.ts';
import type { LayJob, LayLength, LayResult } from './job.ts';
import { washedLength } from './washed.ts';

/** A lay of one slot: what was asked, what was found. Shape i of the job is shape i of the need. */
export interface SlotLay {
  readonly slotId: string;
  readonly job: LayJob;
  readonly result: LayResult;
  /**
   * Where the cloth is washed before it is cut: what each length of the job lost by that, nothing where it was washed
   * cloth already. The job's own measures are those of washed cloth. Absent: it is laid as it lies on the shelf.
   */
  readonly washed?: readonly Shrinkage[];
}

/** Runs a lay somewhere (inline, in a worker, in a thread) and resolves with a checked result. */
export type RunLay = (job: LayJob, what: string) => Promise<LayResult>;

/** Width that pieces may use before any wash: selvages off. */
export function usableWidthMm(widthMm: number, item: Item | undefined): number {
  const selvageMm = item?.kind === 'cloth' ? (item.facts.selvageMm ?? 0) : 0;
  return Math.max(0, widthMm - 2 * selvageMm);
}

/** An endless length to lay on, of the item's width, and what is left of it where it is washed first. */
export function endlessLength(
  id: string,
  widthMm: number,
  item: Item | undefined,
  lost: Shrinkage = noShrinkage,
): LayLength {
  return washedLength({ id, widthMm: usableWidthMm(widthMm, item), lengthMm: null, flaws: [] }, lost);
}

/** The part of a slot's lay that says what its lengths lost, for a need whose cloth is washed before it is cut. */
export function washedLay({ firstWash }: ShapesNeed, lost: readonly Shrinkage[]): Pick<SlotLay, 'washed'> {
  return firstWash?.isBeforeCutting ? { washed: lost } : {};
}

/** The lay's question for a need on the given lengths, which are as they are when it is laid; so is its repeat. */
export function layJob(
  need: ShapesNeed,
  lengths: readonly LayLength[],
  clearanceMm: number,
  item: Item | undefined,
  seed: number,
): LayJob {
  const lost = lostBeforeCutting(need.firstWash);
  const along = item?.kind === 'cloth' ? (item.facts.repeatAlongMm ?? 0) * (1 - lost.alongRatio) : 0;
  const across = item?.kind === 'cloth' ? (item.facts.repeatAcrossMm ?? 0) * (1 - lost.acrossRatio) : 0;
  return {
    shapes: need.shapes.map((shape) => ({
      id: shape.shapeId,
      ...(shape.size !== '' && { group: shape.size }),
      ring: shape.ring,
      count: shape.count,
      mirroredCount: shape.mirroredCount,
      turnsDeg: shape.turnsDeg,
      ...(along > 0 || across > 0 ? { match: { x: 0, y: 0, phaseX: 0, phaseY: 0 } } : {}),
    })),
    lengths,
    clearanceMm,
    spread: 'open',
    repeat: along > 0 || across > 0 ? { alongMm: along, acrossMm: across } : null,
    seed,
  };
}

/** Length used in all, mm as it is laid; of washed cloth see lay/washed.ts. */
export function totalUsedMm(result: LayResult): number {
  return result.usedLengthMm.reduce((sum, used) => sum + used, 0);
}

/** More pieces placed, or as many on less cloth. */
export function isBetterLay(one: LayResult, other: LayResult): boolean {
  const fewer = unplacedCount(other) - unplacedCount(one);
  return fewer === 0 ? totalUsedMm(one) < totalUsedMm(other) : fewer > 0;
}

function unplacedCount({ unplaced }: LayResult): number {
  return unplaced.reduce((sum, { count }) => sum + count, 0);
}
