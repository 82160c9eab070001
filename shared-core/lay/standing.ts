/** How a piece stands among the others under the maker's hands: what is in its way where it lies. Cloth lies open. */
import { boxGapMm, ringGapMm } from '../geometry/gap.ts';
import { type Box, type Ring, ringBox, ringMoved, ringTurned } from '../geometry/ring.ts';
import { checkToleranceMm } from './check/check.ts';
import type { LayJob, LayRect, Placement } from './job.ts';

/** Outlines of a job in each way they lie, worked out once. */
export interface Outlines {
  /** Outline and box with the shape's own origin at 0, 0. */
  of(placement: Placement): { readonly ring: Ring; readonly box: Box };
}

export function outlinesOf(job: LayJob): Outlines {
  const known = new Map<string, { readonly ring: Ring; readonly box: Box }>();
  return {
    of({ shape, turnDeg, mirrored }) {
      const key = `${shape} ${turnDeg} ${mirrored}`;
      const there = known.get(key);
      if (there) return there;
      const ring = ringTurned(job.shapes[shape]!.ring, turnDeg, mirrored);
      const made = { ring, box: ringBox(ring) };
      known.set(key, made);
      return made;
    },
  };
}

/** Box of a piece on its length, mm. */
export function placedBox(outlines: Outlines, placement: Placement): Box {
  const { box } = outlines.of(placement);
  return {
    minX: box.minX + placement.x,
    maxX: box.maxX + placement.x,
    minY: box.minY + placement.y,
    maxY: box.maxY + placement.y,
  };
}

/** What is wrong with where one piece lies; all false and no neighbour when it may be cut so. */
export interface Standing {
  /** Beyond a selvage or an end of its length. */
  readonly isOutside: boolean;
  readonly isOnFlaw: boolean;
  readonly isOffRepeat: boolean;
  /** Indexes of pieces nearer than the clearance, and of those among them that it lies on. */
  readonly tooNear: readonly number[];
  readonly lyingOn: readonly number[];
  /** Distance to the nearest other piece, mm; null where none is within `seenMm`. */
  readonly nearestMm: number | null;
}

/** Distances to other pieces are told up to this, mm. */
export const seenMm = 60;

/** Does nothing keep the piece from being cut where it lies? */
export function isClear(standing: Standing): boolean {
  const { isOutside, isOnFlaw, isOffRepeat, tooNear } = standing;
  return !isOutside && !isOnFlaw && !isOffRepeat && tooNear.length === 0;
}

/** How the piece at `index` stands among the others. Cost: one look at each box, then edges of those near by. */
export function standingOf(
  job: LayJob,
  outlines: Outlines,
  placements: readonly Placement[],
  index: number,
): Standing {
  const boxes = placements.map((one) => placedBox(outlines, one));
  return standingAmong(job, outlines, placements, boxes, index, seenMm);
}

/** How every piece stands. Distances are told up to the clearance alone: that is what takes the time. */
export function allStandings(
  job: LayJob,
  outlines: Outlines,
  placements: readonly Placement[],
): readonly Standing[] {
  const boxes = placements.map((one) => placedBox(outlines, one));
  return placements.map((_, index) =>
    standingAmong(job, outlines, placements, boxes, index, job.clearanceMm),
  );
}

function standingAmong(
  job: LayJob,
  outlines: Outlines,
  placements: readonly Placement[],
  boxes: readonly Box[],
  index: number,
  lookMm: number,
): Standing {
  const toleranceMm = checkToleranceMm(job);
  const own = placements[index]!;
  const length = job.lengths[own.length]!;
  const box = boxes[index]!;
  const ring = ringMoved(outlines.of(own).ring, own.x, own.y);
  const tooNear: number[] = [];
  const lyingOn: number[] = [];
  let nearest = Infinity;
  for (let at = 0; at < placements.length; at++) {
    const other = placements[at]!;
    if (at === index || other.length !== own.length || boxGapMm(box, boxes[at]!) > lookMm) continue;
    const gap = ringGapMm(ring, ringMoved(outlines.of(other).ring, other.x, other.y), lookMm);
    nearest = Math.min(nearest, gap);
    if (gap === 0) lyingOn.push(at);
    if (gap < job.clearanceMm - toleranceMm || (gap === 0 && isDeep(job, outlines, own, other)))
      tooNear.push(at);
  }
  return {
    isOutside:
      box.minX < -toleranceMm ||
      box.minY < -toleranceMm ||
      box.maxX > (length.lengthMm ?? Infinity) + toleranceMm ||
      box.maxY > length.widthMm + toleranceMm,
    isOnFlaw: length.flaws.some((flaw) => isOnFlaw(ring, box, flaw, toleranceMm)),
    isOffRepeat: offRepeatMm(job, own) > toleranceMm,
    tooNear,
    lyingOn: lyingOn.filter((at) => tooNear.includes(at)),
    nearestMm: nearest <= seenMm ? nearest : null,
  };
}

/** Does it lie on more of a flaw than its edge? */
function isOnFlaw(ring: Ring, box: Box, { x, y, widthX, widthY }: LayRect, toleranceMm: number): boolean {
  const by = Math.min(toleranceMm, widthX / 2, widthY / 2);
  const toX = x + widthX - by;
  const toY = y + widthY - by;
  const flaw = Float64Array.of(x + by, y + by, toX, y + by, toX, toY, x + by, toY);
  return boxGapMm(box, ringBox(flaw)) === 0 && ringGapMm(ring, flaw) === 0;
}

/** Do two that touch share more than their edges? Asked only where no clearance is wanted. */
function isDeep(job: LayJob, outlines: Outlines, one: Placement, other: Placement): boolean {
  // Moved apart by twice the tolerance in one of four ways, what only touches is clear.
  const by = 2 * checkToleranceMm(job);
  const ring = ringMoved(outlines.of(one).ring, one.x, one.y);
  const { ring: second } = outlines.of(other);
  return [
    [by, 0],
    [-by, 0],
    [0, by],
    [0, -by],
  ].every(([dx, dy]) => ringGapMm(ring, ringMoved(second, other.x + dx!, other.y + dy!)) === 0);
}

/** How far a piece that must meet the pattern repeat is off it, mm. */
function offRepeatMm(job: LayJob, placement: Placement): number {
  const snapped = onRepeat(job, placement);
  return Math.hypot(snapped.x - placement.x, snapped.y - placement.y);
}

/** The nearest place on the pattern repeat, for a piece that must meet it. */
export function onRepeat(job: LayJob, placement: Placement): Placement {
  const match = job.shapes[placement.shape]!.match;
  if (!match || !job.repeat) return placement;
  const point = ringTurned(Float64Array.of(match.x, match.y), placement.turnDeg, placement.mirrored);
  const near = (value: number, step: number, phase: number, at: number) =>
    step === 0 ? value : phase - at + Math.round((value - phase + at) / step) * step;
  return {
    ...placement,
    x: near(placement.x, job.repeat.alongMm, match.phaseX, point[0]!),
    y: near(placement.y, job.repeat.acrossMm, match.phaseY, point[1]!),
  };
}
