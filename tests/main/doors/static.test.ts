import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { staticAnswer } from '../../../main/doors/static.ts';
import { tempFolder } from '../asking.ts';

test('a browser keeps what the build made and named by its content, and nothing else', async () => {
  const folder = tempFolder();
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), '');
  for (const name of ['index-5pXTT30b.js', 'swatch.js']) writeFileSync(join(folder, 'assets', name), '');
  const kept = async (path: string) => (await staticAnswer(folder, path)).headers['cache-control'];
  expect(await kept('/assets/index-5pXTT30b.js')).toBe('private, max-age=31536000, immutable');
  for (const path of ['/', '/index.html', '/assets/swatch.js', '/assets/index-5pXTT30c.js'])
    expect(await kept(path)).toBe('no-store');
});
