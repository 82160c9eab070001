/**
 * Polygons from a piece's outline: the seam line, the cut line outside it by each edge's own allowance,
 * and the whole piece of one that is drafted to a fold.
 */
import { cubicChords, chainLengthMm } from '../geometry/curve.ts';
import { ringWithoutLoops } from '../geometry/boolean.ts';
import { type Point, type Ring, ringFromPoints } from '../geometry/ring.ts';
import { edgeStart, type Edge, type Outline } from './outline.ts';

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
export function edgeLengthMm(outline: Outline, edgeName: string): number {
  return chainLengthMm(edgePoints(outline, edgeIndexOf(outline, edgeName), 0.01));
}

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

/**
 * The cut line: every edge moved out by its allowance, corners mitred, loops taken away.
 * For a piece on the fold (foldEdge named) the ring is the whole piece, opened flat.
 * Throws when nothing is left, or when the fold edge is not straight: both are refused by planProblems first.
 */
export function cutRing(outline: Outline, foldEdge: string | null, toleranceMm = outlineToleranceMm): Ring {
  const foldIndex = foldEdge === null ? -1 : edgeIndexOf(outline, foldEdge);
  // Start behind the fold, so that the open chain runs from one end of the fold to the other.
  const order = outline.edges.map((_, index) => (foldIndex + 1 + index) % outline.edges.length);
  const sides: { from: Point; to: Point; allowanceMm: number }[] = [];
  for (const index of order) {
    const edge = outline.edges[index] as Edge;
    const allowanceMm = index === foldIndex ? 0 : edge.allowanceMm;
    const points = withoutRepeats(edgePoints(outline, index, toleranceMm), false);
    for (let i = 1; i < points.length; i++) sides.push({ from: points[i - 1]!, to: points[i]!, allowanceMm });
  }
  const closed = sides.flatMap((side, index) =>
    corner(sides[(index + sides.length - 1) % sides.length]!, side),
  );
  let ring = ringFromPoints(withoutRepeats(closed));
  if (foldIndex >= 0) {
    const fold = edgePoints(outline, foldIndex, toleranceMm);
    if (fold.length !== 2) throw new RangeError(`the fold edge ${foldEdge} is not straight`);
    ring = unfolded(ringWithoutLoops(ring) ?? ring, fold[0]!, fold[1]!);
  }
  const clean = ringWithoutLoops(ring);
  if (!clean) throw new RangeError('the outline has no inside');
  return clean;
}

/** Where the cut lines of two neighbouring sides meet: one point, or two where the corner is cut square. */
function corner(
  before: { from: Point; to: Point; allowanceMm: number },
  after: { from: Point; to: Point; allowanceMm: number },
): Point[] {
  const a = outward(before.from, before.to);
  const b = outward(after.from, after.to);
  const at = after.from;
  const da = before.allowanceMm;
  const db = after.allowanceMm;
  const cross = a.x * b.y - a.y * b.x;
  const end = { x: at.x + a.x * da, y: at.y + a.y * da };
  const start = { x: at.x + b.x * db, y: at.y + b.y * db };
  if (Math.abs(cross) < 1e-9) return da === db ? [start] : [end, start];
  const mitre = {
    x: at.x + (da * b.y - db * a.y) / cross,
    y: at.y + (db * a.x - da * b.x) / cross,
  };
  const reach = Math.hypot(mitre.x - at.x, mitre.y - at.y);
  return reach <= mitreLimitRatio * Math.max(da, db) + 1e-9 ? [mitre] : [end, start];
}

/** Unit vector to the right of a side of a counter-clockwise ring: its outside. */
function outward(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
}

/** A half piece and its mirror image over the fold, as one ring; points on the fold are joined. */
function unfolded(half: Ring, foldFrom: Point, foldTo: Point): Ring {
  const length = Math.hypot(foldTo.x - foldFrom.x, foldTo.y - foldFrom.y);
  const ux = (foldTo.x - foldFrom.x) / length;
  const uy = (foldTo.y - foldFrom.y) / length;
  const offFold = (x: number, y: number) => (x - foldFrom.x) * -uy + (y - foldFrom.y) * ux;
  const alongFold = (x: number, y: number) => (x - foldFrom.x) * ux + (y - foldFrom.y) * uy;
  const points: Point[] = [];
  for (let i = 0; i < half.length; i += 2) points.push({ x: half[i]!, y: half[i + 1]! });
  // The fold is the one side whose ends both lie on the fold line and which runs with it.
  const isOn = points.map((point) => Math.abs(offFold(point.x, point.y)) < 0.002);
  let foldAt = -1;
  let longest = 0;
  points.forEach((point, i) => {
    const next = (i + 1) % points.length;
    if (!isOn[i] || !isOn[next]) return;
    const run = alongFold(points[next]!.x, points[next]!.y) - alongFold(point.x, point.y);
    if (run > longest) {
      longest = run;
      foldAt = i;
    }
  });
  if (foldAt < 0) throw new RangeError('the fold edge is not on the outline');
  const chain = points.map((_, i) => points[(foldAt + 1 + i) % points.length]!);
  const mirrored = chain
    .slice(1, -1)
    .map((point) => {
      const off = offFold(point.x, point.y);
      return { x: point.x + 2 * off * uy, y: point.y - 2 * off * ux };
    })
    .reverse();
  return ringFromPoints([...chain, ...mirrored]);
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
