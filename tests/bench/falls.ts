/**
 * How much shorter lays usually still get:
 * node tests/bench/falls.ts [--until 60] [--jobs 12] [--json] [--write]
 * node tests/bench/falls.ts --from FILE [--write]   with what --json printed before, in place of measuring
 *
 * Each lay is looked for `until` seconds; what stands after 0.3, 0.5, 1, 3, 5, 10, 30 s is held against its end. Seconds
 * are those that the one thread worked, so that other programs do not count. Prints the lower quartile, the median and
 * what nine lays of ten stay under, by number of pieces; --write puts them into shared-core/lay/still-falls/still-falls-table.ts.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import { lay } from '../../shared-core/lay/lay.ts';
import { totalUsedMm } from '../../shared-core/lay/plan-lay.ts';
import { type MeasuredJob, measuredJobs } from './falls-jobs.ts';
import { fallsTable, type MeasuredFall } from './falls-table.ts';

const { values } = parseArgs({
  options: {
    until: { type: 'string', default: '60' },
    jobs: { type: 'string', default: '100' },
    json: { type: 'boolean', default: false },
    write: { type: 'boolean', default: false },
    from: { type: 'string' },
  },
});
/** What was measured, as --json prints it; the table follows from it. */
interface Measured {
  readonly untilS: number;
  readonly rows: readonly MeasuredFall[];
}
const before = values.from === undefined ? null : (JSON.parse(readFileSync(values.from, 'utf8')) as Measured);
const untilS = before?.untilS ?? Number(values.until);
const marksS = [0.3, 0.5, 1, 3, 5, 10, 30].filter((mark) => mark < untilS);

/** Time that this thread has worked, ms. */
function workedMs(): number {
  const { user, system } = process.threadCpuUsage();
  return (user + system) / 1000;
}

function measure({ name, pieces, job }: MeasuredJob): MeasuredFall {
  const startedMs = workedMs();
  const seen: { s: number; mm: number }[] = [];
  const { stoppedBy } = lay(
    job,
    { seconds: untilS, iterations: null },
    {
      clock: workedMs,
      onBetter: (better) => seen.push({ s: (workedMs() - startedMs) / 1000, mm: totalUsedMm(better) }),
    },
  );
  const endMm = seen.at(-1)!.mm;
  const standingMm = (mark: number) => (seen.findLast(({ s }) => s <= mark) ?? seen[0]!).mm;
  // One that is at its floor is known to be done, and nothing is said of it.
  const open = stoppedBy === 'floor' ? marksS.filter((mark) => mark < seen.at(-1)!.s) : marksS;
  const falls = open.map((mark) => ({ seconds: mark, share: 1 - endMm / standingMm(mark) }));
  return { name, pieces, endMm: Math.round(endMm), falls };
}

/** A row of the table as it is written into its file. */
function rowText({ maxPieces, lays, falls }: ReturnType<typeof fallsTable>[number]): string {
  const lines = falls.map(
    ({ seconds, low, median, high }) =>
      `      { seconds: ${seconds}, low: ${low}, median: ${median}, high: ${high} },`,
  );
  return `  {
    maxPieces: ${maxPieces ?? Infinity},
    lays: ${lays},
    falls: [
${lines.join('\n')}
    ],
  },`;
}

const rows: MeasuredFall[] = [...(before?.rows ?? [])];
for (const job of before ? [] : measuredJobs().slice(0, Number(values.jobs))) {
  const row = measure(job);
  rows.push(row);
  const shown = row.falls.map(({ seconds, share }) => `${seconds} s ${(share * 100).toFixed(1)}`).join(', ');
  console.error(`${row.name} (${row.pieces} pieces): ${row.endMm} mm, falls in % after ${shown}`);
}
const table = fallsTable(rows, marksS);
if (values.json) console.log(JSON.stringify({ untilS, rows, table }, null, 1));
else for (const { maxPieces, falls } of table) console.table({ maxPieces, ...falls });
if (values.write) {
  const path = fileURLToPath(
    new URL('../../shared-core/lay/still-falls/still-falls-table.ts', import.meta.url),
  );
  writeFileSync(
    path,
    `/** Measured by \`npm run -s bench:falls -- --write\`, which writes this file. Shares of the length that stands. */
import type { FallsByPieces } from './falls-by-pieces.ts';

/** Seconds that each lay was looked for, and how many lays were. */
export const measuredUntilS = ${untilS};
export const measuredLays = ${rows.length};

export const measuredFalls: readonly FallsByPieces[] = [
${table.map(rowText).join('\n')}
];
`,
  );
}
