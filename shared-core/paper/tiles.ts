/** How a large drawing is cut into sheets of paper that are laid edge to edge again. */

export type TileFormat = 'A4' | 'letter' | 'A0';

/** Width and height of the paper, mm (ISO 216; letter is 8 1/2 x 11 in). */
export const paperSizes: Readonly<
  Record<TileFormat, { readonly widthMm: number; readonly heightMm: number }>
> = {
  A4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
  A0: { widthMm: 841, heightMm: 1189 },
};

/** What home printers leave white at each edge, and a hair more. */
export const tileMarginMm = 12;

export interface SheetPoint {
  readonly x: number;
  readonly y: number;
}

/** One line of the drawing; y runs up. */
export interface SheetLine {
  readonly points: readonly SheetPoint[];
  readonly isClosed: boolean;
  readonly kind: 'cut' | 'sew' | 'fold' | 'grain' | 'notch' | 'quilting';
}

export interface SheetText {
  readonly x: number;
  readonly y: number;
  readonly sizeMm: number;
  readonly text: string;
}

/** A drawing at true size, mm, from 0, 0 at its lower left. */
export interface SheetDrawing {
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lines: readonly SheetLine[];
  readonly texts: readonly SheetText[];
}

export interface Tile {
  /** From the top and from the left, from 1. */
  readonly row: number;
  readonly column: number;
  /** Its lower left corner in the drawing. */
  readonly fromX: number;
  readonly fromY: number;
  /** Those of the drawing that come onto it. */
  readonly lines: readonly SheetLine[];
  /** Place among the sheets that are printed, from 1. */
  readonly number: number;
}

export interface Tiling {
  readonly tileWidthMm: number;
  readonly tileHeightMm: number;
  readonly rowCount: number;
  readonly columnCount: number;
  /** Only those with something on them, row by row. */
  readonly tiles: readonly Tile[];
}

/** Sheets that carry the drawing. */
export function tilingOf(drawing: SheetDrawing, format: TileFormat): Tiling {
  const paper = paperSizes[format];
  const tileWidthMm = paper.widthMm - 2 * tileMarginMm;
  const tileHeightMm = paper.heightMm - 2 * tileMarginMm;
  const columnCount = Math.max(1, Math.ceil(drawing.widthMm / tileWidthMm - 1e-9));
  const rowCount = Math.max(1, Math.ceil(drawing.heightMm / tileHeightMm - 1e-9));
  const tiles: Tile[] = [];
  for (let row = 1; row <= rowCount; row++) {
    for (let column = 1; column <= columnCount; column++) {
      const fromX = (column - 1) * tileWidthMm;
      const fromY = drawing.heightMm - row * tileHeightMm;
      const box = { fromX, fromY, toX: fromX + tileWidthMm, toY: fromY + tileHeightMm };
      const lines = drawing.lines.filter((line) => meetsBox(line, box));
      if (lines.length > 0) tiles.push({ row, column, fromX, fromY, lines, number: tiles.length + 1 });
    }
  }
  return { tileWidthMm, tileHeightMm, rowCount, columnCount, tiles };
}

interface TileBox {
  readonly fromX: number;
  readonly fromY: number;
  readonly toX: number;
  readonly toY: number;
}

function meetsBox({ points, isClosed }: SheetLine, box: TileBox): boolean {
  const isBeside =
    points.every(({ x }) => x < box.fromX) ||
    points.every(({ x }) => x > box.toX) ||
    points.every(({ y }) => y < box.fromY) ||
    points.every(({ y }) => y > box.toY);
  if (isBeside) return false;
  return points.some((point, index) => {
    const next = points[index + 1] ?? (isClosed ? points[0] : undefined);
    return next !== undefined && segmentMeets(point, next, box);
  });
}

/** Does any part of the segment lie in the box? By cutting off what lies outside of each side. */
function segmentMeets(a: SheetPoint, b: SheetPoint, box: TileBox): boolean {
  let from = 0;
  let to = 1;
  const sides = [
    [a.x - b.x, a.x - box.fromX],
    [b.x - a.x, box.toX - a.x],
    [a.y - b.y, a.y - box.fromY],
    [b.y - a.y, box.toY - a.y],
  ] as const;
  for (const [change, room] of sides) {
    if (change === 0) {
      if (room < 0) return false;
    } else if (change < 0) from = Math.max(from, room / change);
    else to = Math.min(to, room / change);
  }
  return from <= to;
}
