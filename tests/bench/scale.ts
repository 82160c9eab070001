/**
 * How the lay of a coat's shell grows with the number of coats laid at once:
 * node tests/bench/scale.ts [--coats 1,2,3,6,12] [--seconds 60] [--seed 1] [--seeds 1] [--processor]
 *   [--json]
 *
 * For each number of coats the seed in the middle by length (from `--seed` on, so many): time to the first valid lay,
 * what is shown after half a second and a second, time to within 2 % of the lay found at the end, length for each
 * coat and its ratio to one coat alone, memory; and the exponent of growth fitted through the times (against shapes,
 * both in logarithms). `processor`: by the time that the processor spent on this thread.
 */
import { parseArgs } from 'node:util';
import { checkLay } from '../../shared-core/lay/check/check.ts';
import { lay } from '../../shared-core/lay/lay.ts';
import { benchClock } from './clock.ts';
import { shellJob } from './instances/demo-shell.ts';

interface Row {
  readonly coats: number;
  readonly shapes: number;
  readonly corners: number;
  readonly firstMs: number;
  readonly seed: number;
  readonly firstMm: number;
  /** How much longer than at the end is what is shown after half a second, and after one, %. */
  readonly halfSecondPercent: number;
  readonly secondPercent: number;
  readonly endMm: number;
  readonly perCoatMm: number;
  readonly utilisationPercent: number;
  readonly within2PercentS: number;
  readonly memoryMB: number;
  readonly isValid: boolean;
  readonly checkMs: number;
}

function measure(coatCount: number, seconds: number, seed: number, clock: () => number): Row {
  const job = shellJob(coatCount, seed);
  const shapes = job.shapes.reduce((sum, shape) => sum + shape.count + shape.mirroredCount, 0);
  const seen: { ms: number; mm: number }[] = [];
  const start = clock();
  const result = lay(
    job,
    { seconds, iterations: null },
    {
      clock,
      onBetter: (better) => seen.push({ ms: clock() - start, mm: better.usedLengthMm[0]! }),
    },
  );
  const endMm = result.usedLengthMm[0]!;
  const checkStart = clock();
  const problems = checkLay(job, result);
  const checkMs = clock() - checkStart;
  for (const problem of problems) console.error(`${coatCount} coats: ${problem.where} ${problem.what}`);
  const memory = process.memoryUsage();
  const percentAfter = (ms: number) => {
    const shown = seen.findLast((one) => one.ms <= ms) ?? seen[0]!;
    return Number(((shown.mm / endMm - 1) * 100).toFixed(2));
  };
  return {
    coats: coatCount,
    seed,
    shapes,
    corners: Math.round(
      job.shapes.reduce((sum, shape) => sum + shape.ring.length / 2, 0) / Math.max(1, job.shapes.length),
    ),
    firstMs: Number(seen[0]!.ms.toFixed(1)),
    firstMm: Math.round(seen[0]!.mm),
    halfSecondPercent: percentAfter(500),
    secondPercent: percentAfter(1000),
    endMm: Math.round(endMm),
    perCoatMm: Number((endMm / coatCount).toFixed(1)),
    utilisationPercent: Number((result.utilisation * 100).toFixed(2)),
    within2PercentS: Number((seen.find((one) => one.mm <= endMm * 1.02)!.ms / 1000).toFixed(2)),
    memoryMB: Math.round((memory.heapUsed + memory.arrayBuffers) / 1e6),
    isValid: problems.length === 0,
    checkMs: Number(checkMs.toFixed(1)),
  };
}

/** Slope of the line through (log shapes, log time). */
function exponent(rows: readonly Row[], time: (row: Row) => number): number {
  const points = rows.map((row) => [Math.log(row.shapes), Math.log(Math.max(1e-3, time(row)))] as const);
  const meanX = points.reduce((sum, [x]) => sum + x, 0) / points.length;
  const meanY = points.reduce((sum, [, y]) => sum + y, 0) / points.length;
  const top = points.reduce((sum, [x, y]) => sum + (x - meanX) * (y - meanY), 0);
  const bottom = points.reduce((sum, [x]) => sum + (x - meanX) ** 2, 0);
  return Number((top / bottom).toFixed(2));
}

const { values } = parseArgs({
  options: {
    coats: { type: 'string', default: '1,2,3,6,12' },
    seconds: { type: 'string', default: '60' },
    seed: { type: 'string', default: '1' },
    seeds: { type: 'string', default: '1' },
    processor: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
  },
});
const rows: Row[] = [];
// The first run also compiles the code; it is not counted.
const clock = benchClock(values.processor);
measure(1, 0.5, 2, clock);
for (const coats of values.coats.split(',')) {
  const ofSeeds = Array.from({ length: Number(values.seeds) }, (_, at) =>
    measure(Number(coats), Number(values.seconds), Number(values.seed) + at, clock),
  ).sort((a, b) => a.endMm - b.endMm);
  const row = ofSeeds[Math.floor((ofSeeds.length - 1) / 2)]!;
  rows.push(row);
  if (!values.json)
    console.error(`${row.coats} coats: first ${row.firstMs} ms, within 2 % at ${row.within2PercentS} s`);
}
const one = rows.find((row) => row.coats === 1);
const ratios = rows.map((row) => ({
  ...row,
  ratioToOne: one ? Number((row.perCoatMm / one.perCoatMm).toFixed(4)) : null,
}));
const growth =
  rows.length < 2
    ? null
    : {
        firstExponent: exponent(rows, (row) => row.firstMs),
        within2PercentExponent: exponent(rows, (row) => row.within2PercentS),
      };
if (values.json)
  console.log(JSON.stringify({ seconds: Number(values.seconds), rows: ratios, growth }, null, 1));
else {
  console.table(ratios);
  console.log(growth);
}
if (!rows.every((row) => row.isValid)) process.exitCode = 1;
