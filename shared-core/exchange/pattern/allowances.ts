/**
 * The two lines of a piece: how far the cutting line lies outside each edge of the sewing line, and a sewing line
 * inside a cutting line that was drawn alone.
 */
import type { Point } from '../../geometry/ring.ts';
import type { Edge, Outline } from '../../plan/model/outline.ts';
import { edgePoints } from '../../plan/geometry/outline-ring.ts';
import { distance } from './drawn.ts';

/** Allowances are read from drawn lines, so they are kept to this grid, mm. */
const allowanceStepMm = 0.01;
/** Places of an edge agree within this, mm; an allowance on which fewer than four of fifteen agree is called uneven. */
const agreeingMm = 0.2;
const evenFromCount = 4;
const furthestMm = 200;
/** Places along an edge at which its allowance is measured. */
export const allowanceSampleCount = 15;

export interface MeasuredAllowance {
  readonly allowanceMm: number;
  readonly isUneven: boolean;
}

/**
 * Distance from an edge out to the cutting line, square to the edge, by fifteen places along it.
 * Null where the cutting line does not lie outside the edge within 200 mm. Linear in the points of the cutting line.
 */
export function measuredAllowance(
  outline: Outline,
  edgeIndex: number,
  cutPoints: readonly Point[],
): MeasuredAllowance | null {
  const distances = squareSamples(edgePoints(outline, edgeIndex, 0.02)).flatMap(({ at, out }) => {
    const mm = reach(at, out, cutPoints);
    return mm === null ? [] : [mm];
  });
  if (distances.length <= allowanceSampleCount / 2) return null;
  distances.sort((a, b) => a - b);
  // Towards its ends the cutting line may run into its neighbours' corners, so what most places agree on counts.
  let best = { from: 0, count: 0 };
  distances.forEach((from, index) => {
    const count = distances.filter((mm, other) => other >= index && mm <= from + agreeingMm).length;
    if (count > best.count) best = { from: index, count };
  });
  const middle = distances[best.from + Math.floor((best.count - 1) / 2)]!;
  return {
    allowanceMm: Math.max(0, Math.round(middle / allowanceStepMm) * allowanceStepMm),
    isUneven: best.count < evenFromCount,
  };
}

/** Places spread along a chain, each with the unit vector to its right: out of a counter-clockwise ring. */
function squareSamples(points: readonly Point[]): { at: Point; out: Point }[] {
  const total = points.reduce((sum, point, i) => (i === 0 ? 0 : sum + distance(points[i - 1]!, point)), 0);
  const samples: { at: Point; out: Point }[] = [];
  let along = 0;
  for (let i = 1; i < points.length; i++) {
    const from = points[i - 1]!;
    const to = points[i]!;
    const step = distance(from, to);
    while (samples.length < allowanceSampleCount && step > 0) {
      const wanted = (total * (samples.length + 0.5)) / allowanceSampleCount - along;
      if (wanted > step) break;
      const share = wanted / step;
      samples.push({
        at: { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share },
        out: { x: (to.y - from.y) / step, y: (from.x - to.x) / step },
      });
    }
    along += step;
  }
  return samples;
}

/** How far a ray runs until it first meets the closed chain; null for nowhere within reach. */
function reach(at: Point, out: Point, chain: readonly Point[]): number | null {
  let best: number | null = null;
  for (let i = 1; i < chain.length; i++) {
    const a = chain[i - 1]!;
    const b = chain[i]!;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const cross = out.x * dy - out.y * dx;
    if (Math.abs(cross) < 1e-12) continue;
    const mm = ((a.x - at.x) * dy - (a.y - at.y) * dx) / cross;
    const share = ((a.x - at.x) * out.y - (a.y - at.y) * out.x) / cross;
    if (share < -1e-9 || share > 1 + 1e-9 || mm < -0.05 || mm > furthestMm) continue;
    if (best === null || mm < best) best = mm;
  }
  return best;
}

/** The place where the cutting line lies square outside a place on an edge; the place itself where it does not. */
export function outOnCutLine(at: Point, out: Point, cutPoints: readonly Point[]): Point {
  const mm = reach(at, out, cutPoints) ?? 0;
  return { x: at.x + out.x * mm, y: at.y + out.y * mm };
}

/**
 * The outline that lies allowanceMm inside this one, which was drawn as the cutting line; its fold stays.
 * Curves become straight lines within 0.05 mm. Where the allowance is wider than a hollow, the lines cross:
 * the piece's own check refuses that.
 */
export function sewingLineInside(outline: Outline, allowanceMm: number, foldEdge: string | null): Outline {
  const sideCounts: number[] = [];
  const sides = outline.edges.flatMap((edge, index) => {
    const points = edgePoints(outline, index, 0.05);
    const inMm = edge.name === foldEdge ? 0 : allowanceMm;
    sideCounts.push(points.length - 1);
    return points.slice(1).map((to, i) => ({ from: points[i]!, to, inMm }));
  });
  const starts = sides.map((side, i) => inner(sides[(i + sides.length - 1) % sides.length]!, side));
  const ends = starts.map((_, i) => ({ kind: 'line' as const, to: starts[(i + 1) % starts.length]! }));
  let at = 0;
  const edges: Edge[] = outline.edges.map((edge, index) => {
    const segments = ends.slice(at, at + sideCounts[index]!);
    at += segments.length;
    return { ...edge, allowanceMm: edge.name === foldEdge ? 0 : allowanceMm, segments };
  });
  return { start: starts[0]!, edges };
}

interface InnerSide {
  readonly from: Point;
  readonly to: Point;
  readonly inMm: number;
}

function inner(before: InnerSide, after: InnerSide): Point {
  const a = left(before);
  const b = left(after);
  const at = after.from;
  const sine = a.x * b.y - a.y * b.x;
  if (Math.abs(sine) < 1e-6) {
    const mm = Math.max(before.inMm, after.inMm);
    return { x: at.x + b.x * mm, y: at.y + b.y * mm };
  }
  // The point v with v.a = before.inMm and v.b = after.inMm.
  return {
    x: at.x + (before.inMm * b.y - after.inMm * a.y) / sine,
    y: at.y + (after.inMm * a.x - before.inMm * b.x) / sine,
  };
}

function left({ from, to }: InnerSide): Point {
  const length = distance(from, to);
  return { x: (from.y - to.y) / length, y: (to.x - from.x) / length };
}
