/** Pen strokes for drafting outlines: a path from a point by lines and curves, and edges made of them. */
import { chainLengthMm, cubicChords } from '../geometry/curve.ts';
import type { Point } from '../geometry/ring.ts';
import type { Edge, Outline, Segment } from '../plan/model/outline.ts';

/** Some lines and curves on from a point. */
export interface Path {
  readonly from: Point;
  readonly segments: readonly Segment[];
}

export function at(x: number, y: number): Point {
  return { x, y };
}

export function moved(point: Point, dx: number, dy: number): Point {
  return { x: point.x + dx, y: point.y + dy };
}

export function line(to: Point): Segment {
  return { kind: 'line', to };
}

export function curve(control1: Point, control2: Point, to: Point): Segment {
  return { kind: 'cubic', control1, control2, to };
}

export function path(from: Point, ...segments: readonly Segment[]): Path {
  return { from, segments };
}

export function pathEnd(drawn: Path): Point {
  return drawn.segments.at(-1)?.to ?? drawn.from;
}

/** The same stroke drawn from its end to its beginning. */
export function pathReversed(drawn: Path): Path {
  const starts = [drawn.from, ...drawn.segments.map((segment) => segment.to)];
  const segments = drawn.segments.map((segment, index) => {
    const to = starts[index]!;
    return segment.kind === 'line' ? line(to) : curve(segment.control2, segment.control1, to);
  });
  return { from: pathEnd(drawn), segments: segments.reverse() };
}

export function pathMoved(drawn: Path, dx: number, dy: number): Path {
  const segments = drawn.segments.map((segment) =>
    segment.kind === 'line'
      ? line(moved(segment.to, dx, dy))
      : curve(moved(segment.control1, dx, dy), moved(segment.control2, dx, dy), moved(segment.to, dx, dy)),
  );
  return { from: moved(drawn.from, dx, dy), segments };
}

/** Length in mm, curves within 0.01 mm of their chords. */
export function pathLengthMm(drawn: Path): number {
  const points = [drawn.from];
  for (const segment of drawn.segments) {
    const from = points[points.length - 1]!;
    if (segment.kind === 'line') points.push(segment.to);
    else points.push(...cubicChords(from, segment.control1, segment.control2, segment.to, 0.01));
  }
  return chainLengthMm(points);
}

/** An edge along a path, sewn in `seam`, with `allowanceMm` outside it. */
export function sewnEdge(name: string, drawn: Path, seam: string | null, allowanceMm: number): Edge {
  return { name, segments: drawn.segments, allowanceMm, seam };
}

/** An edge that lies on the fold: nothing is added there and nothing is sewn. */
export function foldEdge(name: string, drawn: Path): Edge {
  return sewnEdge(name, drawn, null, 0);
}

/** A rectangle lengthMm along the grain by widthMm across, its edges named bottom side, top end, top side, bottom end. */
export function rectangleOf(
  lengthMm: number,
  widthMm: number,
  allowanceMm: number,
  names: readonly [string, string, string, string],
  seams: readonly [string | null, string | null, string | null, string | null],
): Outline {
  const corners = [at(lengthMm, 0), at(lengthMm, widthMm), at(0, widthMm), at(0, 0)];
  return {
    start: at(0, 0),
    edges: names.map((name, index) =>
      sewnEdge(name, path(at(0, 0), line(corners[index]!)), seams[index] ?? null, allowanceMm),
    ),
  };
}

/**
 * The value between low and high at which a rising quantity reaches `wanted`, within 1e-9 of it or as near as numbers go.
 * Throws when it is not reached between them: the draft's measures do not fit each other.
 */
export function solve(
  low: number,
  high: number,
  wanted: number,
  quantity: (value: number) => number,
): number {
  if (quantity(low) > wanted || quantity(high) < wanted) {
    throw new RangeError(`${wanted} is not between ${quantity(low)} and ${quantity(high)}`);
  }
  let below = low;
  let above = high;
  for (let i = 0; i < 80; i++) {
    const middle = (below + above) / 2;
    if (quantity(middle) < wanted) below = middle;
    else above = middle;
  }
  return (below + above) / 2;
}
