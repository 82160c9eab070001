/** The solver of the basket against a published instance of cutting rolls with a known optimum. */
import { solveHere } from '../../main/services/threads/solver.ts';
import type { OutsideCheck } from './outside.ts';

const article = 'Wikipedia, Cutting stock problem, illustration of paper rolls of 5600 mm';

const rollMm = 5600;
/** Widths to be cut from rolls, mm, and how many of each. */
const orders: readonly (readonly [widthMm: number, count: number])[] = [
  [1380, 22],
  [1520, 25],
  [1560, 12],
  [1710, 14],
  [1820, 18],
  [1880, 18],
  [1930, 20],
  [2000, 10],
  [2050, 12],
  [2100, 14],
  [2140, 16],
  [2150, 18],
  [2200, 20],
];

/** Every way to cut a roll, the one that cuts nothing included. */
function patterns(from = 0, leftMm = rollMm): number[][] {
  const order = orders[from];
  if (!order) return [[]];
  const [widthMm] = order;
  const max = Math.floor(leftMm / widthMm);
  return Array.from({ length: max + 1 }, (_, count) =>
    patterns(from + 1, leftMm - count * widthMm).map((rest) => [count, ...rest]),
  ).flat();
}

const cuts = patterns().filter((cut) => cut.some((count) => count > 0));
const numbers = await solveHere({
  columns: cuts.map(() => ({ cost: 1, min: 0, max: 100 })),
  rows: orders.map(([, count], order) => ({
    terms: cuts.map((cut, column) => [column, cut[order] ?? 0] as const),
    min: count,
    max: null,
  })),
});
const rollCount = (numbers ?? []).reduce((sum, count) => sum + count, 0);
const orderedMm = orders.reduce((sum, [widthMm, count]) => sum + widthMm * count, 0);

const rows: readonly OutsideCheck[] = [
  {
    class: 'A',
    name: 'fewest rolls for the 13 widths',
    source: `${article}: 73`,
    expected: 73,
    got: rollCount,
    tolerance: 0,
  },
  {
    class: 'B',
    name: 'waste of the best cutting, %',
    source: `${article}: 0.401`,
    expected: 0.401,
    got: 100 * (1 - orderedMm / (rollCount * rollMm)),
    tolerance: 0.0005,
  },
];

export default rows;
