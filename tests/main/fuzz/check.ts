/**
 * npm run -s check:fuzz -- --json [--seed 1] [--files 20000] [--strings 100000]: spoiled and crafted files of every
 * kind given to the program's readers, each with 2 s and 512 MB, and texts as typed into fields. One line of figures;
 * ends with 1 where a reader crashed, hung, took more memory, or changed a workshop that it had no business to change.
 */
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { openPool } from './pool.ts';
import { fuzzFiles, fuzzReport } from './run.ts';
import { wholeFiles } from './whole-files.ts';

const { values } = parseArgs({
  options: {
    json: { type: 'boolean', default: false },
    seed: { type: 'string', default: '1' },
    files: { type: 'string', default: '20000' },
    strings: { type: 'string', default: '100000' },
  },
});
// What is checked is the readers, not the disk.
const memoryDisk = '/dev/shm';
const folder = mkdtempSync(join(existsSync(memoryDisk) ? memoryDisk : tmpdir(), 'bolt-fuzz-'));
const size = Math.max(1, Math.min(4, availableParallelism()));
const module = new URL('./readers.ts', import.meta.url).href;
const pool = await openPool({ size, module, folder, deadlineMs: 2000, memoryMb: 512 });
try {
  const options = {
    seed: Number(values.seed),
    fileCount: Number(values.files),
    textCount: Number(values.strings),
    traps: 'all',
  } as const;
  const report = await fuzzReport(
    fuzzFiles(await wholeFiles(), options),
    pool,
    size,
    (file, judged, index) => {
      if (judged.why !== '') console.error(`${file.name}: ${judged.verdict}, ${judged.why}`);
      if (index % 1000 === 0) console.error(`${index} files`);
    },
  );
  console.log(JSON.stringify(report));
  const isWell = report.crashes + report.hangs + report.overMemory + report.changedData === 0;
  process.exitCode = isWell ? 0 : 1;
} finally {
  await pool.close();
  rmSync(folder, { recursive: true, force: true });
}
