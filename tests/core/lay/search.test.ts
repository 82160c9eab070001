import { describe, expect, test } from 'vitest';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import type { LayResult } from '../../../shared-core/lay/job.ts';
import { lay, startLay } from '../../../shared-core/lay/lay.ts';
import { blob, dice, job, laid, length, rectangle, shape } from './jobs.ts';

const next = dice(5);
const blobs = job(
  Array.from({ length: 7 }, (_, index) => shape(`piece ${index}`, blob(next, 380, 260), { count: 3 })),
  { lengths: [length('roll', 900, null)], clearanceMm: 2 },
);

describe('a lay', () => {
  test('is valid as soon as it has begun', () => {
    const first = startLay(blobs, () => 0).best();
    expect(first.placements).toHaveLength(21);
    expect(checkLay(blobs, first)).toEqual([]);
  });

  test('is the same for the same seed and number of moves, and another for another seed', () => {
    const one = laid(blobs, 900);
    expect(laid(blobs, 900)).toEqual(one);
    expect(laid({ ...blobs, seed: 12 }, 900).placements).not.toEqual(one.placements);
  });

  test('is the same in slices as in one go', () => {
    const budget = { seconds: null, iterations: 900 };
    const sliced = startLay(blobs, () => 0, budget);
    for (let slice = 0; slice < 9; slice++) sliced.advance({ ms: null, iterations: 100 });
    expect(sliced.best().placements).toEqual(laid(blobs, 900).placements);
  });

  test('only gets shorter, each one valid', () => {
    const seen: LayResult[] = [];
    const result = lay(
      blobs,
      { seconds: null, iterations: 12000 },
      { clock: () => 0, onBetter: (one) => seen.push(one) },
    );
    expect(seen.length).toBeGreaterThan(3);
    for (const one of seen) expect(checkLay(blobs, one)).toEqual([]);
    const lengths = seen.map((one) => one.usedLengthMm[0]!);
    expect(lengths).toEqual([...lengths].sort((a, b) => b - a));
    expect(result.usedLengthMm[0]).toBe(lengths.at(-1));
    expect(result.usedLengthMm[0]).toBeLessThan(lengths[0]! * 0.9);
  });

  test('stops when the maker says so, and when the time is up', () => {
    let asked = 0;
    const stopped = lay(
      blobs,
      { seconds: null, iterations: null },
      { clock: () => 0, stopped: () => ++asked > 3 },
    );
    expect(stopped.stoppedBy).toBe('maker');
    let now = 0;
    const timed = lay(blobs, { seconds: 0.2, iterations: null }, { clock: () => now++ });
    expect(timed.stoppedBy).toBe('time');
    expect(timed.seconds).toBeLessThan(0.3);
  });

  test('stops at the floor, where no lay can be shorter', () => {
    const asked = job([shape('tile', rectangle(170, 100), { count: 12 })], {
      lengths: [length('roll', 400, null)],
    });
    const result = laid(asked, 100_000);
    expect(result.stoppedBy).toBe('floor');
    expect(result.floorMm).toBeCloseTo(510, 6);
    expect(result.usedLengthMm[0]).toBeCloseTo(510, 2);
    expect(result.iterations).toBeLessThan(100_000);
  });

  test('of nothing is nothing', () => {
    const result = laid(job([]), 10);
    expect(result).toMatchObject({ placements: [], usedLengthMm: [0], unplaced: [] });
  });
});
