/** Right-angled pieces on a grid of squares. */
import type { Ring } from '../../../shared-core/geometry/ring.ts';
import { below, type CutStrip, type Dice } from './made.ts';

type Cell = readonly [number, number];

/** The outline of squares that hang together, counter-clockwise; null when it has a hole or touches itself. */
function outlineOf(cells: readonly Cell[], cellMm: number): Ring | null {
  const held = new Set(cells.map(([x, y]) => `${x},${y}`));
  const nextOf = new Map<string, Cell>();
  let sides = 0;
  const add = (from: Cell, to: Cell, beyond: Cell): void => {
    if (held.has(beyond.join())) return;
    nextOf.set(from.join(), to);
    sides += 1;
  };
  for (const [x, y] of cells) {
    add([x, y], [x + 1, y], [x, y - 1]);
    add([x + 1, y], [x + 1, y + 1], [x + 1, y]);
    add([x + 1, y + 1], [x, y + 1], [x, y + 1]);
    add([x, y + 1], [x, y], [x - 1, y]);
  }
  const walk: Cell[] = [];
  const begun = [...nextOf.values()][0]!;
  let here = begun;
  do {
    walk.push(here);
    here = nextOf.get(here.join())!;
  } while (here.join() !== begun.join() && walk.length <= sides);
  if (walk.length !== sides) return null;
  const corners = walk.filter(([x, y], k) => {
    const [beforeX, beforeY] = walk.at(k - 1)!;
    const [afterX, afterY] = walk[(k + 1) % walk.length]!;
    return (x - beforeX) * (afterY - y) !== (y - beforeY) * (afterX - x);
  });
  return Float64Array.from(corners.flatMap(([x, y]) => [x * cellMm, y * cellMm]));
}

/** Cuts a grid into so many pieces: again and again the smallest is joined with a neighbour. */
export function polyominoCut(
  columns: number,
  rows: number,
  count: number,
  cellMm: number,
  next: Dice,
): CutStrip {
  let pieces: Cell[][] = [];
  for (let x = 0; x < columns; x++) for (let y = 0; y < rows; y++) pieces.push([[x, y]]);
  const touch = (one: readonly Cell[], two: readonly Cell[]): boolean =>
    one.some(([x, y]) => two.some(([u, v]) => Math.abs(x - u) + Math.abs(y - v) === 1));
  while (pieces.length > count) {
    const one = pieces
      .map((piece) => ({ piece, rank: piece.length + 0.9 * next() }))
      .sort((a, b) => a.rank - b.rank);
    const joined = one
      .flatMap(({ piece }, k) => (k < 4 ? [piece] : []))
      .flatMap((piece) => {
        const others = pieces.filter((other) => other !== piece && touch(piece, other));
        const other = others[below(next, others.length)]!;
        return outlineOf([...piece, ...other], cellMm) === null ? [] : [[piece, other] as const];
      })[0];
    if (joined === undefined) continue;
    const [piece, other] = joined;
    pieces = [...pieces.filter((each) => each !== piece && each !== other), [...piece, ...other]];
  }
  return {
    widthMm: rows * cellMm,
    lengthMm: columns * cellMm,
    cut: pieces.map((piece) => [outlineOf(piece, cellMm)!]),
  };
}
