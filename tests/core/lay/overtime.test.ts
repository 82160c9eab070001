import { expect, it } from 'vitest';
import { type LayJob, maxOvertime, sensibleIterations } from '../../../shared-core/lay/job.ts';
import { lay } from '../../../shared-core/lay/lay.ts';

/** Corner pieces that leave a search something to do. */
const job: LayJob = {
  shapes: [
    {
      id: 'corner',
      ring: Float64Array.of(0, 0, 310, 0, 310, 90, 120, 90, 120, 270, 0, 270),
      count: 9,
      mirroredCount: 4,
      turnsDeg: [0, 180],
    },
    {
      id: 'wedge',
      ring: Float64Array.of(0, 0, 420, 0, 60, 230),
      count: 7,
      mirroredCount: 3,
      turnsDeg: [0, 180],
    },
  ],
  lengths: [{ id: 'endless', widthMm: 1130, lengthMm: null, flaws: [] }],
  clearanceMm: 2,
  spread: 'open',
  repeat: null,
  seed: 4,
};

/** A machine so slow that each look at the clock finds `stepMs` gone. */
function slowClock(stepMs: number): () => number {
  let now = 0;
  return () => (now += stepMs);
}

it('a sensible lay asks sixty moves a piece', () => {
  expect(sensibleIterations(job)).toBe(60 * 23);
});

it('a busy machine takes overtime until the lay is sensible, and no longer than four times the time', () => {
  const moves = (minIterations: number, stepMs: number) =>
    lay(job, { seconds: 0.4, iterations: null, minIterations }, { clock: slowClock(stepMs) }).iterations;
  const inTime = moves(0, 7);
  expect(moves(inTime + 1, 7)).toBeGreaterThan(inTime);
  const endless = lay(job, { seconds: 0.4, iterations: null, minIterations: 1e9 }, { clock: slowClock(7) });
  expect(endless.seconds).toBeLessThan(0.4 * maxOvertime + 0.2);
  expect(endless.stoppedBy).toBe('time');
});
