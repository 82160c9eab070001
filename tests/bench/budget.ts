/**
 * When a lay asked for a second ends, for outlines of hundreds of rough corners and for thousands of copies:
 * node tests/bench/budget.ts [--seconds 1] [--json]
 *
 * Seconds are those that the one thread worked, so that other programs do not count; `wallS` is the time by the clock.
 * Fails when a lay of up to 600 corners and 12 copies ends later than one and a half times what was asked.
 */
import { parseArgs } from 'node:util';
import { checkLay } from '../../shared-core/lay/check/check.ts';
import type { LayJob } from '../../shared-core/lay/job.ts';
import { lay } from '../../shared-core/lay/lay.ts';
import { dice, job, roughOutline, shape } from '../core/lay/jobs.ts';

interface Asked {
  readonly corners: number;
  readonly roughness: number;
  readonly kinds: number;
  readonly copiesOfEach: number;
}

const asked: readonly Asked[] = [
  ...[400, 500, 600].flatMap((corners) =>
    [0.02, 0.2, 0.6].map((roughness) => ({ corners, roughness, kinds: 3, copiesOfEach: 4 })),
  ),
  { corners: 600, roughness: 0.2, kinds: 10, copiesOfEach: 4 },
  { corners: 600, roughness: 0.2, kinds: 20, copiesOfEach: 4 },
  { corners: 5000, roughness: 0.1, kinds: 2, copiesOfEach: 2 },
  { corners: 30, roughness: 0.1, kinds: 10, copiesOfEach: 200 },
  { corners: 30, roughness: 0.1, kinds: 10, copiesOfEach: 500 },
];

function jobOf({ corners, roughness, kinds, copiesOfEach }: Asked): LayJob {
  const next = dice(corners + kinds);
  return job(
    Array.from({ length: kinds }, (_, k) => {
      const size = 1 - (0.6 * k) / kinds;
      return shape(`rough ${k}`, roughOutline(next, corners, 500 * size, 340 * size, roughness), {
        count: Math.ceil(copiesOfEach / 2),
        mirroredCount: Math.floor(copiesOfEach / 2),
      });
    }),
    { clearanceMm: 2 },
  );
}

function workedS(): number {
  const { user, system } = process.threadCpuUsage();
  return (user + system) / 1e6;
}

function measure(one: Asked, seconds: number) {
  const laidJob = jobOf(one);
  const startedS = workedS();
  const wallStartedMs = performance.now();
  let firstS = 0;
  let betterCount = 0;
  const result = lay(
    laidJob,
    { seconds, iterations: null },
    {
      clock: () => workedS() * 1000,
      onBetter: () => {
        firstS ||= workedS() - startedS;
        betterCount += 1;
      },
    },
  );
  const endS = workedS() - startedS;
  const problems = checkLay(laidJob, result);
  return {
    ...one,
    firstS: Number(firstS.toFixed(3)),
    endS: Number(endS.toFixed(3)),
    checkS: Number((workedS() - startedS - endS).toFixed(3)),
    wallS: Number(((performance.now() - wallStartedMs) / 1000).toFixed(2)),
    moves: result.iterations,
    betterCount,
    utilisationPercent: Number((result.utilisation * 100).toFixed(1)),
    isValid: problems.length === 0,
    isInTime: endS <= 1.5 * seconds,
  };
}

const { values } = parseArgs({
  options: { seconds: { type: 'string', default: '1' }, json: { type: 'boolean', default: false } },
});
const seconds = Number(values.seconds);
// The first run also compiles the code; it is not counted.
measure(asked[0]!, 0.2);
const rows = asked.map((one) => measure(one, seconds));
if (values.json) console.log(JSON.stringify({ seconds, rows }, null, 1));
else console.table(rows);
const mustBeInTime = rows.filter((row) => row.corners <= 600 && row.kinds * row.copiesOfEach <= 12);
if (!rows.every((row) => row.isValid) || !mustBeInTime.every((row) => row.isInTime)) process.exitCode = 1;
