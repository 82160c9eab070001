/** What a lay leaves beside its pieces on the cut part of a length: rectangles that may go back to the shelf. */
import { ringMoved, ringTurned, type Ring } from '../geometry/ring.ts';
import type { LayJob, LayRect, LayResult } from './job.ts';

export interface RestRules {
  /** Neither side of a rectangle is shorter. */
  readonly minSideMm: number;
  readonly minAreaMm2: number;
  readonly max: number;
}

/** A pocket bag goes on 15 x 30 cm (common practice, no source); more than six pieces of rest are a nuisance to fold. */
export const defaultRest: RestRules = { minSideMm: 150, minAreaMm2: 60_000, max: 6 };

/** Fineness of the search, mm; a rectangle found is that much too small at most. */
const cellMm = 10;

/** Far below what a blade can do. */
const hairMm = 1e-6;

/**
 * The largest rectangle that no piece and no flaw touches, then the largest beside it, and so on, in the frame of the
 * length. usedMm: from the start of the length to where it is cut across.
 */
export function restRectangles(
  job: LayJob,
  result: LayResult,
  lengthIndex: number,
  usedMm: number,
  rules: RestRules = defaultRest,
): LayRect[] {
  const widthMm = job.lengths[lengthIndex]?.widthMm ?? 0;
  const columnCount = Math.floor(usedMm / cellMm);
  const rowCount = Math.floor(widthMm / cellMm);
  if (columnCount < 1 || rowCount < 1) return [];
  const taken = new Uint8Array(columnCount * rowCount);
  for (const placement of result.placements) {
    if (placement.length !== lengthIndex) continue;
    const shape = job.shapes[placement.shape];
    if (!shape) continue;
    const turned = ringTurned(shape.ring, placement.turnDeg, placement.mirrored);
    markRing(ringMoved(turned, placement.x, placement.y), taken, columnCount, rowCount);
  }
  for (const flaw of job.lengths[lengthIndex]?.flaws ?? []) {
    const ring = [flaw.x, flaw.y, flaw.x + flaw.widthX, flaw.y, flaw.x + flaw.widthX, flaw.y + flaw.widthY];
    markRing(Float64Array.from([...ring, flaw.x, flaw.y + flaw.widthY]), taken, columnCount, rowCount);
  }
  const found: LayRect[] = [];
  while (found.length < rules.max) {
    const cells = largestFree(taken, columnCount, rowCount, Math.ceil(rules.minSideMm / cellMm));
    if (!cells || cells.columns * cells.rows * cellMm * cellMm < rules.minAreaMm2) break;
    found.push({
      x: cells.column * cellMm,
      y: cells.row * cellMm,
      widthX: cells.columns * cellMm,
      widthY: cells.rows * cellMm,
    });
    for (let column = cells.column; column < cells.column + cells.columns; column++) {
      taken.fill(1, column * rowCount + cells.row, column * rowCount + cells.row + cells.rows);
    }
  }
  return found;
}

/** Marks every cell that a ring touches: in a strip of one column it covers what its edges span and what lies between them at either side. */
function markRing(ring: Ring, taken: Uint8Array, columnCount: number, rowCount: number): void {
  const mark = (column: number, low: number, high: number) => {
    const from = Math.max(0, Math.floor(low / cellMm + 1e-9));
    const to = Math.min(rowCount, Math.ceil(high / cellMm - 1e-9));
    if (to > from) taken.fill(1, column * rowCount + from, column * rowCount + to);
  };
  // Where the ring crosses each column just inside its left and its right side.
  const crossings: number[][] = Array.from({ length: 2 * columnCount }, () => []);
  for (let i = 0; i < ring.length; i += 2) {
    const next = (i + 2) % ring.length;
    const [x1, y1, x2, y2] = [ring[i]!, ring[i + 1]!, ring[next]!, ring[next + 1]!];
    const [left, right] = x1 < x2 ? [x1, x2] : [x2, x1];
    const at = (x: number) => (x2 === x1 ? y1 : y1 + ((x - x1) / (x2 - x1)) * (y2 - y1));
    const first = Math.max(0, Math.floor(left / cellMm + 1e-9));
    for (let column = first; column < columnCount && column * cellMm < right - 1e-9; column++) {
      const a = at(Math.max(left, column * cellMm));
      const b = at(Math.min(right, (column + 1) * cellMm));
      mark(column, Math.min(a, b), Math.max(a, b));
    }
    const last = Math.min(columnCount - 1, Math.floor(right / cellMm));
    for (let column = first; column <= last; column++) {
      for (const side of [0, 1]) {
        const x = (column + side) * cellMm + (side === 0 ? hairMm : -hairMm);
        // Half open, so that a corner counts once.
        if (x >= left && x < right) crossings[2 * column + side]!.push(at(x));
      }
    }
  }
  crossings.forEach((ys, index) => {
    ys.sort((a, b) => a - b);
    for (let i = 0; i + 1 < ys.length; i += 2) mark(Math.floor(index / 2), ys[i]!, ys[i + 1]!);
  });
}

interface Cells {
  readonly column: number;
  readonly row: number;
  readonly columns: number;
  readonly rows: number;
}

/** Column by column, the free run up to each cell is a bar; the largest rectangle under the bars wins. */
function largestFree(
  taken: Uint8Array,
  columnCount: number,
  rowCount: number,
  minCells: number,
): Cells | null {
  const run = new Int32Array(rowCount + 1);
  let best: Cells | null = null;
  for (let column = 0; column < columnCount; column++) {
    const stack: { row: number; columns: number }[] = [];
    for (let row = 0; row <= rowCount; row++) {
      if (row < rowCount) run[row] = taken[column * rowCount + row] ? 0 : run[row]! + 1;
      const columns = row < rowCount ? run[row]! : 0;
      let begin = row;
      while (stack.length > 0 && stack.at(-1)!.columns >= columns) {
        const bar = stack.pop()!;
        begin = bar.row;
        const rows = row - bar.row;
        const isLarge = bar.columns >= minCells && rows >= minCells;
        if (isLarge && (!best || bar.columns * rows > best.columns * best.rows)) {
          best = { column: column - bar.columns + 1, row: bar.row, columns: bar.columns, rows };
        }
      }
      stack.push({ row: begin, columns });
    }
  }
  return best;
}
