/**
 * Polygons from a piece's outline: the seam line, the cut line outside it by each edge's own allowance,
 * and the whole piece of one that is drafted to a fold.
 */
import { cubicChords, chainLengthMm } from '../../geometry/curve.ts';
import { ringWithoutLoops } from '../../geometry/boolean.ts';
import { type Point, type Ring, ringFromPoints } from '../../geometry/ring.ts';
import { remembered } from '../../geometry/remembered.ts';
import { edgeStart, type Outline } from '../model/outline.ts';

/** Chords stay this near to the drafted curve. */
export const outlineToleranceMm = 0.2;

/** A mitred corner of an allowance reaches at most this many times the larger allowance; beyond, it is cut square. */
const mitreLimitRatio = 2.5;

/** Points of one edge from its start to its end, both included. */
export function edgePoints(outline: Outline, edgeIndex: number, toleranceMm = outlineToleranceMm): Point[] {
  const edge = outline.edges[edgeIndex];
  if (!edge) throw new RangeError(`an outline of ${outline.edges.length} edges has no edge ${edgeIndex}`);
  const points: Point[] = [edgeStart(outline, edgeIndex)];
  for (const segment of edge.segments) {
    const from = points[points.length - 1]!;
    switch (segment.kind) {
      case 'line':
        points.push(segment.to);
        break;
      case 'cubic':
        points.push(...cubicChords(from, segment.control1, segment.control2, segment.to, toleranceMm));
        break;
      default:
        segment satisfies never;
    }
  }
  return points;
}

/** Length along an edge at the seam line, mm; curves within 0.01 mm of their chords. */
export const edgeLengthMm = remembered((outline: Outline, edgeName: string): number =>
  chainLengthMm(edgePoints(outline, edgeIndexOf(outline, edgeName), 0.01)),
);

/** Place of the edge in the outline. Throws when the outline has no edge of that name. */
export function edgeIndexOf(outline: Outline, edgeName: string): number {
  const index = outline.edges.findIndex((edge) => edge.name === edgeName);
  if (index < 0) throw new RangeError(`the outline has no edge ${edgeName}`);
  return index;
}

/** The seam line as a ring. */
export function seamRing(outline: Outline, toleranceMm = outlineToleranceMm): Ring {
  const points = outline.edges.flatMap((_, index) => edgePoints(outline, index, toleranceMm).slice(0, -1));
  return ringFromPoints(withoutRepeats(points));
}

/** One straight step of an outline, and how far outside it the cloth is cut. */
interface Side {
  readonly from: Point;
  readonly to: Point;
  readonly allowanceMm: number;
}

/**
 * The cut line: every edge moved out by its allowance, corners mitred, loops taken away.
 * For a piece on the fold (foldEdge named) the ring is the whole piece, opened flat.
 * Throws when nothing is left, or when the fold edge is not straight: both are refused by planProblems first.
 */
export function cutRing(outline: Outline, foldEdge: string | null, toleranceMm = outlineToleranceMm): Ring {
  const ring = cutRingIfAny(outline, foldEdge, toleranceMm);
  if (!ring) throw new RangeError('the outline has no inside');
  return ring;
}

/** As cutRing; null where nothing is left. */
export function cutRingIfAny(
  outline: Outline,
  foldEdge: string | null,
  toleranceMm = outlineToleranceMm,
): Ring | null {
  return ringOutside(outline, foldEdge, toleranceMm);
}

const ringOutside = remembered(
  (outline: Outline, foldEdge: string | null, toleranceMm: number): Ring | null => {
    const sides = wholeSides(outline, foldEdge, toleranceMm);
    const points = sides.flatMap((side, index) =>
      corner(sides[(index + sides.length - 1) % sides.length]!, side),
    );
    return ringWithoutLoops(ringFromPoints(withoutRepeats(points)));
  },
);

/** All sides of the whole piece: for one on the fold the half's without the fold, then their mirror images backwards. */
function wholeSides(outline: Outline, foldEdge: string | null, toleranceMm: number): Side[] {
  const foldIndex = foldEdge === null ? -1 : edgeIndexOf(outline, foldEdge);
  const half: Side[] = [];
  // Behind the fold first, so that the half is one chain from the end of the fold round to its start.
  for (let step = 1; step <= outline.edges.length; step++) {
    const index = (foldIndex + step + outline.edges.length) % outline.edges.length;
    if (index === foldIndex) continue;
    const { allowanceMm } = outline.edges[index]!;
    const points = withoutRepeats(edgePoints(outline, index, toleranceMm), false);
    for (let i = 1; i < points.length; i++) half.push({ from: points[i - 1]!, to: points[i]!, allowanceMm });
  }
  if (foldIndex < 0) return half;
  const fold = edgePoints(outline, foldIndex, toleranceMm);
  if (fold.length !== 2) throw new RangeError(`the fold edge ${foldEdge} is not straight`);
  const mirror = mirrorOver(fold[0]!, fold[1]!);
  const mirrored = half.map((side) => ({ ...side, from: mirror(side.to), to: mirror(side.from) }));
  return [...half, ...mirrored.reverse()];
}

/** Mirrors a point over the line through two points. */
function mirrorOver(from: Point, to: Point): (point: Point) => Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  return (point) => {
    const off = (point.x - from.x) * -uy + (point.y - from.y) * ux;
    return { x: point.x + 2 * off * uy, y: point.y - 2 * off * ux };
  };
}

/**
 * Where the cut lines of two neighbouring sides meet: one point of a mitre where it lies well within both;
 * else a detour that leaves both sides their whole allowance, with loops that are taken away later.
 */
function corner(before: Side, after: Side): Point[] {
  const a = outward(before.from, before.to);
  const b = outward(after.from, after.to);
  const at = after.from;
  const da = before.allowanceMm;
  const db = after.allowanceMm;
  const sine = a.x * b.y - a.y * b.x;
  const cosine = a.x * b.x + a.y * b.y;
  const end = { x: at.x + a.x * da, y: at.y + a.y * da };
  const start = { x: at.x + b.x * db, y: at.y + b.y * db };
  if (Math.abs(sine) > 1e-9) {
    // How far the mitre lies back along the side before, and on along the side after.
    const backMm = (da * cosine - db) / sine;
    const onMm = (db * cosine - da) / sine;
    // In a hollow corner each allowance must also end inside the other's strip, which is as long as its side.
    const hollow = Math.max(0, -sine);
    const isWithin =
      Math.max(backMm, db * hollow) <= sideLengthMm(before) / 2 &&
      Math.max(onMm, da * hollow) <= sideLengthMm(after) / 2;
    const reachMm = Math.hypot(da, backMm);
    if (isWithin && reachMm <= mitreLimitRatio * Math.max(da, db) + 1e-9) {
      return [{ x: end.x + a.y * backMm, y: end.y - a.x * backMm }];
    }
  } else if (cosine > 0 && da === db) return []; // straight on: no corner
  if (sine < 0) return [end, at, start];
  if (cosine >= 0) return [end, start];
  // A sharp point is cut off squarely, the larger allowance beyond it.
  const beyond = Math.max(da, db);
  const length = Math.hypot(a.x + b.x, a.y + b.y);
  const out = length > 1e-9 ? { x: (a.x + b.x) / length, y: (a.y + b.y) / length } : { x: -a.y, y: a.x };
  const halfSine = Math.sqrt((1 - cosine) / 2);
  const onBefore = (beyond - da * (a.x * out.x + a.y * out.y)) / halfSine;
  const onAfter = (beyond - db * (b.x * out.x + b.y * out.y)) / halfSine;
  return [
    { x: end.x - a.y * onBefore, y: end.y + a.x * onBefore },
    { x: start.x + b.y * onAfter, y: start.y - b.x * onAfter },
  ];
}

function sideLengthMm(side: Side): number {
  return Math.hypot(side.to.x - side.from.x, side.to.y - side.from.y);
}

/** Unit vector to the right of a side of a counter-clockwise ring: its outside. */
function outward(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
}

function withoutRepeats(points: readonly Point[], isClosed = true): Point[] {
  const kept: Point[] = [];
  for (const point of points) {
    const last = kept[kept.length - 1];
    if (!last || Math.hypot(point.x - last.x, point.y - last.y) > 1e-6) kept.push(point);
  }
  const first = kept[0];
  const last = kept[kept.length - 1];
  if (isClosed && kept.length > 1 && first && last && Math.hypot(first.x - last.x, first.y - last.y) <= 1e-6)
    kept.pop();
  return kept;
}
