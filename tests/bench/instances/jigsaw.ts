/** Very hollow pieces: a grid whose inner lines are cut in waves, zigzags or with knobs, twenty corners each. */
import type { CutStrip, Dice } from './made.ts';

type Point = readonly [number, number];
const CORNERS = 20;

/** Points between the ends of a line, as parts along it (0 to 1) and to its left. */
type Course = (next: Dice) => Point[];

/** The ends stay narrow, so that lines which meet there do not cross. */
function room(along: number, steepness: number): number {
  return Math.min(1, steepness * Math.min(along, 1 - along));
}

const wave: Course = (next) => {
  const side = next() < 0.5 ? -1 : 1;
  const high = side * (0.13 + 0.07 * next());
  const bends = 1 + Math.round(next());
  return Array.from({ length: CORNERS }, (_, k) => {
    const along = (k + 1) / (CORNERS + 1);
    return [along, room(along, 4) * high * Math.sin(along * Math.PI * (1 + bends))];
  });
};

const zigzag: Course = (next) =>
  Array.from({ length: CORNERS }, (_, k) => {
    const along = (k + 1) / (CORNERS + 1);
    return [along, (k % 2 === 0 ? 1 : -1) * room(along, 6) * (0.04 + 0.11 * next())];
  });

const knob: Course = (next) => {
  const side = next() < 0.5 ? -1 : 1;
  const middle = 0.44 + 0.12 * next();
  const radius = 0.1 + 0.03 * next();
  return Array.from({ length: CORNERS }, (_, k) => {
    // Most of a circle, begun beneath on the near side, that stands off the line on a neck narrower than itself.
    const angle = (0.2 + (1.6 * k) / (CORNERS - 1)) * Math.PI;
    return [middle - radius * Math.sin(angle), side * radius * (1.1 - Math.cos(angle))];
  });
};

export const courses = { wave, zigzag, knob };

/** Cuts a strip into columns x rows such pieces; inner corners of the grid are moved by up to a tenth. */
export function jigsawCut(
  columns: number,
  rows: number,
  sideMm: number,
  course: keyof typeof courses,
  next: Dice,
): CutStrip {
  const nodes: Point[][] = Array.from({ length: columns + 1 }, (_, x) =>
    Array.from({ length: rows + 1 }, (_, y): Point => {
      const moveX = x === 0 || x === columns ? 0 : (next() - 0.5) * 0.2;
      const moveY = y === 0 || y === rows ? 0 : (next() - 0.5) * 0.2;
      return [(x + moveX) * sideMm, (y + moveY) * sideMm];
    }),
  );
  const lineBetween = (from: Point, to: Point, isCut: boolean): Point[] => {
    if (!isCut) return [];
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    return courses[course](next).map(([along, off]) => [
      from[0] + dx * along - dy * off,
      from[1] + dy * along + dx * off,
    ]);
  };
  const along = nodes.map((column, x) =>
    column.map((node, y) => (x === columns ? [] : lineBetween(node, nodes[x + 1]![y]!, y > 0 && y < rows))),
  );
  const across = nodes.map((column, x) =>
    column.map((node, y) => (y === rows ? [] : lineBetween(node, column[y + 1]!, x > 0 && x < columns))),
  );
  const cut: Float64Array[][] = [];
  for (let x = 0; x < columns; x++) {
    for (let y = 0; y < rows; y++) {
      const points = [
        nodes[x]![y]!,
        ...along[x]![y]!,
        nodes[x + 1]![y]!,
        ...across[x + 1]![y]!,
        nodes[x + 1]![y + 1]!,
        ...along[x]![y + 1]!.toReversed(),
        nodes[x]![y + 1]!,
        ...across[x]![y]!.toReversed(),
      ];
      cut.push([Float64Array.from(points.flat())]);
    }
  }
  return { widthMm: rows * sideMm, lengthMm: columns * sideMm, cut };
}
