import { join } from 'node:path';
import { expect, test } from 'vitest';
import { tempFolder } from './asking.ts';
import { crashReport, missing, runWriter } from './crash.ts';

test('a program killed while it writes has lost nothing that was acknowledged', async () => {
  const report = await crashReport(4, 23);
  expect(report).toMatchObject({ runs: 4, lost: [], wrong: [] });
  expect(report.acknowledged).toBeGreaterThan(0);
}, 60_000);

test('two programs that write at once lose nothing of each other', async () => {
  const file = join(tempFolder(), 'own.sqlite');
  const lines = await Promise.all([
    runWriter(file, ['left', '40'], null),
    runWriter(file, ['right', '40'], null),
  ]);
  const entries = lines.flat().filter((line) => line.startsWith('done '));
  expect(entries).toHaveLength(80);
  expect(
    missing(
      file,
      entries.map((line) => line.slice('done '.length)),
    ),
  ).toEqual([]);
  expect(missing(file, ['left 41'])).toEqual(['left 41']);
}, 60_000);
