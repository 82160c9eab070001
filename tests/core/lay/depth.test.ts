import { FillRule, areaPaths, difference, intersect } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { type Ring, ringAreaMm2, ringBox, ringMoved } from '../../../shared-core/geometry/ring.ts';
import { convexParts } from '../../../shared-core/lay/engine/convex.ts';
import { depthsOf } from '../../../shared-core/lay/engine/depth.ts';
import { ringsNearer } from '../../../shared-core/lay/engine/exact.ts';
import { movesOf } from '../../../shared-core/lay/engine/moves.ts';
import { movesBinary } from '../../../shared-core/lay/engine/moves-binary.ts';
import { outwardRing } from '../../../shared-core/lay/engine/outward.ts';
import { compiledMoves } from './compile-moves.ts';
import { blob, dice, rectangle } from './jobs.ts';

const SCALE = 1e4;

function path(outline: Ring, dx = 0, dy = 0) {
  const points: { x: number; y: number }[] = [];
  for (let i = 0; i < outline.length; i += 2) {
    points.push({ x: Math.round((outline[i]! + dx) * SCALE), y: Math.round((outline[i + 1]! + dy) * SCALE) });
  }
  return points;
}

function sharedAreaMm2(one: Ring, two: Ring, dx: number, dy: number): number {
  return Math.abs(areaPaths(intersect([path(one)], [path(two, dx, dy)], FillRule.NonZero))) / SCALE ** 2;
}

function centred(outline: Ring): Ring {
  const box = ringBox(outline);
  return ringMoved(outline, -(box.minX + box.maxX) / 2, -(box.minY + box.maxY) / 2);
}

/** Depth of the second ring in the first when its centre is x, y from the first's. */
function depthsBetween(rings: readonly Ring[], clearanceMm: number) {
  const depths = depthsOf(
    rings.map((ring) => ({ ring, flaw: false })),
    clearanceMm,
    0,
    0,
  );
  const forms = rings.map((ring) => ({
    halfX: ringBox(ring).maxX,
    halfY: ringBox(ring).maxY,
    matchX: 0,
    matchY: 0,
  }));
  return movesOf({
    depths,
    forms,
    items: [],
    fixed: [],
    bins: [],
    reachMm: clearanceMm,
    grainMm: 0,
    nothingMm: 0,
    edgeMm: 0,
    widthMm: 1000,
    seed: 1,
  }).depthBetween;
}

test('the moves that run are those that are written', async () => {
  expect(await compiledMoves()).toBe(movesBinary);
});

describe('the depth of one piece in another', () => {
  test('is above 0 exactly where an exact library finds shared cloth', () => {
    const next = dice(31);
    for (let round = 0; round < 40; round++) {
      const one = centred(blob(next, 90, 60));
      const two = centred(blob(next, 70, 80));
      const depthBetween = depthsBetween([one, two], 0);
      for (let k = 0; k < 60; k++) {
        const dx = (next() - 0.5) * 170;
        const dy = (next() - 0.5) * 150;
        const depth = depthBetween(0, 1, dx, dy);
        const shared = sharedAreaMm2(one, two, dx, dy);
        // A scratch of a hair's breadth is beyond what both can tell apart.
        if (depth > 0.01) expect({ round, k, shared: shared > 0 }).toEqual({ round, k, shared: true });
        if (shared > 0.01) expect({ round, k, deep: depth > 0 }).toEqual({ round, k, deep: true });
        expect(depthBetween(1, 0, -dx, -dy)).toBeCloseTo(depth, 9);
      }
    }
  });

  test('is how far a square must go, with the clearance on top', () => {
    const square = centred(rectangle(50, 50));
    const depthBetween = depthsBetween([square], 3);
    expect(depthBetween(0, 0, 44, 11)).toBeCloseTo(9, 9);
    expect(depthBetween(0, 0, 52, 0)).toBeCloseTo(1, 9);
    expect(depthBetween(0, 0, 53.001, 0)).toBe(0);
    // Round the corner the clearance is round.
    expect(depthBetween(0, 0, 52.2, 52.2)).toBe(0);
  });
});

test('a simpler outline holds the true one, within the tolerance and the same box', () => {
  const next = dice(77);
  let spared = 0;
  for (let round = 0; round < 60; round++) {
    const corners = 60;
    const outline = new Float64Array(corners * 2);
    const lobes = 2 + Math.floor(next() * 4);
    for (let i = 0; i < corners; i++) {
      const angle = (i / corners) * 2 * Math.PI;
      const reach = 100 + 30 * Math.cos(lobes * angle) + 2 * next();
      outline[i * 2] = reach * Math.cos(angle);
      outline[i * 2 + 1] = reach * Math.sin(angle);
    }
    const simple = outwardRing(outline, 1.5);
    spared += corners - simple.length / 2;
    const lost = areaPaths(difference([path(outline)], [path(simple)], FillRule.NonZero)) / SCALE ** 2;
    expect(Math.abs(lost)).toBeLessThan(0.05);
    expect(ringAreaMm2(simple)).toBeLessThan(ringAreaMm2(outline) * 1.02);
    const box = ringBox(outline);
    expect(ringBox(simple).maxX).toBeLessThanOrEqual(box.maxX);
    expect(ringBox(simple).minY).toBeGreaterThanOrEqual(box.minY);
  }
  expect(spared).toBeGreaterThan(60 * 15);
});

test('convex parts cover a hollow outline and nothing else', () => {
  const next = dice(8);
  for (let round = 0; round < 50; round++) {
    const outline = blob(next, 120, 90);
    const parts = convexParts(outline);
    const area = parts.reduce((sum, part) => sum + ringAreaMm2(part), 0);
    expect(area).toBeCloseTo(ringAreaMm2(outline), 6);
    expect(parts.length).toBeLessThan(outline.length / 2);
  }
});

test('the exact comparison of outlines agrees with an exact library', () => {
  const next = dice(99);
  for (let k = 0; k < 600; k++) {
    const one = blob(next, 90, 60);
    const two = blob(next, 50, 70);
    const dx = (next() - 0.5) * 120;
    const dy = (next() - 0.5) * 120;
    const shared = sharedAreaMm2(one, two, dx, dy);
    if (shared > 0.001) expect(ringsNearer(one, two, dx, dy, 0)).toBe(true);
    if (shared === 0) expect(ringsNearer(one, two, dx, dy, -0)).toBe(false);
  }
  const square = rectangle(40, 40);
  expect(ringsNearer(square, square, 45, 0, 4.9)).toBe(false);
  expect(ringsNearer(square, square, 45, 0, 5.1)).toBe(true);
  expect(ringsNearer(square, rectangle(4, 4), 10, 10, 0)).toBe(true);
});
