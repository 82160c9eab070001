/**
 * npm run -s check:ledger -- --json [--histories 2000] [--steps 40] [--seed 1]: random histories on real files beside
 * the book, on every core. Ends with 1 where the two part anywhere.
 */
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import fc from 'fast-check';
import { history, type Step } from './step.ts';
import { type Led, lead } from './lead.ts';

/** A history of one thread, done. */
interface Report extends Led {
  readonly index: number;
  readonly stepCount: number;
}

/** What is checked is the book, not the disk. */
const memoryDisk = '/dev/shm';

async function leadAll(
  histories: readonly (readonly Step[])[],
  tell: (report: Report) => void,
): Promise<void> {
  const root = existsSync(memoryDisk) ? memoryDisk : tmpdir();
  for (const [index, steps] of histories.entries()) {
    const folder = mkdtempSync(join(root, 'bolt-ledger-'));
    try {
      tell({ index, ...(await lead(folder, steps)) });
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
}

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      json: { type: 'boolean', default: false },
      histories: { type: 'string', default: '2000' },
      steps: { type: 'string', default: '40' },
      seed: { type: 'string', default: '1' },
    },
  });
  const [count, length, seed] = [Number(values.histories), Number(values.steps), Number(values.seed)];
  const drawn = fc.sample(history(length), { numRuns: count, seed });
  const threadCount = Math.min(availableParallelism(), count);
  const reports: Report[] = [];
  const report = (each: Report) => {
    reports.push(each);
    if (reports.length % 100 === 0) console.error(`${reports.length} histories`);
  };
  await Promise.all(
    Array.from({ length: threadCount }, (_, thread) => {
      // Each takes every so-manieth history; its index counts among its own.
      const own = drawn.filter((_, index) => index % threadCount === thread);
      const worker = new Worker(new URL(import.meta.url), { workerData: own });
      worker.on('message', (each: Report) => report({ ...each, index: each.index * threadCount + thread }));
      return new Promise<void>((resolve, reject) => {
        worker.on('error', reject);
        worker.on('exit', (code) =>
          code === 0 ? resolve() : reject(new Error(`a thread ended with ${code}`)),
        );
      });
    }),
  );
  reports.sort((a, b) => a.index - b.index);
  const done: Record<string, number> = {};
  for (const [what, times] of reports.flatMap((each) => Object.entries(each.done))) {
    done[what] = (done[what] ?? 0) + times;
  }
  const wrong = reports.filter(({ differences }) => differences.length > 0);
  for (const { index, differences } of wrong.slice(0, 5)) {
    console.error(`history ${index + 1}: ${differences.join('; ').slice(0, 2000)}`);
  }
  const stepsOf = (some: readonly Report[]) => some.reduce((sum, { stepCount }) => sum + stepCount, 0);
  const first = wrong[0];
  const result = {
    histories: reports.length,
    steps: stepsOf(reports),
    mismatches: wrong.length,
    stepsToFirst: first ? stepsOf(reports.slice(0, reports.indexOf(first) + 1)) : null,
    done,
  };
  console.log(values.json ? JSON.stringify(result) : JSON.stringify(result, null, 2));
  process.exitCode = wrong.length > 0 || reports.length < count ? 1 : 0;
}

if (isMainThread) await main();
else await leadAll(workerData, (each) => parentPort?.postMessage(each));
