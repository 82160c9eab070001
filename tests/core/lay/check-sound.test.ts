import { describe, expect, test } from 'vitest';
import { ringBox, ringMoved } from '../../../shared-core/geometry/ring.ts';
import { checkLay, checkToleranceMm } from '../../../shared-core/lay/check/check.ts';
import type { LayJob, LayResult, LayShape, Placement } from '../../../shared-core/lay/job.ts';
import { blob, dice, job, laid, length, randomJob, rectangle, ring, shape } from './jobs.ts';
import { judged } from './own-judge.ts';

const JOBS = 60;

function said(asked: LayJob, result: LayResult): string[] {
  return checkLay(asked, result).map(({ where, what }) => `${where} ${what}`);
}

/** Sound by the judge of the tests: apart by the clearance and inside the cloth, each within the tolerance. */
function expectSound(asked: LayJob, result: LayResult): void {
  const tolerance = checkToleranceMm(asked);
  const { minGapMm, maxOutsideMm } = judged(asked, result);
  expect(minGapMm).toBeGreaterThan(asked.clearanceMm - tolerance);
  expect(maxOutsideMm).toBeLessThan(tolerance);
}

/** The same job with every outline drawn far from its origin. */
function farDrawn(asked: LayJob, dx: number, dy: number): LayJob {
  return {
    ...asked,
    shapes: asked.shapes.map((one): LayShape => {
      const isHalved = one.foldRing !== undefined;
      const move = isHalved ? 0 : dy;
      return {
        ...one,
        ring: ringMoved(one.ring, dx, move),
        ...(one.foldRing ? { foldRing: ringMoved(one.foldRing, dx, 0) } : {}),
        ...(one.match ? { match: { ...one.match, x: one.match.x + dx, y: one.match.y + move } } : {}),
      };
    }),
  };
}

function randomJobs(from: number): LayJob[] {
  const jobs: LayJob[] = [];
  for (let seed = from; jobs.length < JOBS; seed++) {
    const asked = randomJob(seed);
    if (asked !== null) jobs.push(asked);
  }
  return jobs;
}

describe('a sound lay is not refused', () => {
  test.each([
    [100_000, -40_000],
    [500_000, 350_000],
    [2_000_000, 0],
  ])('with outlines drawn %i and %i mm from their origin', (dx, dy) => {
    for (const asked of randomJobs(5000).map((one) => farDrawn(one, dx, dy))) {
      const result = laid(asked, 60);
      expectSound(asked, result);
      expect({ seed: asked.seed, said: said(asked, result) }).toEqual({ seed: asked.seed, said: [] });
    }
  });

  test.each([33.3, 0.1, 89.9, -12.7, 359.95, 393.3])('with pieces that may turn by %d degrees', (turn) => {
    const next = dice(Math.round(turn * 100) + 90_000);
    for (let round = 0; round < 12; round++) {
      const asked = job(
        [
          shape('a', blob(next, 300, 200), { count: 3, turnsDeg: [turn] }),
          shape('b', blob(next, 200, 150), { count: 2, turnsDeg: [0, turn, turn + 180] }),
        ],
        { clearanceMm: 2 },
      );
      const result = laid(asked, 120);
      expectSound(asked, result);
      expect(said(asked, result)).toEqual([]);
      // What is shown to a maker is the turn as it was asked.
      for (const { turnDeg } of result.placements) expect(String(turnDeg).length).toBeLessThan(7);
    }
  });

  test.each([0, 1e-5, 1e-4, 5e-4, 0.001, 0.004, 0.02, 0.3])(
    'folded, where the two sides of a piece differ by %d mm',
    (offMm) => {
      const next = dice(Math.round(offMm * 1e6) + 7);
      for (let round = 0; round < 25; round++) {
        const [spanX, high, low] = [250 + 500 * next(), 90 + 80 * next(), 40 + 30 * next()];
        const [a, b] = [spanX * (0.2 + 0.2 * next()), spanX * (0.6 + 0.3 * next())];
        const nearMirror = ring(
          [0, -low],
          [a, -high],
          [b, -high * 0.8],
          [spanX, 0],
          [b, high * 0.8 + offMm],
          [a, high],
          [0, low],
        );
        const asked = job([shape('yoke', nearMirror, { count: 4, mirroredCount: 1 })], {
          spread: 'folded',
          lengths: [length('roll', 1400, null)],
          clearanceMm: 1,
        });
        const result = laid(asked, 40);
        expectSound(asked, result);
        expect({ round, said: said(asked, result) }).toEqual({ round, said: [] });
      }
    },
  );

  test('on endless cloth narrower than a remnant', () => {
    const back = shape('back', rectangle(310, 700), { count: 3, turnsDeg: [0] });
    const cuff = shape('cuff', rectangle(120, 170), { count: 6, turnsDeg: [0] });
    const asked = job([back, cuff], { lengths: [length('remnant', 800, 730), length('roll', 500, null)] });
    const result = laid(asked, 800);
    expectSound(asked, result);
    expect(said(asked, result)).toEqual([]);
    // Two backs fit on the remnant; the third is too wide for the roll, on which the rest of the cuffs lie.
    expect(result.unplaced).toEqual([{ shape: 0, mirrored: false, count: 1 }]);
    expect(judged(asked, result).laid).toEqual([
      [2, 0],
      [6, 0],
    ]);
    const roomy = { ...asked, lengths: [length('remnant', 800, 1100), length('roll', 500, null)] };
    expect(laid(roomy, 800).unplaced).toEqual([]);
    expect(said(roomy, laid(roomy, 800))).toEqual([]);
  });
});

describe('a spoiled lay is found', () => {
  const spoiled = (result: LayResult, at: number, change: (one: Placement) => Placement[]): LayResult => ({
    ...result,
    placements: result.placements.flatMap((one, index) => (index === at ? change(one) : [one])),
  });
  /** Jobs near and far, each with its lay and a piece of it. */
  const lays = [...randomJobs(9000), ...randomJobs(9500).map((one) => farDrawn(one, 400_000, 130_000))]
    .map((asked) => ({ asked, result: laid(asked, 40) }))
    .filter(({ result }) => result.placements.length > 1)
    .map((one, index) => ({ ...one, at: index % one.result.placements.length }));

  test('when a piece is missing or laid twice', () => {
    for (const { asked, result, at } of lays) {
      const name = asked.shapes[result.placements[at]!.shape]!.id;
      const count = new RegExp(`^Shape ${name}.* is laid \\d+ times`);
      expect(
        said(
          asked,
          spoiled(result, at, () => []),
        ).some((one) => count.test(one)),
      ).toBe(true);
      const twice = said(
        asked,
        spoiled(result, at, (one) => [one, one]),
      );
      expect(twice.some((one) => count.test(one))).toBe(true);
      expect(twice.some((one) => /lies (on|nearer)/.test(one))).toBe(true);
    }
  });

  test('when a piece is turned as its grain does not allow', () => {
    for (const { asked, result, at } of lays) {
      for (const by of [0.01, 11, 90]) {
        const { turnDeg, shape: index } = result.placements[at]!;
        const isAllowed = asked.shapes[index]!.turnsDeg.some(
          (one) => Math.abs(((one - turnDeg - by) % 360) + 0) < 1e-9,
        );
        if (isAllowed) continue;
        const turned = spoiled(result, at, (one) => [{ ...one, turnDeg: one.turnDeg + by }]);
        expect(said(asked, turned).join()).toContain('which its grain does not allow');
      }
    }
  });

  test('when a piece is shifted into another or over an edge by more than the tolerance', () => {
    let found = 0;
    for (const { asked, result, at } of lays) {
      const tolerance = checkToleranceMm(asked);
      for (const [dx, dy] of [
        [1, 0],
        [-1, 0],
        [0, 1],
        [0, -1],
      ] as const) {
        for (const by of [tolerance * 4, 0.5, 9]) {
          const shifted = spoiled(result, at, (one) => [{ ...one, x: one.x + dx * by, y: one.y + dy * by }]);
          const { minGapMm, maxOutsideMm } = judged(asked, shifted);
          const isSpoiled = minGapMm < asked.clearanceMm - 3 * tolerance || maxOutsideMm > 3 * tolerance;
          const objections = said(asked, shifted).filter((one) =>
            /lies (on Shape|nearer|outside|beyond)/.test(one),
          );
          if (isSpoiled) {
            found += 1;
            expect({ seed: asked.seed, by, isFound: objections.length > 0 }).toEqual({
              seed: asked.seed,
              by,
              isFound: true,
            });
          } else if (minGapMm > asked.clearanceMm && maxOutsideMm === 0) {
            expect({ seed: asked.seed, by, objections }).toEqual({ seed: asked.seed, by, objections: [] });
          }
        }
      }
    }
    expect(found).toBeGreaterThan(300);
  });

  test('when a piece is left out that the endless cloth had room for', () => {
    const asked = job([shape('cuff', rectangle(120, 170), { count: 4, turnsDeg: [0] })], {
      lengths: [length('remnant', 800, 130), length('roll', 500, null)],
    });
    const result = laid(asked, 50);
    const left = spoiled(result, 0, () => []);
    expect(said(asked, { ...left, unplaced: [{ shape: 0, mirrored: false, count: 1 }] })).toContain(
      'Shape cuff is left out although the cloth is endless',
    );
  });
});

test('the judge itself measures what a ruler would', () => {
  const squares = job([shape('square', rectangle(100, 80), { count: 2 })], {
    lengths: [length('roll', 300, null)],
  });
  const at = (x: number, y: number, turnDeg = 0): Placement => ({
    shape: 0,
    length: 0,
    x,
    y,
    turnDeg,
    mirrored: false,
    onFold: false,
  });
  const of = (...placements: Placement[]) => judged(squares, { ...laid(squares, 1), placements });
  expect(of(at(0, 0), at(107, 0)).minGapMm).toBeCloseTo(7, 9);
  expect(of(at(0, 0), at(94, 10)).minGapMm).toBeCloseTo(-6, 9);
  expect(of(at(0, 0), at(0, 223)).maxOutsideMm).toBeCloseTo(3, 9);
  expect(ringBox(squares.shapes[0]!.ring).maxX).toBe(100);
  // Turned by a quarter it stands on the other side of its origin.
  expect(of(at(0, 0), at(183, 0, 90)).minGapMm).toBeCloseTo(3, 9);
});
