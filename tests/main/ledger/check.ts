/**
 * npm run -s check:ledger -- --json [--histories 2000] [--steps 40] [--seed 1]: random histories on real files beside
 * the book. Ends with 1 where the two part anywhere.
 */
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import fc from 'fast-check';
import { history } from './step.ts';
import { lead } from './workshop.ts';

const { values } = parseArgs({
  options: {
    json: { type: 'boolean', default: false },
    histories: { type: 'string', default: '2000' },
    steps: { type: 'string', default: '40' },
    seed: { type: 'string', default: '1' },
  },
});
const drawn = fc.sample(history(Number(values.steps)), {
  numRuns: Number(values.histories),
  seed: Number(values.seed),
});
// What is checked is the book, not the disk.
const memoryDisk = '/dev/shm';
const root = existsSync(memoryDisk) ? memoryDisk : tmpdir();
const found: string[] = [];
const done: Record<string, number> = {};
let steps = 0;
let firstAt: number | null = null;
for (const [index, each] of drawn.entries()) {
  const folder = mkdtempSync(join(root, 'bolt-ledger-'));
  try {
    const led = await lead(folder, each);
    steps += led.stepCount;
    for (const [what, times] of Object.entries(led.done)) done[what] = (done[what] ?? 0) + times;
    if (led.differences.length > 0) {
      firstAt ??= steps;
      found.push(`history ${index + 1}: ${led.differences.join('; ')}`);
    }
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
  if (!values.json && (index + 1) % 100 === 0) console.error(`${index + 1} histories, ${steps} steps`);
}
for (const each of found.slice(0, 5)) console.error(each.slice(0, 2000));
const result = { histories: drawn.length, steps, mismatches: found.length, stepsToFirst: firstAt, done };
console.log(values.json ? JSON.stringify(result) : JSON.stringify(result, null, 2));
process.exitCode = found.length > 0 ? 1 : 0;
