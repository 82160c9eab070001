/** Outlines for tests of cut lines: plain polygons, and the same turned and mirrored. */
import { type Point, type Ring, ringFromPoints, ringTurned } from '../../../shared-core/geometry/ring.ts';
import type { Edge, Outline } from '../../../shared-core/plan/model/outline.ts';

/** A polygon with an allowance for each side, edges named 0, 1, 2 ... */
export function polygon(
  points: readonly (readonly [number, number])[],
  allowancesMm: readonly number[],
): Outline {
  const edges = points.map((_, index): Edge => {
    const [x, y] = points[(index + 1) % points.length]!;
    return {
      name: String(index),
      segments: [{ kind: 'line', to: { x, y } }],
      allowanceMm: allowancesMm[index]!,
      seam: null,
    };
  });
  return { start: { x: points[0]![0], y: points[0]![1] }, edges };
}

export function transformed(outline: Outline, move: (point: Point) => Point): Outline {
  return {
    start: move(outline.start),
    edges: outline.edges.map((edge) => ({
      ...edge,
      segments: edge.segments.map((segment) =>
        segment.kind === 'line'
          ? { kind: 'line', to: move(segment.to) }
          : {
              kind: 'cubic',
              control1: move(segment.control1),
              control2: move(segment.control2),
              to: move(segment.to),
            },
      ),
    })),
  };
}

/** The outline mirrored (y becomes -y) and drawn backwards, so that it runs counter-clockwise again. */
export function mirroredOutline(outline: Outline): Outline {
  const flipped = transformed(outline, (point) => ({ x: point.x, y: -point.y }));
  let from = flipped.start;
  const backwards = flipped.edges.map((edge): Edge => {
    const segments = edge.segments.map((segment) => {
      const start = from;
      from = segment.to;
      return segment.kind === 'line'
        ? ({ kind: 'line', to: start } as const)
        : ({ kind: 'cubic', control1: segment.control2, control2: segment.control1, to: start } as const);
    });
    return { ...edge, segments: segments.reverse() };
  });
  return { start: flipped.start, edges: backwards.reverse() };
}

export const fourTurns = [0, 90, 180, 270];

export function turnedOutline(outline: Outline, turnDeg: number): Outline {
  return transformed(outline, (point) => {
    const [x, y] = ringTurned(ringFromPoints([point]), turnDeg, false);
    return { x: x!, y: y! };
  });
}

export const at = (x: number, y: number): Point => ({ x, y });

export function pointsOf(ring: Ring): Point[] {
  return Array.from({ length: ring.length / 2 }, (_, i) => at(ring[2 * i]!, ring[2 * i + 1]!));
}

export function withAllowance(outline: Outline, allowanceMm: number): Outline {
  return { ...outline, edges: outline.edges.map((edge) => ({ ...edge, allowanceMm })) };
}
