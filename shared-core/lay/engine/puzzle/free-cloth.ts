/** The cloth that no piece of a puzzle covers yet, and its corners, each of which some piece must fill. */
import { ringsWithout } from '../../../geometry/boolean.ts';
import { type Ring, ringAreaMm2 } from '../../../geometry/ring.ts';
import { fullTurn, type Likeness, WIDE } from './puzzle-pieces.ts';

/** Outer boundaries counter-clockwise, holes clockwise. */
export interface FreeCloth {
  readonly rings: readonly Ring[];
  readonly area: number;
}

/** A corner of the free cloth that bulges. */
export interface FreeCorner {
  readonly x: number;
  readonly y: number;
  /** Of the edge that leaves it, and the angle inside the cloth, rad; lengths of the edges that leave and reach it. */
  readonly direction: number;
  readonly angle: number;
  readonly after: number;
  readonly before: number;
  /** Whether these edges end at a bulging corner, beyond which no piece along them can reach. */
  readonly stopsAfter: boolean;
  readonly stopsBefore: boolean;
  /** How far apart two directions may be here and still be the same: short edges are not so sure, rad. */
  readonly alike: number;
}

export function rectangle(long: number): FreeCloth {
  return { rings: [Float64Array.of(0, 0, long, 0, long, WIDE, 0, WIDE)], area: long * WIDE };
}

/** piece: with a hair around it. */
export function clothWithout({ rings }: FreeCloth, piece: Ring, sliver: number): FreeCloth {
  const left = ringsWithout(rings, piece)
    .map((ring) => withoutSlivers(ring, sliver))
    .filter((ring) => ring.length >= 6);
  return { rings: left, area: left.reduce((sum, ring) => sum + ringAreaMm2(ring), 0) };
}

/** Is there a part that is smaller than this? */
export function hasPartUnder({ rings }: FreeCloth, least: number): boolean {
  return rings.some((ring) => {
    const area = ringAreaMm2(ring);
    return area > 0 && area < least;
  });
}

function withoutSlivers(ring: Ring, sliver: number): Ring {
  const points = Array.from(ring);
  const isSliver = (i: number): boolean => {
    const count = points.length;
    const x = points[i]!;
    const y = points[i + 1]!;
    const lastX = points[(i + count - 2) % count]!;
    const lastY = points[(i + count - 1) % count]!;
    const nextX = points[(i + 2) % count]!;
    const nextY = points[(i + 3) % count]!;
    const before = Math.hypot(x - lastX, y - lastY);
    const after = Math.hypot(nextX - x, nextY - y);
    if (before < sliver || after < sliver) return true;
    const twice = Math.abs((x - lastX) * (nextY - lastY) - (y - lastY) * (nextX - lastX));
    return twice < sliver * Math.max(before, after, Math.hypot(nextX - lastX, nextY - lastY));
  };
  for (let unchanged = 0, i = 0; unchanged < points.length && points.length >= 6; ) {
    if (i >= points.length) i = 0;
    if (isSliver(i)) {
      points.splice(i, 2);
      unchanged = 0;
    } else {
      i += 2;
      unchanged += 2;
    }
  }
  return points.length < 6 ? new Float64Array() : Float64Array.from(points);
}

/** All corners that bulge: every one of them is to be filled by a corner of some piece that lies along its edges. */
export function freeCorners({ rings }: FreeCloth, { alike, straight, sliver }: Likeness): FreeCorner[] {
  const corners: FreeCorner[] = [];
  for (const ring of rings) {
    const count = ring.length;
    const bends: number[] = [];
    for (let i = 0; i < count; i += 2) bends.push(insideAngle(ring, i));
    for (let i = 0, k = 0; i < count; i += 2, k++) {
      if (bends[k]! > Math.PI - straight) continue;
      const dx = ring[(i + 2) % count]! - ring[i]!;
      const dy = ring[(i + 3) % count]! - ring[i + 1]!;
      const after = Math.hypot(dx, dy);
      const before = Math.hypot(
        ring[i]! - ring[(i + count - 2) % count]!,
        ring[i + 1]! - ring[(i + count - 1) % count]!,
      );
      corners.push({
        x: ring[i]!,
        y: ring[i + 1]!,
        direction: Math.atan2(dy, dx),
        angle: bends[k]!,
        after,
        before,
        stopsAfter: bends[(k + 1) % bends.length]! < Math.PI - straight,
        stopsBefore: bends.at(k - 1)! < Math.PI - straight,
        alike: Math.max(alike, (3 * sliver) / Math.min(after, before)),
      });
    }
  }
  return corners;
}

function insideAngle(ring: Ring, i: number): number {
  const count = ring.length;
  const out = Math.atan2(ring[(i + 3) % count]! - ring[i + 1]!, ring[(i + 2) % count]! - ring[i]!);
  const back = Math.atan2(
    ring[(i + count - 1) % count]! - ring[i + 1]!,
    ring[(i + count - 2) % count]! - ring[i]!,
  );
  return fullTurn(back - out);
}
