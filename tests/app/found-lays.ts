/** The demo's lays and baskets, looked for once before all specs (demo-lays.ts) and read by every host of theirs. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Found } from './found.ts';
import { printedBy } from './scripts.ts';

/** Names the file to the programs that Playwright starts. */
const variable = 'BOLT_DEMO_LAYS';

/** Looks for the lays; Playwright calls what it gives once all specs are done. Throws where they cannot be found. */
export default function findLays(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-lays-'));
  const file = join(folder, 'demo-lays.json');
  writeFileSync(file, printedBy('tests/app/demo-lays.ts'));
  process.env[variable] = file;
  return () => rmSync(folder, { recursive: true, force: true });
}

/** Nothing where nobody has looked. */
export function foundBefore(): Found {
  const file = process.env[variable];
  return file === undefined ? { lays: [], solved: {} } : JSON.parse(readFileSync(file, 'utf8'));
}
