/**
 * A folder that electron-builder takes for Electron's runtime where the real one is not to be had: its program does
 * nothing, but has the fuses that a real one has, as they are before they are set.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** How a program says where its fuses are: electron/electron, docs/tutorial/fuses.md. */
const fuseStart = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX';
const fuseVersion = 1;
/** Of the nine fuses as Electron 45 has them, only these are on: run as Node, its options, its inspector, file:// privileges. */
const fusesBefore = '101100010';

export function writeStandInRuntime(folder: string, electronVersion: string): void {
  mkdirSync(join(folder, 'locales'), { recursive: true });
  mkdirSync(join(folder, 'resources'));
  const wire = Buffer.concat([
    Buffer.from(`#!/bin/sh\nexit 0\n${fuseStart}`),
    Buffer.from([fuseVersion, fusesBefore.length]),
    Buffer.from(`${fusesBefore}\n`),
  ]);
  writeFileSync(join(folder, 'electron'), wire, { mode: 0o755 });
  writeFileSync(join(folder, 'version'), electronVersion);
  for (const file of ['LICENSE', 'LICENSES.chromium.html', 'chrome-sandbox', 'libffmpeg.so']) {
    writeFileSync(join(folder, file), '');
  }
  for (const locale of ['en-US', 'en-GB', 'de']) writeFileSync(join(folder, 'locales', `${locale}.pak`), '');
}
