/**
 * What has to be there before anything of the workshop can run: the packages, and through them the project's
 * own Node 24. Plain JavaScript without packages, since it runs on a fresh clone under the system's Node (18 or
 * later). Everything said here goes to stderr: stdout belongs to the script that is started.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, renameSync } from 'node:fs';
import { basename, dirname, join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';

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

/**
 * Why the packages must be installed (again), or '' when node_modules holds what package-lock.json asks for.
 * npm writes node_modules/.package-lock.json as its last step, so a broken-off install is never taken for whole.
 *
 * @param {string} folder top folder of the project
 */
export function missingInstall(folder) {
  const installedList = join(folder, 'node_modules', '.package-lock.json');
  if (!existsSync(installedList)) return 'nothing is installed yet';
  try {
    const wanted = JSON.parse(readFileSync(join(folder, 'package-lock.json'), 'utf8')).packages;
    const installed = JSON.parse(readFileSync(installedList, 'utf8')).packages;
    for (const [path, entry] of Object.entries(wanted)) {
      const there = installed[path];
      if (path === '' || (there === undefined && (entry.optional || entry.devOptional))) continue;
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

/** Installs what package-lock.json asks for where it is not there; ends the process with a sentence if it cannot. */
export function ensureInstalled() {
  const reason = missingInstall(root);
  if (reason === '') return;
  say(`Installing the packages (${reason}); this takes a minute the first time.`);
  leaveOwnNode();
  const status = runNpm(['ci', '--no-audit', '--no-fund', '--loglevel=error']);
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
