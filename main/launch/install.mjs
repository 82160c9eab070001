/**
 * What has to be there before anything of the workshop can run: the packages, and through them the project's
 * own Node 24. Plain JavaScript without packages, since it runs on a fresh clone under the system's Node (18 or
 * later). Everything said here goes to stderr: stdout belongs to the script that is started.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync } from 'node:fs';
import { basename, dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { oneAtATime } from './one-at-a-time.mjs';
import { startPackages } from './needed-packages.mjs';
import { removeUnusedParts } from './unused-parts.mjs';

/** Top folder of the project. */
export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** The project's own Node 24, whether or not it is installed yet. */
export const ownNode = join(
  root,
  'node_modules',
  'node',
  'bin',
  process.platform === 'win32' ? 'node.exe' : 'node',
);

/** Where launchers keep small notes between runs; goes with node_modules. */
export const cacheFolder = join(root, 'node_modules', '.cache', 'bolt-and-baffle');

/** @param {string} sentence */
export function say(sentence) {
  process.stderr.write(`${sentence}\n`);
}

/** What is to be installed: all, or what the app and its build need, without what only checks and packaging need. */
/** @typedef {'all' | 'start'} Extent */

/**
 * Why the packages must be installed (again), or '' when node_modules holds what package-lock.json asks for.
 * npm writes node_modules/.package-lock.json as its last step, so a broken-off install is never taken for whole.
 *
 * @param {string} folder top folder of the project
 * @param {Extent} extent
 */
export function missingInstall(folder, extent) {
  const installedList = join(folder, 'node_modules', '.package-lock.json');
  if (!existsSync(installedList)) return 'nothing is installed yet';
  try {
    const wanted = JSON.parse(readFileSync(join(folder, 'package-lock.json'), 'utf8')).packages;
    const installed = JSON.parse(readFileSync(installedList, 'utf8')).packages;
    const needed = extent === 'all' ? Object.keys(wanted) : startPackages(wanted);
    for (const path of needed) {
      const there = installed[path];
      const entry = wanted[path];
      if (!path.startsWith('node_modules/')) continue;
      if (there === undefined && (entry.optional || entry.devOptional)) continue;
      if (there === undefined) return `${path} is missing`;
      if (there.version !== entry.version || there.integrity !== entry.integrity)
        return `${path} has changed`;
    }
  } catch {
    return 'the list of installed packages cannot be read';
  }
  const node = process.platform === 'win32' ? 'node.exe' : 'node';
  return existsSync(join(folder, 'node_modules', 'node', 'bin', node)) ? '' : 'Node 24 is missing';
}

/**
 * Installs what package-lock.json asks for where it is not there; ends the process with a sentence if it cannot.
 *
 * @param {Extent} extent
 */
export function ensureInstalled(extent) {
  if (missingInstall(root, extent) === '') return;
  alone(() => {
    const reason = missingInstall(root, extent);
    if (reason !== '') install(reason, extent);
  });
}

/**
 * What puts the project's own parts into their places is done by one program at a time.
 *
 * @template T
 * @param {() => T} work
 * @returns {T}
 */
export function alone(work) {
  const onWait = () => say('Another start is installing or building; waiting until it is done.');
  return oneAtATime(join(root, 'out', 'preparing.lock'), onWait, work);
}

/**
 * @param {string} reason
 * @param {Extent} extent
 */
function install(reason, extent) {
  say(`Installing the packages (${reason}); this takes a minute the first time.`);
  leaveOwnNode();
  // Whoever had everything keeps it, though a start alone would need less.
  const isAll = extent === 'all' || existsSync(join(root, 'node_modules', 'bolt-and-baffle-checks'));
  const wanted = isAll ? [] : ['--workspaces=false'];
  const status = runNpm(['ci', ...wanted, '--no-audit', '--no-fund', '--loglevel=error']);
  if (status !== 0) {
    say(
      'The packages could not be installed: npm ci failed (see above). Check the connection and start again.',
    );
    process.exit(1);
  }
  if (!existsSync(ownNode)) {
    say('Node 24 was not installed with the packages. npm must be allowed to run scripts:');
    say('  npm config set ignore-scripts false, then start again.');
    process.exit(1);
  }
  removeUnusedParts(join(root, 'node_modules'));
}

/** Windows cannot delete a program that runs, but can move it: npm ci must be able to replace the one we run on. */
function leaveOwnNode() {
  if (process.platform !== 'win32' || !process.execPath.startsWith(join(root, 'node_modules') + sep)) return;
  try {
    mkdirSync(join(root, 'out'), { recursive: true });
    renameSync(process.execPath, join(root, 'out', `node-${process.pid}.exe`));
  } catch {
    // npm says what it could not replace.
  }
}

/**
 * Runs the npm that runs us, on the Node it runs on; its chatter goes to stderr. Returns the exit code.
 *
 * @param {readonly string[]} args
 */
export function runNpm(args) {
  const npm = process.env.npm_execpath ?? '';
  const node = process.env.npm_node_execpath ?? process.execPath;
  /** @type {import('node:child_process').SpawnSyncOptions} */
  const options = { cwd: root, stdio: ['ignore', 2, 2] };
  const result =
    basename(npm) === 'npm-cli.js' && existsSync(npm) && existsSync(node)
      ? spawnSync(node, [npm, ...args], options)
      : process.platform === 'win32'
        ? spawnSync(`npm.cmd ${args.join(' ')}`, { ...options, shell: true })
        : spawnSync('npm', args, options);
  return result.status ?? 1;
}
