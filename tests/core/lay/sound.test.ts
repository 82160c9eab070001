import { expect, test } from 'vitest';
import { checkLay } from '../../../shared-core/lay/check/check.ts';
import { laid, randomJob } from './jobs.ts';

/** A full run lays 2,000 jobs; LAY_JOBS asks for another number. */
const JOB_COUNT = Number(process.env.LAY_JOBS ?? 2000);

test('no lay of all the odd jobs that a workshop can think of breaks a rule', () => {
  let laidCount = 0;
  for (let seed = 0; laidCount < JOB_COUNT; seed++) {
    const asked = randomJob(seed);
    if (asked === null) continue;
    laidCount += 1;
    const result = laid(asked, 25);
    expect({ seed, problems: checkLay(asked, result) }).toEqual({ seed, problems: [] });
  }
  expect(laidCount).toBe(JOB_COUNT);
});
