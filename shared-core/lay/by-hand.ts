/**
 * A lay as a maker lays it: pieces moved, turned, exchanged and pinned one by one, each step a new lay. What is in the
 * way is told, not prevented; whether the lay may be cut is for the independent check (check.ts) to say.
 * Cloth lies open: that is how plans ask for lays.
 */
import { ringAreaMm2 } from '../geometry/ring.ts';
import type { LayJob, LayResult, Placement } from './job.ts';
import { onRepeat, type Outlines, placedBox, standingOf } from './standing.ts';

/** A lay under the maker's hands. Pieces keep their index from step to step. */
export interface HandLay {
  readonly placements: readonly Placement[];
  /** Indexes of the pieces that stay where they lie. */
  readonly pinned: ReadonlySet<number>;
  /** Pieces that lie on no length yet. */
  readonly aside: LayResult['unplaced'];
}

export function handLayOf({ placements, unplaced }: LayResult): HandLay {
  return { placements, pinned: new Set(), aside: unplaced };
}

/** The nearest place within the usable width and the ends of the length. */
export function withinCloth(job: LayJob, outlines: Outlines, placement: Placement): Placement {
  const { box } = outlines.of(placement);
  const { lengthMm, widthMm } = job.lengths[placement.length]!;
  const within = (value: number, low: number, high: number, max: number) =>
    Math.max(-low, Math.min(value, max - high));
  return {
    ...placement,
    x: within(placement.x, box.minX, box.maxX, lengthMm ?? Infinity),
    y: within(placement.y, box.minY, box.maxY, widthMm),
  };
}

function withPiece(lay: HandLay, index: number, placement: Placement): HandLay {
  return { ...lay, placements: lay.placements.map((one, at) => (at === index ? placement : one)) };
}

/** Moved to where its shape's origin is at x, y of a length, or to the nearest place on the cloth and the repeat. */
export function moved(
  job: LayJob,
  outlines: Outlines,
  lay: HandLay,
  index: number,
  to: { readonly length: number; readonly x: number; readonly y: number },
): HandLay {
  if (lay.pinned.has(index)) return lay;
  const placement = { ...lay.placements[index]!, ...to };
  return withPiece(lay, index, onRepeat(job, withinCloth(job, outlines, placement)));
}

/** Turned to the next turn that its grain allows, about the centre of its box. The same lay where there is no other. */
export function turned(job: LayJob, outlines: Outlines, lay: HandLay, index: number): HandLay {
  const placement = lay.placements[index]!;
  const { turnsDeg } = job.shapes[placement.shape]!;
  if (lay.pinned.has(index) || turnsDeg.length < 2) return lay;
  const turnDeg = turnsDeg[(turnsDeg.indexOf(placement.turnDeg) + 1) % turnsDeg.length]!;
  const after = centredAt(outlines, { ...placement, turnDeg }, centreOf(outlines, placement));
  return withPiece(lay, index, onRepeat(job, withinCloth(job, outlines, after)));
}

interface Centre {
  readonly length: number;
  readonly x: number;
  readonly y: number;
}

function centreOf(outlines: Outlines, placement: Placement): Centre {
  const box = placedBox(outlines, placement);
  return { length: placement.length, x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
}

function centredAt(outlines: Outlines, placement: Placement, centre: Centre): Placement {
  const { box } = outlines.of(placement);
  return {
    ...placement,
    length: centre.length,
    x: centre.x - (box.minX + box.maxX) / 2,
    y: centre.y - (box.minY + box.maxY) / 2,
  };
}

/** Two pieces with their places exchanged, each centred where the other was. The same lay where one is pinned. */
export function exchanged(
  job: LayJob,
  outlines: Outlines,
  lay: HandLay,
  first: number,
  second: number,
): HandLay {
  if (first === second || lay.pinned.has(first) || lay.pinned.has(second)) return lay;
  const [one, other] = [lay.placements[first]!, lay.placements[second]!];
  const settle = (placement: Placement) => onRepeat(job, withinCloth(job, outlines, placement));
  const lifted = withPiece(lay, first, settle(centredAt(outlines, one, centreOf(outlines, other))));
  return withPiece(lifted, second, settle(centredAt(outlines, other, centreOf(outlines, one))));
}

export function pinnedOrNot(lay: HandLay, index: number): HandLay {
  const pinned = new Set(lay.pinned);
  if (!pinned.delete(index)) pinned.add(index);
  return { ...lay, pinned };
}

/** A slide ends this near to where it would be too near, mm; its steps are that fine. */
const slideHairMm = 0.005;

/**
 * Slid in one direction (-1, 0 or 1 along and across) until it meets a piece, a flaw or the edge of the cloth; where
 * something is in its way from the first, it stays. On a pattern repeat it goes step by step of the repeat.
 */
export function slid(
  job: LayJob,
  outlines: Outlines,
  lay: HandLay,
  index: number,
  direction: { readonly x: number; readonly y: number },
): HandLay {
  if (lay.pinned.has(index)) return lay;
  const from = lay.placements[index]!;
  const at = (byMm: number): Placement => ({
    ...from,
    x: from.x + direction.x * byMm,
    y: from.y + direction.y * byMm,
  });
  const isFree = (byMm: number) => {
    const placements = lay.placements.map((one, k) => (k === index ? at(byMm) : one));
    const { isOutside, isOnFlaw, tooNear } = standingOf(job, outlines, placements, index);
    return !isOutside && !isOnFlaw && tooNear.length === 0;
  };
  const must = job.shapes[from.shape]!.match && job.repeat;
  const repeatMm = must ? (direction.x === 0 ? job.repeat!.acrossMm : job.repeat!.alongMm) : 0;
  let byMm = 0;
  // Steps shorter than any piece that could be jumped over.
  for (let step = repeatMm || 8; step >= (repeatMm || slideHairMm); step /= 4) {
    while (byMm + step < farMm && isFree(byMm + step)) byMm += step;
  }
  return byMm === 0 ? lay : withPiece(lay, index, at(byMm));
}

/** No cloth is longer. */
const farMm = 100_000;

/** The lay as an answer to its job: what it uses of each length and how well. */
export function handResult(job: LayJob, outlines: Outlines, lay: HandLay, floorMm: number): LayResult {
  const usedLengthMm = job.lengths.map(() => 0);
  let laidMm2 = 0;
  for (const placement of lay.placements) {
    const reached = placedBox(outlines, placement).maxX;
    usedLengthMm[placement.length] = Math.max(usedLengthMm[placement.length]!, reached);
    laidMm2 += ringAreaMm2(outlines.of(placement).ring);
  }
  const usedMm2 = job.lengths.reduce((sum, { widthMm }, at) => sum + widthMm * usedLengthMm[at]!, 0);
  return {
    placements: lay.placements,
    unplaced: lay.aside,
    usedLengthMm,
    utilisation: usedMm2 === 0 ? 0 : Math.min(1, laidMm2 / usedMm2),
    floorMm,
    seed: job.seed,
    iterations: 0,
    seconds: 0,
    stoppedBy: 'by hand',
  };
}

/** The question that lets the search lay all but the pinned pieces anew. */
export function finishJob(job: LayJob, lay: HandLay, seed: number): LayJob {
  return { ...job, seed, held: [...lay.pinned].map((index) => lay.placements[index]!) };
}

/** The lay that the search answered with; what was pinned still is. */
export function finishedLay(job: LayJob, result: LayResult): HandLay {
  const heldCount = job.held?.length ?? 0;
  const free = result.placements.filter((one) => !job.held?.some((held) => isSamePlace(held, one)));
  return {
    placements: [...(job.held ?? []), ...free],
    pinned: new Set(Array.from({ length: heldCount }, (_, index) => index)),
    aside: result.unplaced,
  };
}

function isSamePlace(one: Placement, other: Placement): boolean {
  return (
    one.shape === other.shape &&
    one.length === other.length &&
    one.x === other.x &&
    one.y === other.y &&
    one.turnDeg === other.turnDeg &&
    one.mirrored === other.mirrored
  );
}
