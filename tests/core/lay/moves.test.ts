import { describe, expect, test } from 'vitest';
import { depthsOf } from '../../../shared-core/lay/engine/depth.ts';
import { movesOf } from '../../../shared-core/lay/engine/moves.ts';

const LONG = 0;
const SHORT = 1;

function box(widthX: number, widthY: number): Float64Array {
  const [x, y] = [widthX / 2, widthY / 2];
  return Float64Array.of(-x, -y, x, -y, x, y, -x, y);
}

/** Cloth with a flaw across it, 82 mm to its left and 122 to its right; a piece of 120 mm and one of 80 fill the width. */
function wrongWayRound(more: { readonly maxBytes?: number } = {}) {
  const rings = [box(120, 100), box(80, 100), box(16, 100)];
  const free = { stepX: 0, stepY: 0, phaseX: 0, phaseY: 0, onFold: false };
  const moves = movesOf({
    depths: depthsOf(
      rings.map((ring, k) => ({ ring, flaw: k === 2 })),
      0,
      0,
      0.01,
    ),
    forms: rings.map((ring) => ({ halfX: ring[2]!, halfY: ring[5]!, matchX: 0, matchY: 0 })),
    items: [
      { ...free, forms: [LONG], areaMm2: 12000 },
      { ...free, forms: [SHORT], areaMm2: 8000 },
    ],
    fixed: [{ x: 90, y: 50, form: 2 }],
    bins: [{ startX: 0, widthMm: 100 }],
    reachMm: 0,
    grainMm: 0.001,
    nothingMm: 0.001,
    edgeMm: 0.01,
    widthMm: 100,
    seed: 5,
    ...more,
  });
  moves.limit[0] = 220;
  expect(moves.place(LONG, LONG, 60, 50)).toBe(true);
  expect(moves.place(SHORT, SHORT, 159, 50)).toBe(true);
  moves.resetWeights();
  return moves;
}

describe('two pieces that lie in each other’s place', () => {
  test('stay in the way as long as one of them is moved alone', () => {
    const moves = wrongWayRound();
    for (let k = 0; k < 50; k++) moves.moveItem(LONG, 0);
    expect(moves.measure()).toBeGreaterThan(0);
    expect(moves.x[SHORT]).toBe(159);
  });

  test('come apart when they are exchanged', () => {
    const moves = wrongWayRound();
    for (let k = 0; k < 50 && moves.measure() > 0; k++) moves.moveItem(LONG, 3);
    expect(moves.measure()).toBe(0);
    expect(moves.x[SHORT]).toBeLessThan(82);
    expect(moves.x[LONG]).toBeGreaterThan(98);
  });

  test('lie where they lay when an exchange brings nothing', () => {
    const moves = wrongWayRound();
    // On cloth without room for the long piece beside the flaw, either way round is as bad.
    moves.limit[0] = 200;
    expect(moves.place(SHORT, SHORT, 150, 50)).toBe(true);
    for (let k = 0; k < 50; k++) {
      const before = moves.measure();
      moves.moveItem(LONG, 3);
      expect(moves.measure()).toBeLessThanOrEqual(before + 1e-9);
    }
  });
});

test('pieces move alike when memory holds only the tables of the move at hand', () => {
  const roomy = wrongWayRound();
  const tight = wrongWayRound({ maxBytes: 0 });
  for (let k = 0; k < 30; k++) {
    for (const moves of [roomy, tight]) moves.moveItem(k % 2, 3);
    expect([...tight.x, ...tight.y]).toEqual([...roomy.x, ...roomy.y]);
    expect(tight.measure()).toBe(roomy.measure());
  }
});

describe('the rough depth, by which places are chosen', () => {
  test('is that of the corners of the grid, and in between never further off than a cell is large', () => {
    const { moves, rings } = twoWedges();
    const half = (k: number, axis: 0 | 1) => Math.max(...rings[k]!.filter((_, i) => i % 2 === axis));
    const sides = (x: number, y: number) =>
      [x, y].reduce((sum, apart, axis) => {
        const [a, b] = [half(0, axis as 0 | 1), half(1, axis as 0 | 1)];
        return sum + Math.min(a + b - Math.abs(apart), 2 * Math.min(a, b));
      }, 0);
    const [reachX, reachY] = [half(0, 0) + half(1, 0), half(0, 1) + half(1, 1)];
    // Of some 256 cells and more, nearly square.
    const cellMm = Math.sqrt((4 * reachX * reachY) / 256) * 1.5;
    let inside = 0;
    let furthest = 0;
    for (let k = 0; k < 4000; k++) {
      const x = reachX * Math.sin(k * 1.7) * 0.98;
      const y = reachY * Math.sin(k * 2.9) * 0.98;
      const depth = moves.depthBetween(0, 1, x, y);
      if (depth > 0) inside += 1;
      const rough = Math.max(0, moves.roughBetween(0, 1, x, y)) / Math.sqrt(sides(x, y));
      furthest = Math.max(furthest, Math.abs(rough - depth));
    }
    expect(inside).toBeGreaterThan(1000);
    expect(furthest).toBeGreaterThan(0);
    expect(furthest).toBeLessThan(cellMm);
  });
});

function twoWedges() {
  const rings = [
    Float64Array.of(-60, -40, 60, -40, 20, 40, -60, 40),
    Float64Array.of(-35, -25, 35, -25, 0, 25),
  ];
  const free = { stepX: 0, stepY: 0, phaseX: 0, phaseY: 0, onFold: false };
  const moves = movesOf({
    depths: depthsOf(
      rings.map((ring) => ({ ring, flaw: false })),
      0,
      0,
      0.01,
    ),
    forms: rings.map((ring) => ({
      halfX: Math.max(...ring.filter((_, i) => i % 2 === 0)),
      halfY: Math.max(...ring.filter((_, i) => i % 2 === 1)),
      matchX: 0,
      matchY: 0,
    })),
    items: rings.map((_, k) => ({ ...free, forms: [k], areaMm2: 8000 })),
    fixed: [],
    bins: [{ startX: 0, widthMm: 200 }],
    reachMm: 0,
    grainMm: 0.001,
    nothingMm: 0.001,
    edgeMm: 0.01,
    widthMm: 200,
    seed: 5,
  });
  return { moves, rings };
}
