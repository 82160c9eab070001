/**
 * Every check of the project in one go: types, lint, build, Vitest, Playwright. The last line is the true count of
 * all of them; types, lint and build count as one check each. Types and lint run beside the build, Vitest beside
 * Playwright, and what each of them says is shown in this order.
 *   npm test -- [FILTER]    only test files whose path contains FILTER; the three checks run all the same
 */
import { spawn, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statfsSync } from 'node:fs';
import { join } from 'node:path';
import { findBrowserForTests } from './browser.mjs';
import { ensureBuilt } from './build.mjs';
import { whenAskedToEnd } from './ending.mjs';
import { ensureInstalled, ownNode, root } from './install.mjs';

/**
 * @typedef {{ name: string, reason: string }} Skipped
 * @typedef {{ passed: number, failed: number, skipped: readonly Skipped[] }} Counts
 */

const noBrowser = 'no Chrome, Edge or Chromium is installed';

ensureInstalled('all');

const filter = process.argv.slice(2);
const resultsFolder = join(root, 'out', 'test');
rmSync(resultsFolder, { recursive: true, force: true });
mkdirSync(resultsFolder, { recursive: true });
const isCi = process.env.CI === 'true' || process.env.CI === '1';

const tempFolder = folderInMemory();

/** @type {{ name: string, counts: Counts }[]} */
const results = [];
/** @type {Set<import('node:child_process').ChildProcess>} */
const running = new Set();
whenAskedToEnd((signal) => {
  for (const child of running) child.kill(signal);
  clearTemp();
  process.exit(1);
});

// The packaging asks for packages that a start does not install, so it is a project of its own.
const types = startNode(['node_modules/typescript/bin/tsc', '-b', '.', 'tests/packaging']);
const lint = startNode([
  'node_modules/@biomejs/biome/bin/biome',
  'check',
  '--config-path',
  '.ci/lint.json',
  '--error-on-warnings',
  '.',
]);
const isBuilt = ensureBuilt();
const browser = obtainBrowser();
await check('types', types);
await check('lint', lint);
heading('build');
results.push({ name: 'build', counts: one(isBuilt) });

// Colours are for a terminal, and a runner beside another does not see whether there is one.
const isTerminal = process.stdout.isTTY;
const vitest = startTests(
  'vitest',
  ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts'],
  '--passWithNoTests',
  isTerminal ? { FORCE_COLOR: '1' } : { NO_COLOR: '1' },
);
const playwright = startTests(
  'playwright',
  ['node_modules/@playwright/test/cli.js', 'test', '--config', 'tests/playwright.config.ts'],
  '--pass-with-no-tests',
  {
    BOLT_NO_BROWSER: browser.reason,
    BOLT_BROWSER: browser.program,
    ...(isTerminal ? { FORCE_COLOR: '1' } : {}),
  },
);
await count('vitest', vitest);
await count('playwright', playwright);
if (browser.reason !== '' && isCi) {
  console.log(`No browser for the browser tests: ${browser.reason}`);
  results.push({ name: 'browser', counts: one(false) });
}

clearTemp();
report();

/**
 * Where there is memory enough the tests have their files in it: on a disk they spend half of their time waiting for
 * each commit to be safe.
 */
function folderInMemory() {
  try {
    const { bavail, bsize } = statfsSync('/dev/shm');
    if (bavail * bsize < 4e9) return null;
    const folder = mkdtempSync('/dev/shm/bolt-and-baffle-tests-');
    // As /tmp is: the server of the tests, and makers who may not write, run as somebody else.
    chmodSync(folder, 0o1777);
    return folder;
  } catch {
    return null;
  }
}

function clearTemp() {
  if (tempFolder) rmSync(tempFolder, { recursive: true, force: true });
}

/** @param {string} name */
function heading(name) {
  console.log(`\n== ${name}`);
}

/**
 * @param {boolean} isGood
 * @returns {Counts}
 */
function one(isGood) {
  return { passed: isGood ? 1 : 0, failed: isGood ? 0 : 1, skipped: [] };
}

/**
 * @typedef {object} Started
 * @property {() => Promise<number>} end what it says is on the screen from now on; gives its exit code
 */

/**
 * Starts a program beside the others.
 *
 * @param {readonly string[]} args
 * @param {Readonly<Record<string, string>>} env
 * @returns {Started}
 */
function startNode(args, env = {}) {
  const child = spawn(ownNode, args, {
    cwd: root,
    env: { ...process.env, ...(tempFolder && { TMPDIR: tempFolder }), ...env },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  running.add(child);
  /** @type {Buffer[]} */
  const unsaid = [];
  let say = (/** @type {Buffer} */ words) => void unsaid.push(words);
  child.stdout.on('data', (words) => say(words));
  child.stderr.on('data', (words) => say(words));
  /** @type {Promise<number>} */
  const ended = new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      running.delete(child);
      resolve(code ?? 1);
    });
  });
  return {
    end() {
      say = (words) => void process.stdout.write(words);
      for (const words of unsaid) say(words);
      return ended;
    },
  };
}

/**
 * @param {string} name
 * @param {Started} started
 */
async function check(name, started) {
  heading(name);
  results.push({ name, counts: one((await started.end()) === 0) });
}

/**
 * Starts a runner whose reporter leaves its counts in out/test.
 *
 * @param {string} name
 * @param {readonly string[]} args
 * @param {string} noneIsFine the runner's option for a filter that matches none of its files
 * @param {Readonly<Record<string, string>>} env
 */
function startTests(name, args, noneIsFine, env) {
  const filtered = filter.length > 0 ? [noneIsFine, ...filter] : [];
  return startNode([...args, ...filtered], { ...env, BOLT_COUNTS: countsFile(name) });
}

/** @param {string} name */
function countsFile(name) {
  return join(resultsFolder, `${name}.json`);
}

/**
 * Takes a runner's counts. A runner that ends badly without a failed test, or leaves no counts, is itself a failure:
 * nothing may be lost between the two.
 *
 * @param {string} name
 * @param {Started} started
 */
async function count(name, started) {
  heading(name);
  const code = await started.end();
  const file = countsFile(name);
  /** @type {Counts} */
  let counts = { passed: 0, failed: 0, skipped: [] };
  let isCounted = false;
  if (existsSync(file)) {
    counts = JSON.parse(readFileSync(file, 'utf8'));
    isCounted = true;
  }
  if (counts.failed === 0 && (code !== 0 || !isCounted)) {
    console.log(`${name} ended with code ${code}${isCounted ? '' : ' and left no counts'}.`);
    counts = { ...counts, failed: 1 };
  }
  results.push({ name, counts });
}

/**
 * A browser for the tests, installed if it is missing and can be; what is installed, and where, is said before.
 *
 * @returns {{ program: string, reason: string }} program '' with reason '' is Playwright's own Chromium
 */
function obtainBrowser() {
  const there = findBrowserForTests();
  if (there !== '') return { program: there, reason: '' };
  if (hasOwnChromium()) return { program: '', reason: '' };
  if (process.env.BOLT_NO_INSTALL) return { program: '', reason: noBrowser };
  console.log('No Chrome, Edge or Chromium is installed. BOLT_NO_INSTALL=1 leaves it at that.');
  const isDebianRoot =
    process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (isDebianRoot) {
    console.log(
      'Installing the package chromium-headless-shell into this system, with apt-get, for the browser tests.',
    );
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    const quiet = { env, stdio: /** @type {const} */ ('ignore'), timeout: 240_000 };
    spawnSync('apt-get', ['update'], quiet);
    // Debian has it apart from chromium since 12; where it is not, all of Chromium does.
    for (const name of ['chromium-headless-shell', 'chromium']) {
      if (findBrowserForTests() === '') {
        spawnSync('apt-get', ['install', '-y', '--no-install-recommends', name], quiet);
      }
    }
    const installed = findBrowserForTests();
    if (installed !== '') return { program: installed, reason: '' };
  }
  console.log('Fetching a Chromium for the tests alone into the cache of Playwright.');
  const install = [join(root, 'node_modules/@playwright/test/cli.js'), 'install', 'chromium'];
  spawnSync(ownNode, install, { cwd: root, stdio: 'ignore', timeout: 180_000 });
  if (hasOwnChromium()) return { program: '', reason: '' };
  return { program: '', reason: `${noBrowser}, and none could be fetched` };
}

function hasOwnChromium() {
  const script = "console.log(require('@playwright/test').chromium.executablePath())";
  const asked = spawnSync(ownNode, ['-e', script], { cwd: root, encoding: 'utf8' });
  return asked.status === 0 && existsSync(asked.stdout.trim());
}

function report() {
  const skipped = results.flatMap(({ counts }) => counts.skipped);
  if (skipped.length > 0) console.log('\n== skipped');
  for (const { name, reason } of skipped) console.log(`${name}: ${reason}`);
  console.log('');
  for (const { name, counts } of results) console.log(`${name}: ${countLine(counts)}`);
  const passed = results.reduce((sum, { counts }) => sum + counts.passed, 0);
  const failed = results.reduce((sum, { counts }) => sum + counts.failed, 0);
  const isEmpty =
    filter.length > 0 && results.every(({ name, counts }) => !isRunner(name) || isNothing(counts));
  if (isEmpty) console.log(`No test file matches "${filter.join(' ')}".`);
  console.log(countLine({ passed, failed: failed + (isEmpty ? 1 : 0), skipped }));
  process.exitCode = failed > 0 || isEmpty ? 1 : 0;
}

/** @param {string} name */
function isRunner(name) {
  return name === 'vitest' || name === 'playwright';
}

/** @param {Counts} counts */
function isNothing(counts) {
  return counts.passed + counts.failed + counts.skipped.length === 0;
}

/** @param {Counts} counts */
function countLine(counts) {
  return `${counts.passed} passed, ${counts.failed} failed, ${counts.skipped.length} skipped`;
}
