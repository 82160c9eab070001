/** Labels for the shelf on a sheet that is cut apart: their grid, mm. */
import type { PaperFormat } from './pdf-sheet.ts';

export interface ShelfLabel {
  readonly name: string;
  /** '' for none. */
  readonly colour: string;
  /** Short facts, the most looked for first; at most four have room. */
  readonly lines: readonly string[];
  /** What the square code says. */
  readonly code: string;
}

export interface LabelGrid {
  readonly columnCount: number;
  readonly rowCount: number;
  readonly labelWidthMm: number;
  readonly labelHeightMm: number;
  /** Between two labels. */
  readonly gapMm: number;
  /** From the upper left corner of the paper to that of the first label. */
  readonly leftMm: number;
  readonly topMm: number;
}

export const labelGrids: Readonly<Record<PaperFormat, LabelGrid>> = {
  A4: {
    columnCount: 3,
    rowCount: 8,
    labelWidthMm: 62,
    labelHeightMm: 33,
    gapMm: 2,
    leftMm: 10,
    topMm: 9.5,
  },
  letter: {
    columnCount: 3,
    rowCount: 7,
    labelWidthMm: 62,
    labelHeightMm: 35,
    gapMm: 2,
    leftMm: 12.95,
    topMm: 11.2,
  },
};

export function labelsOnSheet({ columnCount, rowCount }: LabelGrid): number {
  return columnCount * rowCount;
}

export interface LabelSpot {
  /** From 0. */
  readonly sheet: number;
  /** Upper left corner from that of the paper, mm. */
  readonly leftMm: number;
  readonly topMm: number;
}

/** Where the label of that number stands, row by row. index: from 0, labels counted that are used already. */
export function labelSpot(grid: LabelGrid, index: number): LabelSpot {
  const onSheet = index % labelsOnSheet(grid);
  const column = onSheet % grid.columnCount;
  const row = Math.floor(onSheet / grid.columnCount);
  return {
    sheet: Math.floor(index / labelsOnSheet(grid)),
    leftMm: grid.leftMm + column * (grid.labelWidthMm + grid.gapMm),
    topMm: grid.topMm + row * (grid.labelHeightMm + grid.gapMm),
  };
}
