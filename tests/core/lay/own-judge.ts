/**
 * A judge of lays in plain arithmetic, for the tests of the check: it turns each outline itself, measures from edge to
 * edge, and uses neither the engine's geometry nor the library of the check.
 */
import type { LayJob, LayResult, Placement } from '../../../shared-core/lay/job.ts';

type Spot = readonly [number, number];

export interface Judgement {
  /** The least distance between two pieces on one length, mm; below 0 as deep as a corner of one lies in the other. */
  readonly minGapMm: number;
  /** How far the piece that passes a border or an end most does so, mm. */
  readonly maxOutsideMm: number;
  /** For each shape how often it is laid as drawn and mirrored. */
  readonly laid: readonly (readonly [asDrawn: number, mirrored: number])[];
}

/** The outline of a placement on its length. */
function laidSpots(job: LayJob, placement: Placement): Spot[] {
  const shape = job.shapes[placement.shape]!;
  const outline = placement.onFold ? shape.foldRing! : shape.ring;
  const angle = (placement.turnDeg * Math.PI) / 180;
  const quarter = placement.turnDeg % 90 === 0;
  const cos = quarter ? Math.round(Math.cos(angle)) : Math.cos(angle);
  const sin = quarter ? Math.round(Math.sin(angle)) : Math.sin(angle);
  const spots: Spot[] = [];
  for (let i = 0; i < outline.length; i += 2) {
    const x = outline[i]!;
    const y = placement.mirrored ? -outline[i + 1]! : outline[i + 1]!;
    spots.push([x * cos - y * sin + placement.x, x * sin + y * cos + placement.y]);
  }
  return spots;
}

function toEdge([px, py]: Spot, [ax, ay]: Spot, [bx, by]: Spot): number {
  const [ux, uy] = [bx - ax, by - ay];
  const squared = ux * ux + uy * uy;
  const along = squared === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * ux + (py - ay) * uy) / squared));
  return Math.hypot(px - ax - along * ux, py - ay - along * uy);
}

function isInside([px, py]: Spot, outline: readonly Spot[]): boolean {
  let inside = false;
  outline.forEach(([bx, by], index) => {
    const [ax, ay] = outline.at(index - 1)!;
    if (ay > py !== by > py && px < ax + ((py - ay) / (by - ay)) * (bx - ax)) inside = !inside;
  });
  return inside;
}

/** Least distance of a corner of one to the outline of the other; minus the deepest where one lies inside. */
function cornersToOutline(corners: readonly Spot[], outline: readonly Spot[]): number {
  let min = Infinity;
  for (const corner of corners) {
    let near = Infinity;
    outline.forEach((end, index) => {
      near = Math.min(near, toEdge(corner, outline.at(index - 1)!, end));
    });
    min = Math.min(min, isInside(corner, outline) ? -near : near);
  }
  return min;
}

/** Crossing edges without a corner inside, as two crossed bars: how far along the nearest corner lies. */
function crossingDepth(one: readonly Spot[], two: readonly Spot[]): number {
  let deepest = 0;
  one.forEach((b, i) => {
    const a = one.at(i - 1)!;
    two.forEach((d, j) => {
      const c = two.at(j - 1)!;
      const side = ([px, py]: Spot, [qx, qy]: Spot, [x, y]: Spot) =>
        (qx - px) * (y - py) - (qy - py) * (x - px);
      if (side(a, b, c) * side(a, b, d) >= 0 || side(c, d, a) * side(c, d, b) >= 0) return;
      deepest = Math.max(
        deepest,
        Math.min(toEdge(a, c, d), toEdge(b, c, d), toEdge(c, a, b), toEdge(d, a, b)),
      );
    });
  });
  return deepest;
}

export function judged(job: LayJob, result: LayResult): Judgement {
  const pieces = result.placements.map((placement) => ({ placement, spots: laidSpots(job, placement) }));
  let minGapMm = Infinity;
  let maxOutsideMm = 0;
  pieces.forEach(({ placement, spots }, index) => {
    const length = job.lengths[placement.length]!;
    const widthMm = job.spread === 'folded' ? length.widthMm / 2 : length.widthMm;
    for (const [x, y] of spots) {
      maxOutsideMm = Math.max(maxOutsideMm, -x, -y, y - widthMm, x - (length.lengthMm ?? Infinity));
    }
    for (const other of pieces.slice(0, index)) {
      if (other.placement.length !== placement.length) continue;
      const gap = Math.min(cornersToOutline(spots, other.spots), cornersToOutline(other.spots, spots));
      minGapMm = Math.min(minGapMm, gap, -crossingDepth(spots, other.spots) || Infinity);
    }
  });
  const laid = job.shapes.map((_, shape) => {
    const own = result.placements.filter((placement) => placement.shape === shape);
    const mirrored = own.filter((placement) => placement.mirrored).length;
    return [own.length - mirrored, mirrored] as const;
  });
  return { minGapMm, maxOutsideMm, laid };
}
