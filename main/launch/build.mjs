/** Builds the window's parts into out/ when their sources changed since the last build. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { alone, ownNode, root, say } from './install.mjs';

const sources = [
  'shared-core',
  'main',
  'renderer',
  'resources',
  'electron.vite.config.ts',
  'package.json',
  'package-lock.json',
];
const built = ['main/electron.js', 'main/loopback-host.js', 'preload/preload.cjs', 'renderer/index.html'];
const note = join(root, 'out', 'sources.sha256');

/**
 * One hash over names and contents of all files at or below the paths, in an order that no disk decides.
 *
 * @param {string} folder
 * @param {readonly string[]} paths relative to folder; one that is missing counts as empty
 */
export function sourcesHash(folder, paths) {
  const hash = createHash('sha256');
  for (const file of paths.flatMap((path) => filesBelow(join(folder, path))).sort()) {
    const content = readFileSync(file);
    hash.update(`${relative(folder, file).split(sep).join('/')}\n${content.length}\n`).update(content);
  }
  return hash.digest('hex');
}

/**
 * @param {string} path
 * @returns {string[]}
 */
function filesBelow(path) {
  if (!existsSync(path)) return [];
  let entries;
  try {
    entries = readdirSync(path, { withFileTypes: true });
  } catch {
    return [path];
  }
  return entries.flatMap((entry) => {
    const inside = join(path, entry.name);
    return entry.isDirectory() ? filesBelow(inside) : [inside];
  });
}

/**
 * Builds if anything changed. Returns false, having shown the builder's own words, when the build fails.
 * Its output is kept from the screen otherwise.
 */
export function ensureBuilt() {
  const hash = sourcesHash(root, sources);
  return isBuilt(hash) || alone(() => isBuilt(hash) || build(hash));
}

/** @param {string} hash of the sources */
function isBuilt(hash) {
  const isWhole = built.every((file) => existsSync(join(root, 'out', file)));
  return isWhole && existsSync(note) && readFileSync(note, 'utf8') === hash;
}

/** @param {string} hash of the sources */
function build(hash) {
  say('Building.');
  const result = spawnSync(
    ownNode,
    [join(root, 'node_modules', 'electron-vite', 'bin', 'electron-vite.js'), 'build'],
    {
      cwd: root,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, NODE_ENV: 'production' },
    },
  );
  if (result.status !== 0) {
    say(`${result.stdout}${result.stderr}`);
    say('The build failed (see above).');
    return false;
  }
  mkdirSync(dirname(note), { recursive: true });
  writeFileSync(note, hash);
  return true;
}
