/** The demo coat's allowances, and its edges drawn with them. */
import { type Path, rectangleOf, sewnEdge } from '../draft/pen.ts';
import type { Edge, Outline } from '../plan/model/outline.ts';

/** 5/8 in as it is cut. */
export const seamAllowanceMm = 16;
export const hemAllowanceMm = 40;
export const liningHemAllowanceMm = 25;

/** An edge along a path, sewn in `seam`, with the coat's usual allowance unless another is given. */
export function edge(name: string, drawn: Path, seam: string | null, allowanceMm = seamAllowanceMm): Edge {
  return sewnEdge(name, drawn, seam, allowanceMm);
}

/** A rectangle lengthMm along the grain by widthMm across, its edges named bottom side, top end, top side, bottom end. */
export function rectangle(
  lengthMm: number,
  widthMm: number,
  names: readonly [string, string, string, string],
  seams: readonly [string | null, string | null, string | null, string | null],
): Outline {
  return rectangleOf(lengthMm, widthMm, seamAllowanceMm, names, seams);
}
