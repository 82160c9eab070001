/** Outlines moved as a whole: each point by one function, and chains of edges mirrored and drawn backwards. */
import type { Point } from '../../geometry/ring.ts';
import type { Edge, Outline, Segment } from '../model/outline.ts';

export type MovePoint = (point: Point) => Point;

/** Edges on from a point; `edges` may be any run of an outline. */
export interface EdgeChain {
  readonly start: Point;
  readonly edges: readonly Edge[];
}

/** Every point and control point moved. The way round stays only where `move` keeps it: turn and shift do. */
export function outlineMoved(outline: Outline, move: MovePoint): Outline {
  return {
    start: move(outline.start),
    edges: outline.edges.map((edge) => ({
      ...edge,
      segments: edge.segments.map(
        (segment): Segment =>
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

/** The chain mirrored by `mirror` and drawn from its end to its start, so that a ring of it keeps its way round. */
export function chainMirrored(chain: EdgeChain, mirror: MovePoint): EdgeChain {
  const moved = outlineMoved(chain, mirror);
  let from = moved.start;
  const backwards = moved.edges.map((edge) => {
    const segments = edge.segments.map((segment): Segment => {
      const start = from;
      from = segment.to;
      return segment.kind === 'line'
        ? { kind: 'line', to: start }
        : { kind: 'cubic', control1: segment.control2, control2: segment.control1, to: start };
    });
    return { ...edge, segments: segments.reverse() };
  });
  return { start: from, edges: backwards.reverse() };
}

/** Mirrors a point over the line through two points that lie apart. */
export function mirrorOver(from: Point, to: Point): MovePoint {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  return (point) => {
    const off = (point.x - from.x) * -uy + (point.y - from.y) * ux;
    return { x: point.x + 2 * off * uy, y: point.y - 2 * off * ux };
  };
}

/** The same piece with x and y changed for each other: clockwise, for reckoning along the other axis alone. */
export function swapAxes(point: Point): Point {
  return { x: point.y, y: point.x };
}

/** `name`, or the first of "name 2", "name 3" ... that is not taken. */
export function freeName(name: string, taken: readonly string[]): string {
  if (!taken.includes(name)) return name;
  let number = 2;
  while (taken.includes(`${name} ${number}`)) number++;
  return `${name} ${number}`;
}
