/** Where Electron's runtime is, and one bounded try a day to fetch it. Never requires the package: that downloads. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cacheFolder, ownNode, root, say } from './install.mjs';

const packageFolder = join(root, 'node_modules', 'electron');
const failureNote = join(cacheFolder, 'electron-not-fetched.json');
const deadlineMs = 60_000;
const dayMs = 24 * 60 * 60 * 1000;

/** The runtime's program, or '' where it is not on this machine. */
export function electronProgram() {
  try {
    const program = join(packageFolder, 'dist', readFileSync(join(packageFolder, 'path.txt'), 'utf8').trim());
    return existsSync(program) ? program : '';
  } catch {
    return '';
  }
}

/**
 * The runtime, fetched if that can be done within a minute and did not fail within the last day.
 *
 * @returns {{ program: string, reason: string }} program is '' where it cannot be had, and reason says why
 */
export function obtainElectron() {
  const there = electronProgram();
  if (there !== '') return { program: there, reason: '' };
  const earlier = earlierFailure();
  if (earlier !== '') return { program: '', reason: earlier };
  say('Fetching the Electron runtime (once, about 110 MB, given up after a minute).');
  const result = spawnSync(ownNode, [join(packageFolder, 'install.js')], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'pipe'],
    encoding: 'utf8',
    timeout: deadlineMs,
    killSignal: 'SIGKILL',
  });
  const program = electronProgram();
  if (program !== '') return { program, reason: '' };
  const reason = result.error
    ? 'its runtime could not be fetched within a minute'
    : 'its runtime could not be fetched';
  mkdirSync(cacheFolder, { recursive: true });
  writeFileSync(failureNote, JSON.stringify({ atMs: Date.now(), version: wantedVersion(), reason }));
  return { program: '', reason };
}

function earlierFailure() {
  try {
    const note = JSON.parse(readFileSync(failureNote, 'utf8'));
    const ageMs = Date.now() - note.atMs;
    if (note.version !== wantedVersion() || !(ageMs >= 0 && ageMs < dayMs)) return '';
    return `${note.reason} earlier today; "npx install-electron" tries again`;
  } catch {
    return '';
  }
}

function wantedVersion() {
  return JSON.parse(readFileSync(join(packageFolder, 'package.json'), 'utf8')).version;
}
