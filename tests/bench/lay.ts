/**
 * How short the lays are against published instances:
 * node tests/bench/lay.ts --instances DIR [--only NAME] [--seconds S | --iterations N] [--seeds N] [--seed 1]
 *   [--processor] [--json]
 *
 * What DIR holds: instances/published.ts. `processor`: seconds that the processor spent on this thread. A budget of iterations gives the same lays whatever else the machine does.
 * Each length is judged by the independent check. Gaps in % of the best known length.
 */
import { parseArgs } from 'node:util';
import { checkLay } from '../../shared-core/lay/check/check.ts';
import type { LayBudget } from '../../shared-core/lay/job.ts';
import { lay } from '../../shared-core/lay/lay.ts';
import { benchClock } from './clock.ts';
import { type Instance, instanceJob, publishedInstances } from './instances/published.ts';

interface Run {
  readonly name: string;
  readonly seed: number;
  readonly length: number;
  readonly bestKnown: number;
  readonly gapPercent: number;
  readonly densityPercent: number;
  readonly firstMs: number;
  readonly within5PercentS: number | null;
  readonly within2PercentS: number | null;
  readonly moves: number;
  readonly isValid: boolean;
}

function round(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

function run(instance: Instance, seed: number, budget: LayBudget, clock: () => number): Run {
  const job = instanceJob(instance, seed);
  const best = instance.bestKnownLength;
  const start = clock();
  let firstMs: number | null = null;
  let within5: number | null = null;
  let within2: number | null = null;
  const result = lay(job, budget, {
    clock,
    onBetter: (better) => {
      const ms = clock() - start;
      const ratio = better.usedLengthMm[0]! / best;
      firstMs ??= ms;
      if (ratio <= 1.05) within5 ??= ms / 1000;
      if (ratio <= 1.02) within2 ??= ms / 1000;
    },
  });
  const problems = checkLay(job, result);
  for (const problem of problems) console.error(`${instance.name}: ${problem.where} ${problem.what}`);
  return {
    name: instance.name,
    seed,
    length: round(result.usedLengthMm[0]!, 3),
    bestKnown: best,
    gapPercent: round((result.usedLengthMm[0]! / best - 1) * 100, 2),
    densityPercent: round(result.utilisation * 100, 2),
    firstMs: round(firstMs ?? Number.NaN, 1),
    within5PercentS: within5 === null ? null : round(within5, 2),
    within2PercentS: within2 === null ? null : round(within2, 2),
    moves: result.iterations,
    isValid: problems.length === 0,
  };
}

const { values } = parseArgs({
  options: {
    instances: { type: 'string' },
    only: { type: 'string' },
    seconds: { type: 'string', default: '5' },
    iterations: { type: 'string' },
    seed: { type: 'string', default: '1' },
    seeds: { type: 'string', default: '1' },
    processor: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
  },
});
if (values.instances === undefined) {
  console.error('Say where the instances are: --instances DIR');
  process.exit(2);
}
const budget: LayBudget =
  values.iterations === undefined
    ? { seconds: Number(values.seconds), iterations: null }
    : { seconds: null, iterations: Number(values.iterations) };
const instances = publishedInstances(values.instances).filter(
  (instance) => values.only === undefined || instance.name === values.only,
);
const runs: Run[] = [];
for (const instance of instances) {
  for (let count = 0; count < Number(values.seeds); count++) {
    const seed = Number(values.seed) + count;
    const one = run(instance, seed, budget, benchClock(values.processor));
    runs.push(one);
    if (!values.json) console.error(`${one.name} seed ${seed}: ${one.gapPercent} %`);
  }
}
const gaps = runs.map((one) => one.gapPercent);
const summary = {
  ...budget,
  meanGapPercent: round(gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length, 3),
  worstGapPercent: Math.max(...gaps),
  areAllValid: runs.every((one) => one.isValid),
};
if (values.json) console.log(JSON.stringify({ ...summary, runs }, null, 1));
else {
  console.table(runs);
  console.log(summary);
}
if (!summary.areAllValid) process.exitCode = 1;
