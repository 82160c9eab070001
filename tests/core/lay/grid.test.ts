import { describe, expect, test } from 'vitest';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import { drawnIn, gridStep } from '../../../shared-core/lay/engine/grid.ts';
import { madeInstances } from '../../bench/instances/all-made.ts';
import { madeJob } from '../../bench/instances/made.ts';
import { blob, dice, job, laid, length, rectangle, ring, shape } from './jobs.ts';

const corner = ring([0, 0], [120, 0], [120, 40], [80, 40], [80, 160], [0, 160]);

describe('the grid that pieces lie on', () => {
  test('is the widest on which all corners lie, wherever each piece was drawn', () => {
    expect(gridStep([corner], 1, 1e-6)).toBe(40);
    expect(gridStep([corner, rectangle(60, 80)], 1, 1e-6)).toBe(20);
    const aside = corner.map((value) => value + 7.3);
    expect(gridStep([aside, rectangle(60, 80)], 1, 1e-6)).toBeCloseTo(20, 9);
  });

  test('is none when a side slants, when it would be too fine or when a corner strays', () => {
    expect(gridStep([corner, blob(dice(3), 90, 60)], 1, 1e-6)).toBe(0);
    expect(gridStep([corner, rectangle(61, 80)], 2, 1e-6)).toBe(0);
    expect(gridStep([corner, rectangle(80.01, 80)], 1, 1e-6)).toBe(0);
    expect(gridStep([ring([0, 0], [40, 0], [80, 0], [80, 40], [0, 40])], 1, 1e-6)).toBe(0);
  });

  test('a piece drawn in is smaller by the same on every side, at hollow corners too', () => {
    expect([...drawnIn(corner, 1)]).toEqual([1, 1, 119, 1, 119, 39, 79, 39, 79, 159, 1, 159]);
  });
});

describe('right-angled pieces', () => {
  test('that fit without a gap are laid without a gap', () => {
    const puzzle = madeJob(madeInstances().find(({ kind }) => kind === 'polyominoes')!, 1);
    const result = laid(puzzle, 60_000);
    expect(checkLay(puzzle, result)).toEqual([]);
    expect(result.utilisation).toBeCloseTo(1, 9);
    expect(result.stoppedBy).toBe('floor');
  });

  test('are laid on lengths that end, on the grid of each', () => {
    const asked = job([shape('corner', corner, { count: 9, turnsDeg: [0, 90, 180, 270] })], {
      lengths: [length('rest', 333, 407), length('roll', 250, null)],
    });
    const result = laid(asked, 4000);
    expect(checkLay(asked, result)).toEqual([]);
    const first = result.placements.filter((placement) => placement.length === 0);
    expect(first.length).toBeGreaterThan(4);
    for (const { x, y } of result.placements) {
      expect(x / 40).toBeCloseTo(Math.round(x / 40), 9);
      expect(y / 40).toBeCloseTo(Math.round(y / 40), 9);
    }
  });

  test('keep their clearance, which no grid of squares knows of', () => {
    const asked = job([shape('corner', corner, { count: 6 })], {
      lengths: [length('roll', 330, null)],
      clearanceMm: 3,
    });
    expect(checkLay(asked, laid(asked, 2000))).toEqual([]);
  });
});
