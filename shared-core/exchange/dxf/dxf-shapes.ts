/** Lines, arcs and polylines of a DXF as drawn paths. A place that is not a number gives null. */
import type { Point } from '../../geometry/ring.ts';
import type { Segment } from '../../plan/model/outline.ts';
import type { DrawnPath } from '../pattern/drawn.ts';
import { numberIn, numberOf, type Pair } from './dxf-pairs.ts';

export type Corner = Point & {
  /** Of the step that follows: 0 for a straight one, else the tangent of a quarter of the arc's angle. */
  readonly bulge: number;
};

export function pointOf(pairs: readonly Pair[]): Point | null {
  const corner = cornerOf(pairs, 0);
  return corner && { x: corner.x, y: corner.y };
}

/** which: 0 for codes 10 and 20, 1 for 11 and 21. */
export function cornerOf(pairs: readonly Pair[], which: 0 | 1): Corner | null {
  return cornerAt(numberOf(pairs, 10 + which), numberOf(pairs, 20 + which), numberOf(pairs, 42, 0));
}

function cornerAt(x: number, y: number, bulge: number): Corner | null {
  return Number.isFinite(x) && Number.isFinite(y) && Number.isFinite(bulge) ? { x, y, bulge } : null;
}

/** Corners of a light polyline: each begins with its x; y and bulge follow. */
export function lightCorners(pairs: readonly Pair[]): (Corner | null)[] {
  const corners: { x: number; y: number; bulge: number }[] = [];
  for (const { code, value } of pairs) {
    const last = corners.at(-1);
    if (code === 10) corners.push({ x: numberIn(value), y: Number.NaN, bulge: 0 });
    else if (code === 20 && last) last.y = numberIn(value);
    else if (code === 42 && last) last.bulge = numberIn(value);
  }
  return corners.map(({ x, y, bulge }) => cornerAt(x, y, bulge));
}

/** Null where a corner is unreadable. A closed path ends in its start. */
export function pathOf(
  corners: readonly (Corner | null)[],
  isClosed: boolean,
  line: number,
): DrawnPath | null {
  if (corners.length === 0 || corners.some((corner) => corner === null)) return null;
  const points = corners as readonly Corner[];
  const segments: Segment[] = [];
  for (let i = 1; i < points.length; i++) segments.push(...steps(points[i - 1]!, points[i]!));
  const first = points[0]!;
  const last = points.at(-1)!;
  const start = { x: first.x, y: first.y };
  if (isClosed && (first.x !== last.x || first.y !== last.y)) segments.push(...steps(last, first));
  return { start, segments, isClosed: isClosed && segments.length > 1, line };
}

/** A straight step, or an arc: the bulge is the tangent of a quarter of its angle, above 0 counter-clockwise. */
function steps(from: Corner, to: Corner): Segment[] {
  const end = { x: to.x, y: to.y };
  if (from.bulge === 0) return [{ kind: 'line', to: end }];
  const angle = 4 * Math.atan(from.bulge);
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  // The centre lies square to the middle of the chord.
  const off = (1 / from.bulge - from.bulge) / 4;
  const centre = { x: from.x + dx / 2 - dy * off, y: from.y + dy / 2 + dx * off };
  const count = Math.max(1, Math.ceil(Math.abs(angle) / (Math.PI / 4)));
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  const first = Math.atan2(from.y - centre.y, from.x - centre.x);
  const handle = (4 / 3) * Math.tan(angle / count / 4) * radius;
  return Array.from({ length: count }, (_, index): Segment => {
    const a = first + (angle * index) / count;
    const b = first + (angle * (index + 1)) / count;
    const at = (turn: number) => ({
      x: centre.x + radius * Math.cos(turn),
      y: centre.y + radius * Math.sin(turn),
    });
    const p = at(a);
    const q = index === count - 1 ? end : at(b);
    return {
      kind: 'cubic',
      control1: { x: p.x - handle * Math.sin(a), y: p.y + handle * Math.cos(a) },
      control2: { x: q.x + handle * Math.sin(b), y: q.y - handle * Math.cos(b) },
      to: q,
    };
  });
}

export function arcPath(pairs: readonly Pair[], isWhole: boolean, line: number): DrawnPath | null {
  const centre = pointOf(pairs);
  const radius = numberOf(pairs, 40);
  const startDeg = isWhole ? 0 : numberOf(pairs, 50);
  const endDeg = isWhole ? 180 : numberOf(pairs, 51);
  if (!centre || !(radius > 0) || !Number.isFinite(startDeg + endDeg)) return null;
  const at = (deg: number, bulge: number): Corner => ({
    x: centre.x + radius * Math.cos((deg * Math.PI) / 180),
    y: centre.y + radius * Math.sin((deg * Math.PI) / 180),
    bulge,
  });
  if (isWhole) return pathOf([at(0, 1), at(180, 1)], true, line);
  const sweepDeg = (((endDeg - startDeg) % 360) + 360) % 360 || 360;
  // In two, since a bulge grows without end towards the full circle.
  const bulge = Math.tan((sweepDeg * Math.PI) / 180 / 8);
  return pathOf(
    [at(startDeg, bulge), at(startDeg + sweepDeg / 2, bulge), at(startDeg + sweepDeg, 0)],
    false,
    line,
  );
}
