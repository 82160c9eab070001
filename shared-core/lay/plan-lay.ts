/**
 * From a slot's shapes to the lay's question, and from its answer to words: the one place where coats meet the engine.
 */
import type { Item } from '../stash/stash.ts';
import type { ShapesNeed } from '../requirement/need.ts';
import type { LayJob, LayLength, LayResult } from './job.ts';

/** A lay of one slot: what was asked, what was found. Shape i of the job is shape i of the need. */
export interface SlotLay {
  readonly slotId: string;
  readonly job: LayJob;
  readonly result: LayResult;
}

/** Runs a lay somewhere (inline, in a worker, in a thread) and resolves with a checked result. */
export type RunLay = (job: LayJob, what: string) => Promise<LayResult>;

/** Width that pieces may use: selvages off. Crosswise shrinkage is in the shapes, which are cut larger. */
export function usableWidthMm(widthMm: number, item: Item | undefined): number {
  const selvageMm = item?.kind === 'cloth' ? (item.facts.selvageMm ?? 0) : 0;
  return Math.max(0, widthMm - 2 * selvageMm);
}

/** An endless length to lay on, of the item's width. */
export function endlessLength(id: string, widthMm: number, item: Item | undefined): LayLength {
  return { id, widthMm: usableWidthMm(widthMm, item), lengthMm: null, flaws: [] };
}

/** The lay's question for a need on the given lengths. */
export function layJob(
  need: ShapesNeed,
  lengths: readonly LayLength[],
  clearanceMm: number,
  item: Item | undefined,
  seed: number,
): LayJob {
  const along = item?.kind === 'cloth' ? (item.facts.repeatAlongMm ?? 0) : 0;
  const across = item?.kind === 'cloth' ? (item.facts.repeatAcrossMm ?? 0) : 0;
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

/** Length used in all, mm. */
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
