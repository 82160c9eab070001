/**
 * An outline cut in two by a straight line across or along the grain. Curves are divided exactly (cubic into cubics),
 * so both parts together have the area of the whole, and each edge keeps its name on both sides of the line.
 */
import { chainLengthMm, cubicChords, cubicPoint, cubicSplit } from '../../geometry/curve.ts';
import type { Point } from '../../geometry/ring.ts';
import { type Edge, edgeStart, type Outline, type Segment } from '../model/outline.ts';
import { freeName } from './outline-moved.ts';

/** across: the line x = atMm of the piece's frame. along: the line y = atMm. */
export interface StraightLine {
  readonly direction: 'across' | 'along';
  readonly atMm: number;
}

/** A stretch of an edge of the whole that a part took over: its bounds along the old edge, and where it starts on the new. */
interface Stretch {
  readonly of: string;
  readonly name: string;
  readonly fromMm: number;
  readonly toMm: number;
  readonly startMm: number;
}

export interface OutlinePart {
  readonly outline: Outline;
  /** Name of the new edge along the line; it has no allowance and no seam yet. */
  readonly cutEdge: string;
  readonly stretches: readonly Stretch[];
}

export type OutlineCut =
  | { readonly kind: 'parted'; readonly low: OutlinePart; readonly high: OutlinePart }
  /** The line runs along an edge, or passes the outline other than twice. */
  | { readonly kind: 'not parted'; readonly crossingCount: number; readonly runsAlongEdge: boolean };

/** Nearer to the line than this is on it. */
const onLineMm = 1e-6;
/** Parts of a curve that are looked at for crossings one by one. */
const stepCount = 48;

/** Both parts of an outline: `low` below the line (less x or y), `high` above it. cutName: what the new edge is called. */
export function outlineCut(outline: Outline, line: StraightLine, cutName: string): OutlineCut {
  const offOf = (point: Point) => (line.direction === 'across' ? point.x : point.y) - line.atMm;
  const strokes = strokesOf(outline, offOf);
  const turns = strokes.flatMap((stroke, index) =>
    stroke.side === strokes[(index + strokes.length - 1) % strokes.length]!.side ? [] : [index],
  );
  const runsAlongEdge = strokes.some((stroke) => stroke.side === 0);
  if (runsAlongEdge || turns.length !== 2) {
    return { kind: 'not parted', crossingCount: turns.length, runsAlongEdge };
  }
  const [first, second] = turns as [number, number];
  const inner = strokes.slice(first, second);
  const outer = [...strokes.slice(second), ...strokes.slice(0, first)];
  const [low, high] = inner[0]!.side < 0 ? [inner, outer] : [outer, inner];
  return { kind: 'parted', low: partOf(outline, low, cutName), high: partOf(outline, high, cutName) };
}

/** Where a place on an edge of the whole came to lie on the part, or null where the part has it not. */
export function placeOnPart(
  part: OutlinePart,
  edge: string,
  atMm: number,
): { readonly edge: string; readonly atMm: number } | null {
  const stretch = part.stretches.find(
    (each) => each.of === edge && atMm >= each.fromMm - 1e-9 && atMm <= each.toMm + 1e-9,
  );
  return stretch ? { edge: stretch.name, atMm: stretch.startMm + atMm - stretch.fromMm } : null;
}

/** Part of a segment on one side of the line: -1 below, 1 above, 0 along it. */
interface Stroke {
  readonly edgeIndex: number;
  readonly from: Point;
  readonly segment: Segment;
  readonly side: -1 | 0 | 1;
  /** Along the whole edge. */
  readonly fromMm: number;
  readonly lengthMm: number;
}

function strokesOf(outline: Outline, offOf: (point: Point) => number): Stroke[] {
  return outline.edges.flatMap((edge, edgeIndex) => {
    const strokes: Stroke[] = [];
    let from = edgeStart(outline, edgeIndex);
    let fromMm = 0;
    for (const whole of edge.segments) {
      for (const segment of divided(from, whole, offOf)) {
        const lengthMm = segmentLengthMm(from, segment);
        if (lengthMm > 1e-9) {
          strokes.push({ edgeIndex, from, segment, side: sideOf(from, segment, offOf), fromMm, lengthMm });
        }
        fromMm += lengthMm;
        from = segment.to;
      }
    }
    return strokes;
  });
}

function pointOf(from: Point, segment: Segment, t: number): Point {
  return segment.kind === 'line'
    ? { x: from.x + (segment.to.x - from.x) * t, y: from.y + (segment.to.y - from.y) * t }
    : cubicPoint(from, segment.control1, segment.control2, segment.to, t);
}

function segmentLengthMm(from: Point, segment: Segment): number {
  const ahead =
    segment.kind === 'line'
      ? [segment.to]
      : cubicChords(from, segment.control1, segment.control2, segment.to, 0.01);
  return chainLengthMm([from, ...ahead]);
}

/** The side on which the middle of a stroke lies furthest off. */
function sideOf(from: Point, segment: Segment, offOf: (point: Point) => number): -1 | 0 | 1 {
  const offs = [0.25, 0.5, 0.75].map((t) => offOf(pointOf(from, segment, t)));
  const furthest = offs.reduce((max, off) => (Math.abs(off) > Math.abs(max) ? off : max));
  return Math.abs(furthest) <= onLineMm ? 0 : furthest < 0 ? -1 : 1;
}

/** The segment in as many as the line cuts it into; one that only touches the line stays whole. */
function divided(from: Point, segment: Segment, offOf: (point: Point) => number): Segment[] {
  const cuts = crossings((t) => offOf(pointOf(from, segment, t)), segment.kind === 'line' ? 1 : stepCount);
  const parts: Segment[] = [];
  let rest = segment;
  let start = from;
  let done = 0;
  for (const t of cuts) {
    const share = (t - done) / (1 - done);
    if (rest.kind === 'line') {
      parts.push({ kind: 'line', to: pointOf(from, segment, t) });
    } else {
      const [head, tail] = cubicSplit(start, rest.control1, rest.control2, rest.to, share);
      parts.push({ kind: 'cubic', control1: head[1], control2: head[2], to: head[3] });
      rest = { kind: 'cubic', control1: tail[1], control2: tail[2], to: tail[3] };
      start = tail[0];
    }
    done = t;
  }
  return [...parts, rest];
}

/** Parameters between 0 and 1 at which the distance changes its sign, rising. */
function crossings(offAt: (t: number) => number, count: number): number[] {
  const found: number[] = [];
  let lastT = 0;
  let lastSide = 0;
  for (let i = 0; i <= count; i++) {
    const t = i / count;
    const off = offAt(t);
    const side = Math.abs(off) <= onLineMm ? 0 : Math.sign(off);
    if (side === 0) continue;
    if (lastSide !== 0 && side !== lastSide) found.push(zeroBetween(offAt, lastT, t));
    lastT = t;
    lastSide = side;
  }
  return found;
}

function zeroBetween(offAt: (t: number) => number, fromT: number, toT: number): number {
  let low = fromT;
  let high = toT;
  const isRising = offAt(high) > 0;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (offAt(middle) > 0 === isRising) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

/** Strokes of one side, one run, closed by a new edge along the line. */
function partOf(outline: Outline, strokes: readonly Stroke[], cutName: string): OutlinePart {
  const edges: { edge: Edge; edgeIndex: number }[] = [];
  const stretches: Stretch[] = [];
  const names: string[] = [];
  let soFarMm = 0;
  for (const stroke of strokes) {
    const of = outline.edges[stroke.edgeIndex]!;
    let last = edges.at(-1);
    if (last?.edgeIndex !== stroke.edgeIndex) {
      const name = freeName(of.name, names);
      names.push(name);
      last = { edge: { ...of, name, segments: [] }, edgeIndex: stroke.edgeIndex };
      edges.push(last);
      soFarMm = 0;
    }
    last.edge = { ...last.edge, segments: [...last.edge.segments, stroke.segment] };
    stretches.push({
      of: of.name,
      name: last.edge.name,
      fromMm: stroke.fromMm,
      toMm: stroke.fromMm + stroke.lengthMm,
      startMm: soFarMm,
    });
    soFarMm += stroke.lengthMm;
  }
  const start = strokes[0]!.from;
  const cutEdge = freeName(
    cutName,
    outline.edges.map((edge) => edge.name),
  );
  const closing: Edge = {
    name: cutEdge,
    segments: [{ kind: 'line', to: start }],
    allowanceMm: 0,
    seam: null,
  };
  return { outline: { start, edges: [...edges.map(({ edge }) => edge), closing] }, cutEdge, stretches };
}
