/** Lines of a drawing at true size as a PDF draws them. */
import { closePath, lineTo, moveTo, type PDFOperator, stroke } from '@cantoo/pdf-lib';
import type { SheetLine } from './tiles.ts';

/** Width in mm, and dashes in mm; none: drawn through. */
export const lineLooks: Readonly<
  Record<SheetLine['kind'], { readonly widthMm: number; readonly dash: readonly number[] }>
> = {
  cut: { widthMm: 0.4, dash: [] },
  sew: { widthMm: 0.25, dash: [3, 2] },
  fold: { widthMm: 0.4, dash: [8, 2, 1.5, 2] },
  grain: { widthMm: 0.3, dash: [] },
  notch: { widthMm: 0.4, dash: [] },
  quilting: { widthMm: 0.15, dash: [1.2, 2.4] },
};

/** place: from the drawing, mm, to the page, pt. */
export function pathOf(
  { points, isClosed }: SheetLine,
  place: (point: { x: number; y: number }) => { x: number; y: number },
): PDFOperator[] {
  const [first, ...others] = points.map(place);
  if (!first) return [];
  return [
    moveTo(first.x, first.y),
    ...others.map(({ x, y }) => lineTo(x, y)),
    ...(isClosed ? [closePath()] : []),
    stroke(),
  ];
}
