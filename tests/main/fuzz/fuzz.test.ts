import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import type { FuzzFile } from './fuzz-file.ts';
import { openPool, type Pool, type PoolOptions } from './pool.ts';
import { craftedFiles, fuzzFiles, fuzzReport } from './run.ts';
import { wholeFiles } from './whole-files.ts';

const leftovers: (() => unknown)[] = [];
afterEach(async () => {
  for (const clear of leftovers.splice(0).reverse()) await clear();
});

async function pool(
  module: string,
  options: Pick<PoolOptions, 'size' | 'deadlineMs' | 'memoryMb'>,
): Promise<Pool> {
  const folder = mkdtempSync(join(tmpdir(), 'bolt-fuzz-'));
  leftovers.push(() => rmSync(folder, { recursive: true, force: true }));
  const opened = await openPool({
    module: new URL(module, import.meta.url).href,
    folder,
    ...options,
  });
  leftovers.push(() => opened.close());
  return opened;
}

/** The quickest to make of each kind. */
const traps = [
  'two inserts in each of thirty nested blocks, all empty',
  'scales of a billion within scales of a billion',
  'an insert of a billion copies',
  'uses of uses, ten in each',
  'a symbol of many attributes, used fifty thousand times',
  'entities that grow tenfold each',
  'five thousand times the same offer',
  'a picture of four thousand million points',
  'pages of no size',
  'a first page that points to itself',
];

test('no spoiled file of any kind stops a reader, and none that is refused changes the workshop', async () => {
  // One: a second would load the whole program once more, for few files.
  const own = await pool('./readers.ts', { size: 1, deadlineMs: 2000, memoryMb: 512 });
  const told: string[] = [];
  const options = { seed: 7, fileCount: 100, textCount: 2000, traps };
  const report = await fuzzReport(
    fuzzFiles(await wholeFiles(), options),
    own,
    1,
    (file, { verdict, why }) => {
      if (why !== '') told.push(`${file.name}: ${verdict}, ${why}`);
    },
  );
  expect(told).toEqual([]);
  expect(report).toEqual({ files: 110, crashes: 0, hangs: 0, overMemory: 0, changedData: 0 });
});

test('the same seed makes the same files, another one others; there are sixty crafted ones and more', async () => {
  const whole = await wholeFiles();
  const names = (seed: number) =>
    [...fuzzFiles(whole, { seed, fileCount: 60, textCount: 10, traps: [] })].map(({ name, bytes, kind }) =>
      // A backup holds marks of its own.
      kind === 'backup' ? name : `${name} ${Buffer.from(bytes).toString('base64')}`,
    );
  expect(names(3)).toEqual(names(3));
  expect(names(3)).not.toEqual(names(4));
  const crafted = craftedFiles(whole).map(({ name }) => name);
  expect(crafted.length).toBeGreaterThanOrEqual(60);
  expect(crafted).toEqual(expect.arrayContaining(traps));
  expect(new Set(crafted).size).toBe(crafted.length);
});

test('whatever a reader may not do is counted, and the next file is read all the same', async () => {
  const broken = await pool('./broken-readers.ts', { size: 2, deadlineMs: 400, memoryMb: 48 });
  const names = [
    'throws',
    'dies',
    'swallows a slip',
    'never ends',
    'eats memory',
    'writes when it is looked at',
    'writes though it is refused',
    'writes and is taken',
    'does nothing',
  ];
  const files = names.map((name): FuzzFile => ({ kind: 'DXF', name, bytes: new Uint8Array(4) }));
  const verdicts = new Map<string, string>();
  const report = await fuzzReport(files, broken, 2, (file, { verdict }) => verdicts.set(file.name, verdict));
  expect(Object.fromEntries(verdicts)).toEqual({
    throws: 'crashed',
    dies: 'crashed',
    'swallows a slip': 'crashed',
    'never ends': 'hung',
    'eats memory': 'over memory',
    'writes when it is looked at': 'changed data',
    'writes though it is refused': 'changed data',
    'writes and is taken': 'taken',
    'does nothing': 'refused',
  });
  expect(report).toEqual({ files: 9, crashes: 3, hangs: 1, overMemory: 1, changedData: 2 });
});
