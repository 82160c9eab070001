import { join } from 'node:path';
import { expect, test } from 'vitest';
import { tempFolder } from './asking.ts';
import { crashReport, missing, runWriter } from './crash.ts';

test('a program killed while it writes has lost nothing that was acknowledged', async () => {
  const report = await crashReport(4, 23);
  expect(report).toMatchObject({ runs: 4, lost: [], wrong: [] });
  expect(report.acknowledged).toBeGreaterThan(0);
});

test('of two programs on one file the first keeps all it was told, and the second is told to go', async () => {
  const file = join(tempFolder(), 'own.sqlite');
  const programs = await Promise.allSettled([
    runWriter(file, ['left', '40'], null),
    runWriter(file, ['right', '40'], null),
  ]);
  const written = programs.flatMap((program) => (program.status === 'fulfilled' ? [program.value] : []));
  const turnedAway = programs.flatMap((program) => (program.status === 'rejected' ? [program.reason] : []));
  expect(written.length).toBeGreaterThan(0);
  for (const reason of turnedAway) expect(String(reason)).toContain('is open already in another window');
  const entries = written.flat().filter((line) => line.startsWith('done '));
  expect(entries).toHaveLength(40 * written.length);
  expect(
    missing(
      file,
      entries.map((line) => line.slice('done '.length)),
    ),
  ).toEqual([]);
  expect(missing(file, ['left 41'])).toEqual(['left 41']);
});
