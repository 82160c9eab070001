/**
 * How much of the cloth is used by pieces of many kinds, cut from a strip without loss, so that 100 % is possible:
 * node tests/bench/made.ts [--seconds S | --iterations N] [--kind KIND] [--family N] [--seeds N]
 *   [--processor] [--json]
 *
 * Kinds: polyominoes, guillotine, nearest, jigsaw, copies, rectangles. Another family is cut from other seeds.
 * A budget of iterations gives the same lays whatever else the machine does. `processor`: seconds that the processor
 * spent on this thread. One thread.
 */
import { parseArgs } from 'node:util';
import { checkLay } from '../../shared-core/lay/check/check.ts';
import type { LayBudget } from '../../shared-core/lay/job.ts';
import { lay } from '../../shared-core/lay/lay.ts';
import { benchClock } from './clock.ts';
import { madeInstances } from './instances/all-made.ts';
import { type MadeInstance, madeJob } from './instances/made.ts';

interface Run {
  readonly name: string;
  readonly kind: string;
  readonly seed: number;
  readonly usedPercent: number;
  readonly moves: number;
  readonly seconds: number;
  readonly isValid: boolean;
}

function round(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

function run(instance: MadeInstance, seed: number, budget: LayBudget): Run {
  const job = madeJob(instance, seed);
  const result = lay(job, budget, { clock: benchClock(values.processor) });
  const problems = checkLay(job, result);
  for (const problem of problems) console.error(`${instance.name}: ${problem.where} ${problem.what}`);
  return {
    name: instance.name,
    kind: instance.kind,
    seed,
    usedPercent: round((instance.lengthMm / result.usedLengthMm[0]!) * 100, 2),
    moves: result.iterations,
    seconds: round(result.seconds, 1),
    isValid: problems.length === 0,
  };
}

function figuresOf(runs: readonly Run[]) {
  const used = runs.map((one) => one.usedPercent);
  return {
    meanPercent: round(used.reduce((sum, one) => sum + one, 0) / used.length, 2),
    worstPercent: Math.min(...used),
    movesEach: Math.round(runs.reduce((sum, one) => sum + one.moves, 0) / runs.length),
    areAllValid: runs.every((one) => one.isValid),
  };
}

const { values } = parseArgs({
  options: {
    seconds: { type: 'string', default: '60' },
    iterations: { type: 'string' },
    kind: { type: 'string' },
    family: { type: 'string', default: '1' },
    seeds: { type: 'string', default: '1' },
    processor: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
  },
});
const budget: LayBudget =
  values.iterations === undefined
    ? { seconds: Number(values.seconds), iterations: null }
    : { seconds: null, iterations: Number(values.iterations) };
const runs: Run[] = [];
for (const instance of madeInstances(Number(values.family))) {
  if (values.kind !== undefined && instance.kind !== values.kind) continue;
  for (let seed = 1; seed <= Number(values.seeds); seed++) {
    const one = run(instance, seed, budget);
    runs.push(one);
    if (!values.json) console.error(`${one.name}, seed ${seed}: ${one.usedPercent} %`);
  }
}
if (runs.length === 0) {
  console.error(`There is no kind "${values.kind}".`);
  process.exit(2);
}
const kinds = Object.fromEntries(
  [...new Set(runs.map((one) => one.kind))].map((kind) => [
    kind,
    figuresOf(runs.filter((one) => one.kind === kind)),
  ]),
);
const summary = { ...budget, ...figuresOf(runs), kinds };
if (values.json) console.log(JSON.stringify({ ...summary, runs }, null, 1));
else {
  console.table(runs);
  console.table(kinds);
  console.log(summary);
}
if (!summary.areAllValid) process.exitCode = 1;
