/**
 * Right-angled pieces on a grid (see ../grid.ts) that fill a strip of so many columns, or all of it but a few squares:
 * the first free square, column by column, is covered by one piece after another, or left empty while the strip has
 * squares to spare; what leads nowhere is taken back.
 */
import type { Model } from '../model.ts';
import type { Random } from '../random.ts';

/** Pieces as squares of a board. */
export interface Board {
  readonly rows: number;
  readonly stepMm: number;
  readonly kinds: readonly BoardKind[];
  readonly pieceCount: number;
  /** Squares of all pieces. */
  readonly squareCount: number;
}

interface BoardKind {
  readonly items: readonly number[];
  readonly size: number;
  readonly forms: readonly BoardForm[];
}

interface BoardForm {
  readonly form: number;
  /** Each square seen from the first one in the order of the board, columns and rows in turn. */
  readonly columns: readonly number[];
  readonly rows: readonly number[];
  /** From the first square's lower left corner to the centre of the form's box, in squares. */
  readonly centreColumn: number;
  readonly centreRow: number;
}

/** Where a piece lies: column and row of the centre of its box. */
export interface BoardPiece {
  readonly item: number;
  readonly form: number;
  readonly column: number;
  readonly row: number;
}

export interface FillTry {
  /** Goes on by some squares; false when the try is over. */
  step(): boolean;
  found(): readonly BoardPiece[] | null;
}

/** How much chance there is in the order of what is tried, beside scores of about 4. */
const CHANCE = 2;
/** Large pieces first: what a square counts beside the part of a piece's edge that touches something. */
const SIZE_WEIGHT = 0.1;
const SQUARES_A_STEP = 8;

/** The board of a model whose items stand on a grid of squares. */
export function boardOf({ items, forms, widthMm }: Model): Board {
  const stepMm = items[0]!.stepX;
  const kinds = [...Map.groupBy(items.keys(), (at) => items[at]!.forms)].map(([own, which]): BoardKind => {
    const boardForms = own.map((form) => boardForm(form, forms[form]!, stepMm));
    return { items: which, forms: boardForms, size: boardForms[0]!.columns.length };
  });
  return {
    rows: Math.floor(widthMm / stepMm + 1e-6),
    stepMm,
    kinds,
    pieceCount: items.length,
    squareCount: kinds.reduce((sum, { size, items: { length } }) => sum + size * length, 0),
  };
}

function boardForm(form: number, { ring, halfX, halfY }: Model['forms'][number], stepMm: number): BoardForm {
  const columnCount = Math.round((2 * halfX) / stepMm);
  const rowCount = Math.round((2 * halfY) / stepMm);
  const columns: number[] = [];
  const rows: number[] = [];
  for (let column = 0; column < columnCount; column++) {
    for (let row = 0; row < rowCount; row++) {
      if (!isInside(ring, (column + 0.5) * stepMm - halfX, (row + 0.5) * stepMm - halfY)) continue;
      columns.push(column);
      rows.push(row);
    }
  }
  const [firstColumn, firstRow] = [columns[0]!, rows[0]!];
  return {
    form,
    columns: columns.map((column) => column - firstColumn),
    rows: rows.map((row) => row - firstRow),
    centreColumn: columnCount / 2 - firstColumn,
    centreRow: rowCount / 2 - firstRow,
  };
}

function isInside(ring: Float64Array, x: number, y: number): boolean {
  let inside = false;
  const count = ring.length;
  for (let i = 0; i < count; i += 2) {
    const [fromX, fromY] = [ring[i]!, ring[i + 1]!];
    const [toX, toY] = [ring[(i + 2) % count]!, ring[(i + 3) % count]!];
    if (fromY > y !== toY > y && x < fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX)) inside = !inside;
  }
  return inside;
}

/** A square on which a piece is to be laid, and what is tried there. */
interface Level {
  readonly at: number;
  readonly choices: readonly number[];
  /** Behind the choice that stands; beyond all choices when the square is left empty. */
  next: number;
}

/** One try on so many columns, which hold all squares; one try after another differs by chance. */
export function startFill(board: Board, columnCount: number, random: Random): FillTry {
  const { kinds, rows } = board;
  // Beside each column stands a wall, and behind the last one enough of it for any piece.
  const stride = rows + 1;
  const end = columnCount * stride;
  const shapes = kinds.flatMap(({ forms }, kind) =>
    forms.map((form) => ({
      kind,
      form,
      offsets: Int32Array.from(form.columns, (column, i) => column * stride + form.rows[i]!),
    })),
  );
  const longest = Math.max(...shapes.flatMap(({ offsets }) => [...offsets]));
  const isTaken = new Uint8Array(end + longest + stride).fill(1);
  for (let column = 0; column < columnCount; column++) {
    isTaken.fill(0, column * stride, column * stride + rows);
  }
  const beside = [1, -1, stride, -stride];
  const left = kinds.map(({ items }) => items.length);
  let open = board.pieceCount;
  let spare = columnCount * rows - board.squareCount;
  const levels: Level[] = [];
  let isOver = false;
  let solution: readonly BoardPiece[] | null = null;

  /** Each search for a pocket has a number; those since the piece was laid found room enough where they went. */
  const seen = new Int32Array(isTaken.length);
  let searches = 0;
  const largest = Math.max(...kinds.map(({ size }) => size));
  const queue = new Int32Array(largest + 1);
  /** How many free squares hang together from there, up to `most`. */
  function pocketFrom(at: number, most: number, since: number): number {
    searches += 1;
    let count = 1;
    queue[0] = at;
    seen[at] = searches;
    for (let k = 0; k < count; k++) {
      for (const way of beside) {
        const to = queue[k]! + way;
        if (to < 0 || isTaken[to] === 1 || seen[to] === searches) continue;
        if (seen[to]! > since || count >= most) return most;
        seen[to] = searches;
        queue[count] = to;
        count += 1;
      }
    }
    return count;
  }

  /** Squares that no piece can cover once this one lies there: they hang together in fewer than any piece left has. */
  function lostAround(at: number, offsets: Int32Array): number {
    if (open === 1) return 0;
    const smallest = Math.min(...kinds.map(({ size }, kind) => (left[kind]! > 0 ? size : Infinity)));
    const since = searches;
    let lost = 0;
    for (const offset of offsets) {
      for (const way of beside) {
        const to = at + offset + way;
        if (to < 0 || isTaken[to] === 1 || seen[to]! > since) continue;
        const count = pocketFrom(to, smallest, since);
        if (count < smallest) lost += count;
        if (lost > spare) return lost;
      }
    }
    return lost;
  }

  function mark(at: number, offsets: Int32Array, value: 0 | 1): void {
    for (const offset of offsets) isTaken[at + offset] = value;
  }

  /** The next square to cover, with what fits there, best first. */
  function levelFrom(from: number): Level | null {
    let at = from;
    while (at < end && isTaken[at] === 1) at += 1;
    if (at === end) return null;
    const fitting: { shape: number; score: number }[] = [];
    shapes.forEach(({ kind, offsets }, shape) => {
      if (left[kind] === 0) return;
      for (const offset of offsets) if (at + offset < 0 || isTaken[at + offset] === 1) return;
      let touching = 0;
      for (const offset of offsets) {
        for (const way of beside)
          if (at + offset + way < 0 || isTaken[at + offset + way] === 1) touching += 1;
      }
      const { size } = kinds[kind]!;
      const score = touching / Math.sqrt(size) + SIZE_WEIGHT * size + CHANCE * random.next();
      fitting.push({ shape, score });
    });
    fitting.sort((one, other) => other.score - one.score);
    return { at, choices: fitting.map(({ shape }) => shape), next: 0 };
  }

  /** Takes back what stands on the last level. */
  function takeBack(level: Level): void {
    const shape = level.choices[level.next - 1];
    if (shape === undefined) {
      isTaken[level.at] = 0;
      spare += 1;
      return;
    }
    const { kind, offsets } = shapes[shape]!;
    mark(level.at, offsets, 0);
    left[kind]! += 1;
    open += 1;
  }

  /** The next choice of a level that can stand there; false when none is left. */
  function takeNext(level: Level): boolean {
    while (level.next < level.choices.length) {
      const { kind, offsets } = shapes[level.choices[level.next]!]!;
      level.next += 1;
      mark(level.at, offsets, 1);
      if (lostAround(level.at, offsets) <= spare) {
        left[kind]! -= 1;
        open -= 1;
        return true;
      }
      mark(level.at, offsets, 0);
    }
    // Past all choices the square itself is given up, once.
    if (level.next > level.choices.length || spare === 0) return false;
    level.next = level.choices.length + 2;
    isTaken[level.at] = 1;
    spare -= 1;
    return true;
  }

  function advance(): boolean {
    const top = levels.at(-1);
    if (top === undefined) return false;
    if (!takeNext(top)) {
      levels.pop();
      const below = levels.at(-1);
      if (below) takeBack(below);
      return below !== undefined;
    }
    if (open === 0) {
      solution = laidPieces();
      return false;
    }
    const next = levelFrom(top.at);
    if (next) levels.push(next);
    else takeBack(top);
    return true;
  }

  const first = levelFrom(0);
  if (first && spare >= 0) levels.push(first);
  return {
    step() {
      for (let square = 0; square < SQUARES_A_STEP && !isOver; square++) isOver = !advance();
      return !isOver;
    },
    found: () => solution,
  };

  function laidPieces(): BoardPiece[] {
    const used = kinds.map(() => 0);
    return levels.flatMap(({ at, choices, next }): BoardPiece[] => {
      const shape = shapes[choices[next - 1] ?? -1];
      if (shape === undefined) return [];
      const { kind, form } = shape;
      const item = kinds[kind]!.items[used[kind]!]!;
      used[kind]! += 1;
      const column = Math.floor(at / stride) + form.centreColumn;
      return [{ item, form: form.form, column, row: (at % stride) + form.centreRow }];
    });
  }
}
