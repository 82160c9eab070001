import { describe, expect, test } from 'vitest';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import type { LayJob, Placement } from '../../../shared-core/lay/job.ts';
import { layProblems } from '../../../shared-core/lay/problems.ts';
import { dice, job, laid, length, randomJob, rectangle, shape } from './jobs.ts';

function holding(asked: LayJob, held: readonly Placement[]): LayJob {
  return { ...asked, held };
}

describe('what I pinned', () => {
  test('stays where it is to the last digit, and all the rest is laid around it', () => {
    const next = dice(71);
    let heldInAll = 0;
    for (let round = 0; round < 50; round++) {
      const asked = randomJob(round);
      if (!asked) continue;
      const first = laid(asked, 40);
      const held = first.placements.filter(() => next() < 0.4);
      heldInAll += held.length;
      const result = laid(holding(asked, held), 60);
      expect(checkLay(asked, result), `job ${round}`).toEqual([]);
      for (const one of held) expect(result.placements).toContainEqual(one);
    }
    expect(heldInAll).toBeGreaterThan(60);
  });

  test('leaves its gaps to the others: a short strip goes between two pinned ones', () => {
    const asked = job([shape('strip', rectangle(400, 100), { count: 3 })], {
      lengths: [length('roll', 100, null)],
      clearanceMm: 0,
    });
    const at = (x: number): Placement => ({
      shape: 0,
      length: 0,
      x,
      y: 0,
      turnDeg: 0,
      mirrored: false,
      onFold: false,
    });
    const result = laid(holding(asked, [at(0), at(900)]), 4000);
    expect(checkLay(asked, result)).toEqual([]);
    expect(result.usedLengthMm[0]).toBeCloseTo(1300, 1);
  });

  test('may be everything: then there is nothing to look for', () => {
    const asked = job([shape('square', rectangle(50, 50), { count: 2 })], {
      lengths: [length('roll', 100, null)],
    });
    const first = laid(asked, 10);
    const result = laid(holding(asked, first.placements), 1000);
    expect(result.placements).toEqual(first.placements);
    expect(result.usedLengthMm).toEqual(first.usedLengthMm);
    expect(result.utilisation).toBeCloseTo(first.utilisation, 9);
  });

  test('is asked for again when the plan has fewer of it, or none', () => {
    const asked = job([shape('square', rectangle(50, 50), { count: 1 })], {
      lengths: [length('roll', 100, null)],
    });
    const one: Placement = { shape: 0, length: 0, x: 0, y: 0, turnDeg: 0, mirrored: false, onFold: false };
    expect(layProblems(holding(asked, [one]))).toEqual([]);
    expect(layProblems(holding(asked, [one, { ...one, x: 60 }]))[0]?.what).toBe(
      'is held more often than it is cut',
    );
    expect(layProblems(holding(asked, [{ ...one, shape: 3 }]))[0]?.what).toBe('is not in the plan');
    expect(layProblems(holding(asked, [{ ...one, length: 2 }]))[0]?.what).toBe(
      'is held on a length that is not there',
    );
  });
});
