import { describe, expect, test } from 'vitest';
import { type Ring, ringAreaMm2 } from '../../../shared-core/geometry/ring.ts';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import { layProblems } from '../../../shared-core/lay/lay.ts';
import { madeInstances } from '../../bench/instances/all-made.ts';
import { knownLay, type MadeInstance, madeJob } from '../../bench/instances/made.ts';

const made = [1, 2, 3].flatMap((family) => madeInstances(family));

function areaOf({ pieces }: MadeInstance): number {
  return pieces.reduce((sum, { ring, places }) => sum + ringAreaMm2(ring) * places.length, 0);
}

function isOnGrid(ring: Ring): boolean {
  return ring.every((value) => Number.isInteger(value));
}

describe('a strip cut into pieces for a bench', () => {
  test('loses no cloth', () => {
    for (const one of made) {
      const areaMm2 = one.widthMm * one.lengthMm;
      if (one.pieces.every(({ ring }) => isOnGrid(ring))) expect(areaOf(one)).toBe(areaMm2);
      expect(areaOf(one) / areaMm2).toBeCloseTo(1, 11);
    }
  });

  test('is a job without problems: every piece is one simple outline', () => {
    for (const one of made) {
      expect({ name: one.name, problems: layProblems(madeJob(one, 1)) }).toEqual({
        name: one.name,
        problems: [],
      });
      for (const { ring } of one.pieces) expect(ringAreaMm2(ring)).toBeGreaterThan(0);
    }
  });

  test('can be laid as it was cut, without a hair between', () => {
    for (const one of made) {
      expect({ name: one.name, problems: checkLay(madeJob(one, 1), knownLay(one)) }).toEqual({
        name: one.name,
        problems: [],
      });
    }
  });

  test('gives each piece turned by one of its turns, in another order than it was cut', () => {
    for (const one of made) {
      for (const { turnsDeg, places } of one.pieces) {
        for (const { turnDeg } of places) expect(turnsDeg).toContain(turnDeg);
      }
      const xs = one.pieces.map(({ places }) => places[0]!.x);
      if (xs.length > 10) expect(xs).not.toEqual([...xs].sort((a, b) => a - b));
    }
  });

  test('has the shapes that its kind promises', () => {
    for (const { kind, pieces } of made) {
      const corners = pieces.map(({ ring }) => ring.length / 2);
      if (kind === 'jigsaw') expect(Math.min(...corners)).toBeGreaterThanOrEqual(40);
      if (kind === 'polyominoes' || kind === 'rectangles') {
        for (const { ring } of pieces) {
          const sides = ring.map((value, i) => ring[(i + 2) % ring.length]! - value);
          for (let i = 0; i < sides.length; i += 2)
            expect(Math.min(Math.abs(sides[i]!), Math.abs(sides[i + 1]!))).toBe(0);
        }
      }
      const count = pieces.reduce((sum, { places }) => sum + places.length, 0);
      if (kind === 'copies') {
        expect(count).toBeGreaterThanOrEqual(100);
        expect(pieces.length).toBeLessThanOrEqual(4);
      } else expect(count).toBeLessThanOrEqual(44);
    }
  });

  test('has a name of its own', () => {
    const names = madeInstances().map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  test('is the same each time and another for another seed', () => {
    expect(madeInstances(2)).toEqual(madeInstances(2));
    expect(madeInstances(2)).not.toEqual(madeInstances(3));
  });
});
