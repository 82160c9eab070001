/**
 * What more cores bring to one lay:
 * node tests/bench/threads.ts [--threads 2] [--seconds 5] [--alone 9] [--seeds 3] [--coats 1,6] [--instances DIR]
 *   [--only NAME,NAME] [--virtual] [--json]
 *
 * The demo coat's shell and the published instances in DIR, once on one thread for `alone` seconds and once on each number
 * of `threads` for `seconds`; medians over the seeds, each lay judged by the independent check. `virtual`: the threads take
 * turns in one, each with the full seconds by a clock of its own that counts moves (virtual-hands.ts), so that there may
 * be more of them than cores, and the lays are the same whatever else the machine does. Lengths in mm (the published ones in their own unit).
 */
import { parseArgs } from 'node:util';
import { openLayThreads } from '../../main/services/threads/lay-threads.ts';
import { checkLay } from '../../shared-core/lay/check/check.ts';
import type { LayJob, LayResult } from '../../shared-core/lay/job.ts';
import { layTeams } from '../../shared-core/lay/team/team.ts';
import { shellJob } from './instances/demo-shell.ts';
import { instanceJob, publishedInstances } from './instances/published.ts';
import { virtualWorkplace } from './virtual-hands.ts';

const { values } = parseArgs({
  options: {
    threads: { type: 'string', default: '2' },
    seconds: { type: 'string', default: '5' },
    alone: { type: 'string', default: '9' },
    seeds: { type: 'string', default: '3' },
    coats: { type: 'string', default: '1,6' },
    instances: { type: 'string' },
    only: { type: 'string' },
    virtual: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
  },
});
const setups = [
  { threads: 1, seconds: Number(values.alone) },
  ...values.threads
    .split(',')
    .map((threads) => ({ threads: Number(threads), seconds: Number(values.seconds) })),
];

const tasks: { readonly name: string; readonly job: (seed: number) => LayJob }[] = [
  ...values.coats
    .split(',')
    .filter((coats) => coats !== '')
    .map((coats) => ({ name: `shell of ${coats}`, job: (seed: number) => shellJob(Number(coats), seed) })),
  ...(values.instances === undefined ? [] : publishedInstances(values.instances)).map((instance) => ({
    name: instance.name,
    job: (seed: number) => instanceJob(instance, seed),
  })),
].filter(({ name }) => values.only === undefined || values.only.split(',').includes(name));

async function laidByThreads(job: LayJob, threads: number, layS: number): Promise<LayResult> {
  const pool = openLayThreads({ seconds: layS, iterations: null, minIterations: 0 }, threads);
  try {
    return await pool.runLay(job, 'bench');
  } finally {
    await pool.close();
  }
}

async function laidByTurns(job: LayJob, threads: number, layS: number): Promise<LayResult> {
  const place = virtualWorkplace(threads);
  const laid = new Promise<LayResult>((done, failed) => {
    const budget = { seconds: layS, iterations: null };
    layTeams(place).lay({ job, budget, done, failed: (failure) => failed(new Error(failure.kind)) });
  });
  await place.run();
  return laid;
}

function median(numbers: readonly number[]): number {
  const sorted = numbers.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

let areAllValid = true;
const rows = [];
for (const { name, job } of tasks) {
  const row: Record<string, string | number> = { name };
  const medians: number[] = [];
  for (const setup of setups) {
    const lengths: number[] = [];
    const moves: number[] = [];
    for (let seed = 1; seed <= Number(values.seeds); seed++) {
      const asked = job(seed);
      const laid = await (values.virtual ? laidByTurns : laidByThreads)(asked, setup.threads, setup.seconds);
      areAllValid &&= checkLay(asked, laid).length === 0;
      lengths.push(laid.usedLengthMm[0]!);
      moves.push(laid.iterations);
    }
    const key = `${setup.threads} at ${setup.seconds} s`;
    medians.push(median(lengths));
    row[key] = Number(median(lengths).toPrecision(6));
    row[`${key}, each`] = lengths.map((length) => length.toPrecision(6)).join(' ');
    row[`${key}, moves`] = Math.round(median(moves));
  }
  medians.slice(1).forEach((length, at) => {
    row[`${setups[at + 1]!.threads} over alone, %`] = Number(((length / medians[0]! - 1) * 100).toFixed(2));
  });
  rows.push(row);
  console.error(row);
}
if (values.json) console.log(JSON.stringify({ areAllValid, rows }, null, 1));
else console.table(rows);
if (!areAllValid) process.exitCode = 1;
