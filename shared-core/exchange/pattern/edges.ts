/**
 * A closed drawn path as the edges of an outline. The standard's turn points part the edges; where a path has none,
 * corners sharper than `cornerDeg` do. Curve points stay as the straight lines between them that the file draws.
 */
import { say } from '../../wording/say.ts';
import { type Point, type Ring, ringFromPoints } from '../../geometry/ring.ts';
import { type Edge, edgeStart, type Outline, type Segment } from '../../plan/model/outline.ts';
import { type DrawnPath, distance, pathEnd } from './drawn.ts';
import type { ReadMeter } from '../read-meter.ts';

/** A bend below this belongs to a curve drawn with straight lines; above it, an edge ends (rule of thumb). */
export const cornerDeg = 35;
/** A turn point this near to a point of the outline is that point, mm. */
export const turnPointReachMm = 0.1;
/** Edges of more straight lines than this are thinned; no point left out lies further from them than thinnedWithinMm. */
export const thinnedFromCount = 24;
export const thinnedWithinMm = 0.1;

/** Path in mm, counter-clockwise. One of next to no size gives an edge without a line. `turnPoints` that lie on no point of it are passed over. Names: "edge 1" onwards. */
export function edgesOfPath(
  path: DrawnPath,
  turnPoints: readonly Point[],
  foldEnds: readonly Point[],
  meter: ReadMeter,
): Outline {
  const steps = withoutShort(path);
  const count = steps.segments.length;
  const starts = steps.segments.map((_, index) =>
    index === 0 ? steps.start : steps.segments[index - 1]!.to,
  );
  const turns = pointIndex(turnPoints, path.line, meter);
  const folds = pointIndex(foldEnds, path.line, meter);
  let breaks = starts.flatMap((point, index) => (turns(point) ? [index] : []));
  if (breaks.length < 2)
    breaks = starts.flatMap((_, index) => (bendDeg(steps, index) > cornerDeg ? [index] : []));
  breaks = [...new Set([...breaks, ...starts.flatMap((point, index) => (folds(point) ? [index] : []))])];
  breaks.sort((a, b) => a - b);
  if (breaks.length === 0) breaks = [0];
  const edges: Edge[] = breaks.map((from, place) => {
    const to = breaks[place + 1] ?? breaks[0]! + count;
    const segments: Segment[] = [];
    for (let i = from; i < to; i++) segments.push(steps.segments[i % count]!);
    return {
      name: say('edges.edge', { place: place + 1 }),
      segments,
      allowanceMm: 0,
      seam: null,
    };
  });
  return { start: starts[breaks[0]!] ?? path.start, edges };
}

/** Steps of no length left out, so that bends can be told. */
function withoutShort(path: DrawnPath): DrawnPath {
  let at = path.start;
  const segments = path.segments.filter((segment) => {
    const isShort = segment.kind === 'line' && distance(at, segment.to) < 1e-3;
    if (!isShort) at = segment.to;
    return !isShort;
  });
  const last = segments.at(-1);
  if (!last || pathEnd({ ...path, segments }) === path.start) return { ...path, segments };
  return { ...path, segments: [...segments.slice(0, -1), { ...last, to: path.start }] };
}

function bendDeg(path: DrawnPath, index: number): number {
  const count = path.segments.length;
  const before = path.segments[(index + count - 1) % count]!;
  const after = path.segments[index]!;
  const at = index === 0 ? path.start : before.to;
  const beforeStart = path.segments[(index + count - 2) % count]!.to;
  const from =
    before.kind === 'line'
      ? beforeStart
      : ([before.control2, before.control1].find((point) => distance(point, at) > 1e-6) ?? beforeStart);
  const to =
    after.kind === 'line'
      ? after.to
      : ([after.control1, after.control2].find((point) => distance(point, at) > 1e-6) ?? after.to);
  const ax = at.x - from.x;
  const ay = at.y - from.y;
  const bx = to.x - at.x;
  const by = to.y - at.y;
  return (Math.abs(Math.atan2(ax * by - ay * bx, ax * bx + ay * by)) * 180) / Math.PI;
}

/** Whether a point lies within reach of one of these, by a grid of cells as large as the reach. */
function pointIndex(points: readonly Point[], line: number, meter: ReadMeter): (point: Point) => boolean {
  if (points.length === 0) return () => false;
  const cells = new Map<string, Point[]>();
  const cell = (x: number, y: number) =>
    `${Math.floor(x / turnPointReachMm)} ${Math.floor(y / turnPointReachMm)}`;
  for (const point of points) {
    const key = cell(point.x, point.y);
    const inCell = cells.get(key);
    if (inCell) inCell.push(point);
    else cells.set(key, [point]);
  }
  return ({ x, y }) => {
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        const near = cells.get(cell(x + dx * turnPointReachMm, y + dy * turnPointReachMm));
        if (!near) continue;
        meter.steps(near.length, say('edges.line', { line }));
        if (near.some((point) => distance(point, { x, y }) <= turnPointReachMm)) return true;
      }
    }
    return false;
  };
}

/** The outline with fewer points where an edge has very many. */
export function thinnedOutline(outline: Outline, meter: ReadMeter): Outline {
  return {
    ...outline,
    edges: outline.edges.map((edge, index) => ({
      ...edge,
      segments: thinned(edgeStart(outline, index), edge.segments, meter),
    })),
  };
}

function thinned(start: Point, segments: readonly Segment[], meter: ReadMeter): readonly Segment[] {
  if (segments.length <= thinnedFromCount || segments.some((segment) => segment.kind === 'cubic'))
    return segments;
  const points = [start, ...segments.map((segment) => segment.to)];
  return kept(points, meter)
    .slice(1)
    .map((to) => ({ kind: 'line', to }));
}

/** Ends and every point that would lie too far from the chord between those kept. Works on a stack, not by recursion. */
function kept(points: readonly Point[], meter: ReadMeter): Point[] {
  const ring = ringFromPoints(points);
  const isKept = new Uint8Array(points.length);
  isKept[0] = 1;
  isKept[points.length - 1] = 1;
  const stack: [number, number][] = [[0, points.length - 1]];
  for (let range = stack.pop(); range; range = stack.pop()) {
    const [from, to] = range;
    meter.steps(to - from, say('edges.an-outline'));
    const furthest = furthestFromChord(ring, from, to);
    if (furthest < 0) continue;
    isKept[furthest] = 1;
    stack.push([from, furthest], [furthest, to]);
  }
  return points.filter((_, index) => isKept[index] === 1);
}

/** The point between two others that lies furthest from the chord between them; -1 where all lie near it. */
function furthestFromChord(ring: Ring, from: number, to: number): number {
  const fromX = ring[2 * from]!;
  const fromY = ring[2 * from + 1]!;
  const dx = ring[2 * to]! - fromX;
  const dy = ring[2 * to + 1]! - fromY;
  const squared = dx * dx + dy * dy;
  let furthest = -1;
  let max = thinnedWithinMm * thinnedWithinMm;
  for (let i = from + 1; i < to; i++) {
    const x = ring[2 * i]! - fromX;
    const y = ring[2 * i + 1]! - fromY;
    const share = squared === 0 ? 0 : Math.min(1, Math.max(0, (x * dx + y * dy) / squared));
    const offX = x - share * dx;
    const offY = y - share * dy;
    const off = offX * offX + offY * offY;
    if (off > max) {
      furthest = i;
      max = off;
    }
  }
  return furthest;
}

/** The point of a straight step nearest to another, and its share of the step, 0 to 1. */
export function nearestOnStep(
  from: Point,
  to: Point,
  point: Point,
): { readonly at: Point; readonly share: number } {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const squared = dx * dx + dy * dy;
  const share =
    squared === 0
      ? 0
      : Math.min(1, Math.max(0, ((point.x - from.x) * dx + (point.y - from.y) * dy) / squared));
  return { at: { x: from.x + dx * share, y: from.y + dy * share }, share };
}
