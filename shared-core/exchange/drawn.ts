/**
 * A piece as a file draws it, before it becomes one of the plan's: paths in the file's own unit and direction,
 * y up, open or closed, by what each line means.
 */
import { cubicChords } from '../geometry/curve.ts';
import { type Point, type Ring, ringAreaMm2, ringFromPoints } from '../geometry/ring.ts';
import type { Segment } from '../plan/outline.ts';

export interface DrawnPath {
  readonly start: Point;
  readonly segments: readonly Segment[];
  /** True: its last segment ends in its start. */
  readonly isClosed: boolean;
  /** Line of the file where it begins, from 1. */
  readonly line: number;
}

export interface DrawnPiece {
  readonly key: string;
  readonly line: number;
  /** Texts of the file by key in lower case: "piece name", "size", "quantity", "material", "category", "annotation". */
  readonly texts: ReadonlyMap<string, string>;
  /** Closed. */
  readonly boundary: DrawnPath;
  readonly sewLines: readonly DrawnPath[];
  readonly mirror: readonly [Point, Point] | null;
  /** From its foot to its head; turned to run along x. */
  readonly grain: readonly [Point, Point] | null;
  readonly turnPoints: readonly Point[];
  readonly notches: readonly Point[];
}

/** x' = a x + c y + e, y' = b x + d y + f, in the order that SVG writes them. */
export type Matrix = readonly [number, number, number, number, number, number];

export const unmoved: Matrix = [1, 0, 0, 1, 0, 0];

/** The matrix that does `inner` first and then `outer`. */
export function product(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

export function movedPoint([a, b, c, d, e, f]: Matrix, { x, y }: Point): Point {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

export function movedPath(matrix: Matrix, path: DrawnPath): DrawnPath {
  const move = (point: Point) => movedPoint(matrix, point);
  return {
    ...path,
    start: move(path.start),
    segments: path.segments.map((segment) =>
      segment.kind === 'line'
        ? { kind: 'line', to: move(segment.to) }
        : {
            kind: 'cubic',
            control1: move(segment.control1),
            control2: move(segment.control2),
            to: move(segment.to),
          },
    ),
  };
}

export function pathEnd(path: DrawnPath): Point {
  return path.segments.at(-1)?.to ?? path.start;
}

/** Its points, the first included and, for a closed path, repeated at the end. */
export function pathPoints(path: DrawnPath, tolerance: number): Point[] {
  const points = [path.start];
  for (const segment of path.segments) {
    if (segment.kind === 'line') points.push(segment.to);
    else
      points.push(...cubicChords(points.at(-1)!, segment.control1, segment.control2, segment.to, tolerance));
  }
  return points;
}

export function pathRing(path: DrawnPath, tolerance: number): Ring {
  return ringFromPoints(pathPoints(path, tolerance).slice(0, -1));
}

export function reversedPath(path: DrawnPath): DrawnPath {
  const segments: Segment[] = [];
  for (let i = path.segments.length - 1; i >= 0; i--) {
    const segment = path.segments[i]!;
    const to = i === 0 ? path.start : path.segments[i - 1]!.to;
    segments.push(
      segment.kind === 'line'
        ? { kind: 'line', to }
        : { kind: 'cubic', control1: segment.control2, control2: segment.control1, to },
    );
  }
  return { ...path, start: pathEnd(path), segments };
}

/** The same closed path, counter-clockwise. */
export function counterClockwise(path: DrawnPath, tolerance: number): DrawnPath {
  return ringAreaMm2(pathRing(path, tolerance)) < 0 ? reversedPath(path) : path;
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

/** Closed by its own ends where they lie within `reach`: the last segment then ends in the start itself. */
export function closedWithin(path: DrawnPath, reach: number): DrawnPath {
  if (path.isClosed || path.segments.length < 2 || distance(path.start, pathEnd(path)) > reach) return path;
  const last = path.segments.at(-1)!;
  return { ...path, isClosed: true, segments: [...path.segments.slice(0, -1), { ...last, to: path.start }] };
}

/**
 * Open paths chained where their ends lie within `reach`, whichever way each was drawn; closed ones as they are.
 * Takes the nearest end each time; quadratic in the number of open paths.
 */
export function joinedPaths(paths: readonly DrawnPath[], reach: number): DrawnPath[] {
  const done: DrawnPath[] = [];
  const open: DrawnPath[] = [];
  for (const path of paths) {
    const closed = closedWithin(path, reach);
    (closed.isClosed ? done : open).push(closed);
  }
  while (open.length > 0) {
    let chain = open.shift()!;
    for (;;) {
      const end = pathEnd(chain);
      let best = -1;
      let bestDistance = reach;
      let isBackwards = false;
      open.forEach((path, index) => {
        const toStart = distance(end, path.start);
        const toEnd = distance(end, pathEnd(path));
        if (Math.min(toStart, toEnd) > bestDistance) return;
        best = index;
        bestDistance = Math.min(toStart, toEnd);
        isBackwards = toEnd < toStart;
      });
      if (best < 0) break;
      const [next] = open.splice(best, 1);
      const forward = isBackwards ? reversedPath(next!) : next!;
      chain = { ...chain, segments: [...chain.segments, ...forward.segments] };
    }
    const closed = closedWithin(chain, reach);
    if (closed.isClosed) done.push(closed);
    else {
      // What hangs on its start is found from the other side.
      const turned = reversedPath(chain);
      const end = pathEnd(turned);
      const hasMore = open.some(
        (path) => Math.min(distance(end, path.start), distance(end, pathEnd(path))) <= reach,
      );
      if (hasMore) open.unshift(turned);
      else done.push(chain);
    }
  }
  return done;
}

/** Whether a point lies inside a ring; on its line, either. */
export function isInside(ring: Ring, { x, y }: Point): boolean {
  let inside = false;
  const count = ring.length;
  for (let i = 0, j = count - 2; i < count; j = i, i += 2) {
    const yi = ring[i + 1]!;
    const yj = ring[j + 1]!;
    if (yi > y !== yj > y && x < ((ring[j]! - ring[i]!) * (y - yi)) / (yj - yi) + ring[i]!) inside = !inside;
  }
  return inside;
}
