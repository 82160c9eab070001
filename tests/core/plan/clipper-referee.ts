/** A referee for cut lines that shares no code with them: booleans by the older clipper-lib, on 1/1000 mm. */
import ClipperLib from 'clipper-lib';
import type { Point, Ring } from '../../../shared-core/geometry/ring.ts';

const scale = 1000;

function toPath(ring: Ring): { X: number; Y: number }[] {
  return Array.from({ length: ring.length / 2 }, (_, i) => ({
    X: Math.round(ring[2 * i]! * scale),
    Y: Math.round(ring[2 * i + 1]! * scale),
  }));
}

/** mm2 of a ring that lies outside another. */
export function areaOutside(ring: Ring, outer: Ring): number {
  const clipper = new ClipperLib.Clipper();
  clipper.AddPath(toPath(ring), ClipperLib.PolyType.ptSubject, true);
  clipper.AddPath(toPath(outer), ClipperLib.PolyType.ptClip, true);
  const solution: { X: number; Y: number }[][] = [];
  const nonZero = ClipperLib.PolyFillType.pftNonZero;
  clipper.Execute(ClipperLib.ClipType.ctDifference, solution, nonZero, nonZero);
  return Math.abs(solution.reduce((sum, path) => sum + ClipperLib.Clipper.Area(path), 0)) / scale ** 2;
}

/** Outer boundary of the largest part of a union; holes in it are filled. */
export function unionRing(rings: readonly Ring[]): Ring {
  const clipper = new ClipperLib.Clipper();
  for (const ring of rings)
    if (ring.length > 4) clipper.AddPath(toPath(ring), ClipperLib.PolyType.ptSubject, true);
  const solution: { X: number; Y: number }[][] = [];
  const nonZero = ClipperLib.PolyFillType.pftNonZero;
  clipper.Execute(ClipperLib.ClipType.ctUnion, solution, nonZero, nonZero);
  const [largest] = solution.sort((a, b) => ClipperLib.Clipper.Area(b) - ClipperLib.Clipper.Area(a));
  return Float64Array.from((largest ?? []).flatMap(({ X, Y }) => [X / scale, Y / scale]));
}

/** The strip outside (right of) a side, depthMm deep; counter-clockwise. */
export function strip(from: Point, to: Point, depthMm: number): Ring {
  return trimmedStrip(to, from, to, from, { before: 0, own: depthMm, after: 0 });
}

/** The same, ending at a neighbour's cut line where that neighbour turns outwards, as a mitre does. */
export function trimmedStrip(
  before: Point,
  from: Point,
  to: Point,
  after: Point,
  depthsMm: { readonly before: number; readonly own: number; readonly after: number },
): Ring {
  const own = outward(from, to);
  let points: Point[] = [
    from,
    { x: from.x + own.x * depthsMm.own, y: from.y + own.y * depthsMm.own },
    { x: to.x + own.x * depthsMm.own, y: to.y + own.y * depthsMm.own },
    to,
  ];
  const a = outward(before, from);
  if (a.x * own.y - a.y * own.x > 0) points = keptBehind(points, from, a, depthsMm.before);
  const b = outward(to, after);
  if (own.x * b.y - own.y * b.x > 0) points = keptBehind(points, to, b, depthsMm.after);
  return Float64Array.from(points.flatMap(({ x, y }) => [x, y]));
}

function outward(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
}

/** What is left of a convex polygon on the near side of a line, `beyond` past `origin` in the direction given. */
function keptBehind(points: readonly Point[], origin: Point, direction: Point, beyond: number): Point[] {
  const over = (point: Point) =>
    (point.x - origin.x) * direction.x + (point.y - origin.y) * direction.y - beyond;
  return points.flatMap((point, index) => {
    const next = points[(index + 1) % points.length]!;
    const here = over(point);
    const there = over(next);
    const kept = here <= 0 ? [point] : [];
    if (here <= 0 === there <= 0) return kept;
    const share = here / (here - there);
    return [...kept, { x: point.x + (next.x - point.x) * share, y: point.y + (next.y - point.y) * share }];
  });
}

/** A polygon of 180 corners that holds the disc. */
export function discRing(centre: Point, radiusMm: number): Ring {
  const outer = radiusMm / Math.cos(Math.PI / 180);
  return Float64Array.from(
    Array.from({ length: 180 }, (_, i) => (i * Math.PI) / 90).flatMap((turn) => [
      centre.x + outer * Math.cos(turn),
      centre.y + outer * Math.sin(turn),
    ]),
  );
}
