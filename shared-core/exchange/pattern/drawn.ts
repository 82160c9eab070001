/**
 * A piece as a file draws it, before it becomes one of the plan's: paths in the file's own unit and direction,
 * y up, open or closed, by what each line means.
 */
import { cubicChordCount, cubicChords } from '../../geometry/curve.ts';
import { type Point, type Ring, ringAreaMm2, ringFromPoints } from '../../geometry/ring.ts';
import type { Segment } from '../../plan/model/outline.ts';

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
  if (matrix === unmoved) return path;
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

/** How many steps pathPoints makes of it. */
export function pathChordCount(path: DrawnPath, tolerance: number): number {
  let count = 0;
  let at = path.start;
  for (const segment of path.segments) {
    count +=
      segment.kind === 'line'
        ? 1
        : cubicChordCount(at, segment.control1, segment.control2, segment.to, tolerance);
    at = segment.to;
  }
  return count;
}

/** Points that the file gives for it, those that steer its curves included. */
export function givenPointCount(path: DrawnPath): number {
  return path.segments.reduce((sum, segment) => sum + (segment.kind === 'line' ? 1 : 3), 1);
}

/** Every number of it is one, and none lies further from the origin than this, in the file's unit. */
export function isWithin(path: DrawnPath, reach: number): boolean {
  const isNear = ({ x, y }: Point) => Math.abs(x) <= reach && Math.abs(y) <= reach;
  return (
    isNear(path.start) &&
    path.segments.every(
      (segment) =>
        isNear(segment.to) &&
        (segment.kind === 'line' || (isNear(segment.control1) && isNear(segment.control2))),
    )
  );
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
  const dx = a.x - b.x;
  const dy = a.y - b.y;
  // Many times faster than Math.hypot, and no drawing comes near the numbers that this one is for.
  return Math.sqrt(dx * dx + dy * dy);
}

/** Closed by its own ends where they lie within `reach`: the last segment then ends in the start itself. */
export function closedWithin(path: DrawnPath, reach: number): DrawnPath {
  if (path.isClosed || path.segments.length < 2 || distance(path.start, pathEnd(path)) > reach) return path;
  const last = path.segments.at(-1)!;
  return { ...path, isClosed: true, segments: [...path.segments.slice(0, -1), { ...last, to: path.start }] };
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
