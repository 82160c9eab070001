/** A piece as it goes out to a file: the half of one on the fold, with its cutting line and the notches on it. */
import type { Point, Ring } from '../../geometry/ring.ts';
import { ringPoints } from '../../geometry/ring.ts';
import type { Notch, Piece } from '../../plan/model/coat-plan.ts';
import { cutRing, edgeIndexOf, edgePoints } from '../../plan/geometry/outline-ring.ts';
import { outOnCutLine } from './allowances.ts';
import { distance } from './drawn.ts';

const toleranceMm = 0.02;

/** The cutting line of the piece as drafted; a fold has no allowance, so there it is the fold itself. */
export function drawnCutLine(piece: Piece): Ring {
  const edges = piece.outline.edges.map((edge) =>
    edge.name === piece.foldEdge ? { ...edge, allowanceMm: 0 } : edge,
  );
  return cutRing({ ...piece.outline, edges }, null, toleranceMm);
}

/** The notch's place on the cutting line, square out from its place on the sewing line. */
export function notchOnCutLine(piece: Piece, notch: Notch): Point {
  const edge = piece.outline.edges[edgeIndexOf(piece.outline, notch.edge)]!;
  const { at, out } = onEdge(piece, notch);
  if (edge.allowanceMm === 0 || edge.name === piece.foldEdge) return at;
  const cut = ringPoints(drawnCutLine(piece));
  return outOnCutLine(at, out, [...cut, cut[0]!]);
}

/** Where a notch lies on the sewing line, and the unit vector out of the piece there. */
export function onEdge(piece: Piece, notch: Notch): { readonly at: Point; readonly out: Point } {
  const points = edgePoints(piece.outline, edgeIndexOf(piece.outline, notch.edge), toleranceMm);
  let along = 0;
  for (let i = 1; i < points.length; i++) {
    const from = points[i - 1]!;
    const to = points[i]!;
    const step = distance(from, to);
    if (step > 0 && (along + step >= notch.atMm || i === points.length - 1)) {
      const share = Math.min(1, (notch.atMm - along) / step);
      return {
        at: { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share },
        out: { x: (to.y - from.y) / step, y: (from.x - to.x) / step },
      };
    }
    along += step;
  }
  throw new RangeError(`edge ${notch.edge} has no length`);
}
