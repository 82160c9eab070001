import { describe, expect, test } from 'vitest';
import { type Ring, ringAreaMm2, ringBox } from '../../../shared-core/geometry/ring.ts';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import { outwardRing } from '../../../shared-core/lay/engine/outward.ts';
import type { LayJob } from '../../../shared-core/lay/job.ts';
import { lay, layProblems, startLay } from '../../../shared-core/lay/lay.ts';
import { dice, job, laid, length, rectangle, ring, roughOutline, shape } from './jobs.ts';

/** Time that this thread has worked, ms: what else the machine does is not counted. */
function workedMs(): number {
  const { user, system } = process.threadCpuUsage();
  return (user + system) / 1000;
}

function roughJob(corners: number, kinds: number, count: number): LayJob {
  const next = dice(corners + kinds);
  return job(
    Array.from({ length: kinds }, (_, k) =>
      shape(`rough ${k}`, roughOutline(next, corners, 480 - 25 * k, 330 - 10 * k, 0.2), {
        count,
        mirroredCount: 1,
      }),
    ),
    { clearanceMm: 2 },
  );
}

describe('a lay asked for a second', () => {
  test.each([
    [600, 3, 2],
    [400, 6, 3],
  ])('ends within one and a half, with outlines of %i rough corners', (corners, kinds, count) => {
    const asked = roughJob(corners, kinds, count);
    const startedMs = workedMs();
    const result = lay(asked, { seconds: 1, iterations: null }, { clock: workedMs });
    expect(workedMs() - startedMs).toBeLessThan(1500);
    expect(checkLay(asked, result)).toEqual([]);
  });

  test('gives up a move half way rather than make tables for it when the time is over', () => {
    // A clock that stands still until the first lay is there, and then leaps past the end.
    const asked = roughJob(60, 8, 2);
    let now = 0;
    const search = startLay(asked, () => now, { seconds: 1, iterations: null });
    const first = search.best();
    const startedMs = workedMs();
    const clock = (): number => now;
    now = 5000;
    expect(clock()).toBe(5000);
    expect(search.advance({ ms: 10, iterations: 200, maxMs: 0 })).toBe(true);
    expect(workedMs() - startedMs).toBeLessThan(50);
    expect(search.best().placements).toEqual(first.placements);
    // Nothing is lost by it: with time again the search goes on from the best lay.
    search.advance({ ms: null, iterations: 400 });
    expect(search.best().iterations).toBeGreaterThan(300);
    expect(checkLay(asked, search.best())).toEqual([]);
  });

  test('lays along one frontier only when that took the time', () => {
    let looks = 0;
    const slow = startLay(roughJob(40, 3, 2), () => 600 * looks++, { seconds: 1, iterations: null });
    const looksOfOne = looks;
    looks = 0;
    startLay(roughJob(40, 3, 2), () => looks++, { seconds: 1, iterations: null });
    expect(looksOfOne).toBeLessThan(looks);
    expect(slow.best().placements).toHaveLength(9);
  });
});

describe('an outline of many corners', () => {
  test('is laid as one of a hundred that holds it, in the same box', () => {
    const next = dice(3);
    for (const [corners, roughness] of [
      [600, 0.05],
      [600, 0.5],
      [3000, 0.3],
    ] as const) {
      const outline = roughOutline(next, corners, 500, 300, roughness);
      const simple = outwardRing(outline, 0.4, 100);
      expect(simple.length / 2).toBeLessThanOrEqual(100);
      expect(ringBox(simple)).toEqual(ringBox(outline));
      expect(ringAreaMm2(simple)).toBeLessThan(500 * 300);
      for (let i = 0; i < outline.length; i += 2)
        expect(depthOutside(simple, outline[i]!, outline[i + 1]!)).toBeLessThan(1e-6);
    }
  });

  test('that stays within the tolerance with fewer is left at that', () => {
    const outline = roughOutline(dice(4), 90, 500, 300, 0.2);
    expect(outwardRing(outline, 0.4, 100)).toEqual(outwardRing(outline, 0.4));
  });
});

/** How far a point lies outside a ring, mm; 0 inside it. */
function depthOutside(outline: Ring, x: number, y: number): number {
  let isInside = false;
  let nearest = Infinity;
  for (let i = 0, j = outline.length - 2; i < outline.length; j = i, i += 2) {
    const [x0, y0, x1, y1] = [outline[j]!, outline[j + 1]!, outline[i]!, outline[i + 1]!];
    if (y0 > y !== y1 > y && x < x0 + ((y - y0) / (y1 - y0)) * (x1 - x0)) isInside = !isInside;
    const [ux, uy] = [x1 - x0, y1 - y0];
    const along = Math.max(0, Math.min(1, ((x - x0) * ux + (y - y0) * uy) / (ux * ux + uy * uy)));
    nearest = Math.min(nearest, Math.hypot(x - x0 - along * ux, y - y0 - along * uy));
  }
  return isInside ? 0 : nearest;
}

describe('more than memory holds', () => {
  const pockets = (count: number) =>
    job([shape('pocket', rectangle(30, 20), { count })], { lengths: [length('roll', 1500, null)] });

  test('is refused with how many there are and what to do', () => {
    expect(layProblems(pockets(7000))).toEqual([
      {
        where: 'The lay',
        what: 'has 7000 copies to lay at once, more than the 5000 that memory holds',
        fix: 'Plan fewer coats at once and lay the others after them.',
      },
    ]);
    expect(() => startLay(pockets(7000), () => 0)).toThrow(
      'The lay has 7000 copies to lay at once, more than the 5000 that memory holds. Plan fewer coats at once and lay the others after them.',
    );
  });

  test('begins above five thousand copies', () => {
    const asked = pockets(5000);
    expect(layProblems(asked)).toEqual([]);
    expect(lay(asked, { seconds: 0.5, iterations: null }, { clock: workedMs }).placements).toHaveLength(5000);
  });
});

describe('doubled corners', () => {
  const plain = ring([0, 0], [300, 0], [300, 200], [120, 260], [0, 200]);
  test.each<readonly [string, Ring]>([
    ['two equal neighbours', ring([0, 0], [300, 0], [300, 0], [300, 200], [120, 260], [0, 200])],
    [
      'three equal neighbours',
      ring([0, 0], [300, 0], [300, 200], [300, 200], [300, 200], [120, 260], [0, 200]),
    ],
    [
      'the first corner said again at the end',
      ring([0, 0], [300, 0], [300, 200], [120, 260], [0, 200], [0, 0]),
    ],
    [
      'an edge folded back by a hair',
      ring([0, 0], [300.0004, 0], [300, 0], [300, 200], [120, 260], [0, 200]),
    ],
  ])('%s do not count', (_, outline) => {
    const asked = (own: Ring) => job([shape('yoke', own, { count: 3 })]);
    expect(layProblems(asked(outline))).toEqual([]);
    const result = laid(asked(outline), 400);
    expect(checkLay(asked(outline), result)).toEqual([]);
    expect(result.usedLengthMm[0]).toBeCloseTo(laid(asked(plain), 400).usedLengthMm[0]!, 2);
  });

  test('a corner that comes back to another one is still a crossing', () => {
    const bow = ring([0, 0], [200, 0], [100, 80], [200, 160], [0, 160], [100, 80]);
    expect(layProblems(job([shape('bow', bow)])).map(({ what }) => what)).toEqual(['crosses itself']);
    const spike = ring([0, 0], [300, 0], [340, 0], [300, 0], [300, 200], [0, 200]);
    expect(layProblems(job([shape('spike', spike)])).map(({ what }) => what)).toEqual(['crosses itself']);
  });
});
