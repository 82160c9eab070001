/**
 * How long the stash takes to answer when it is large: node tests/bench/stash.ts [--json].
 * One seed, two sizes; each call is asked through the services as a door asks it. Times in ms: median and worst.
 */
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openWorkshop } from '../../main/database/file/connection.ts';
import { openServices } from '../../main/services/calls/services.ts';
import { fillLargeStash, type LargeStash, largeStash } from '../fixtures/large-stash.ts';

interface Timing {
  readonly call: string;
  readonly items: number;
  readonly movements: number;
  readonly medianMs: number;
  readonly worstMs: number;
}

const page = { search: '', kinds: [], sortBy: 'name', isDescending: false, offset: 0, limit: 100 };
const asked: readonly (readonly [string, string, unknown])[] = [
  ['list by name', 'listItems', page],
  ['list by name, the last page', 'listItems', { ...page, offset: 4_900 }],
  ['list 500 by name', 'listItems', { ...page, limit: 500 }],
  ['sort by kind', 'listItems', { ...page, sortBy: 'kind' }],
  ['sort by place', 'listItems', { ...page, sortBy: 'place', isDescending: true }],
  ['sort by what is on hand', 'listItems', { ...page, sortBy: 'onHand', isDescending: true }],
  ['sort by value', 'listItems', { ...page, sortBy: 'value', isDescending: true }],
  ['search a name', 'listItems', { ...page, search: 'peatwater rip' }],
  ['search a supplier, sort by value', 'listItems', { ...page, search: 'tarn ost', sortBy: 'value' }],
  ['search what is not there', 'listItems', { ...page, search: 'zzzz' }],
  ['search one kind', 'listItems', { ...page, search: 'd4', kinds: ['thread', 'fill'], sortBy: 'onHand' }],
  ['read an item', 'readItem', { itemId: 'item-17' }],
];
const runCount = 25;

async function time(size: LargeStash): Promise<Timing[]> {
  const folder = mkdtempSync(join(tmpdir(), 'stash-bench-'));
  try {
    const dataFile = join(folder, 'large.sqlite');
    const made = openWorkshop(dataFile, { now: () => new Date() });
    if (!made.ok) throw new Error(made.problems[0]?.what);
    fillLargeStash(made.value.connection, size);
    made.value.close();
    const opened = openServices({ dataFile, demoFile: join(folder, 'demo.sqlite') });
    if (!opened.ok) throw new Error(opened.problems[0]?.what);
    console.error(`${size.itemCount} items: a file of ${Math.round(statSync(dataFile).size / 1e6)} MB`);
    const timings: Timing[] = [];
    for (const [name, call, input] of asked) {
      const times: number[] = [];
      for (let run = 0; run < runCount + 3; run++) {
        const start = performance.now();
        const outcome = await opened.value.answer({ call, workshop: 'own', input });
        if (!outcome.ok) throw new Error(`${name}: ${JSON.stringify(outcome.problems)}`);
        if (run >= 3) times.push(performance.now() - start);
      }
      times.sort((a, b) => a - b);
      timings.push({
        call: name,
        items: size.itemCount,
        movements: size.movementCount,
        medianMs: Number(times[Math.floor(times.length / 2)]!.toFixed(2)),
        worstMs: Number(times.at(-1)!.toFixed(2)),
      });
    }
    opened.value.close();
    return timings;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const sizes: readonly LargeStash[] = [
  { ...largeStash, itemCount: 500, lotCount: 2_000, movementCount: 20_000 },
  largeStash,
];
const timings: Timing[] = [];
for (const size of sizes) timings.push(...(await time(size)));
if (process.argv.includes('--json'))
  console.log(JSON.stringify({ seed: largeStash.seed, runCount, timings }, null, 1));
else console.table(timings);
