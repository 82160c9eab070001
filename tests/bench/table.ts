/**
 * How long the table of requirements of a drafted coat takes, and how good its lays are:
 * node tests/bench/table.ts [--sizes 10] [--seconds 58] [--threads 2] [--nap without|with|both] [--json]
 *
 * Three slots (shell, body lining, sleeve lining) on cloth of 115, 140 and 150 cm. `seconds` is for the whole table.
 */
import { parseArgs } from 'node:util';
import { openLayThreads } from '../../main/services/threads/lay-threads.ts';
import {
  filledCells,
  type Nap,
  runTable,
  sharedTime,
  tableCells,
  tableJobs,
} from '../../shared-core/flow/requirements-table/requirements-table.ts';
import { totalUsedMm } from '../../shared-core/lay/plan-lay.ts';
import { draftedSizes } from '../fixtures/drafted-sizes.ts';

const { values } = parseArgs({
  options: {
    sizes: { type: 'string', default: '10' },
    seconds: { type: 'string', default: '58' },
    threads: { type: 'string', default: '2' },
    nap: { type: 'string', default: 'without' },
    json: { type: 'boolean', default: false },
  },
});
const naps: readonly Nap[] =
  values.nap === 'both' ? ['without nap', 'with nap'] : [values.nap === 'with' ? 'with nap' : 'without nap'];
const threadCount = Number(values.threads);
const plan = draftedSizes(Number(values.sizes));
const start = performance.now();
const cells = tableCells(
  { plan, shelf: [] },
  { widthsMm: [1150, 1400, 1500], naps, slotIds: ['shell', 'body-lining', 'sleeve-lining'] },
);
const jobs = tableJobs(cells);
const nextSeconds = sharedTime(
  Number(values.seconds),
  jobs.length,
  threadCount,
  () => performance.now() / 1000,
);
const threads = openLayThreads(
  () => ({ seconds: nextSeconds(), iterations: null, minIterations: 0 }),
  threadCount,
);
let firstS = Number.NaN;
const found = await runTable(cells, threads.runLay, () => {
  if (Number.isNaN(firstS)) firstS = (performance.now() - start) / 1000;
});
const wallS = (performance.now() - start) / 1000;
await threads.close();
const filled = filledCells(cells, found);
const gaps = filled.map(({ result }) => (result ? totalUsedMm(result) / result.floorMm - 1 : Number.NaN));
const meanOf = (numbers: readonly number[]) => numbers.reduce((sum, each) => sum + each, 0) / numbers.length;
const outcome = {
  sizes: Number(values.sizes),
  cells: cells.length,
  lays: jobs.length,
  threads: threadCount,
  seconds: Number(values.seconds),
  wallS: Number(wallS.toFixed(2)),
  firstCellS: Number(firstS.toFixed(2)),
  found: filled.filter(({ result }) => result !== null).length,
  meanUtilisationPercent: Number(
    (100 * meanOf(filled.map(({ result }) => result?.utilisation ?? 0))).toFixed(2),
  ),
  meanAboveFloorPercent: Number((100 * meanOf(gaps)).toFixed(2)),
  takenFromAnotherCell: filled.filter(({ from }) => from !== null).length,
  movesPerLay: Math.round(meanOf([...found.values()].map(({ iterations }) => iterations))),
};
if (values.json) console.log(JSON.stringify(outcome, null, 1));
else console.table(outcome);
if (outcome.found !== outcome.cells) process.exitCode = 1;
