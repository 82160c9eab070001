/**
 * Starts the workshop: installs and builds what is missing or changed, then opens the Electron window where its
 * runtime is to be had, and otherwise the loopback host in an installed browser. Says which, and why.
 *   npm start -- [--data FILE|ADDRESS]
 */
import { spawn } from 'node:child_process';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { findBrowser, hasDisplay, rootFlags } from './browser.mjs';
import { openBrowserWindow } from './browser-window.mjs';
import { ensureBuilt } from './build.mjs';
import { whenAskedToEnd } from './ending.mjs';
import { obtainElectron } from './electron-runtime.mjs';
import { ensureInstalled, ownNode, root, say } from './install.mjs';
import { onEnter } from './on-enter.mjs';

/** A program that ends badly sooner than this never showed its window. */
const atOnceMs = 8_000;
/** A page that has not been seen for so long will hardly come. */
const unseenMs = 20_000;
/** The exit code by which either door says that the data file cannot be opened; no other door would do better. */
const dataFileRefused = 3;

const given = readArguments(process.argv.slice(2));
ensureInstalled('start');
if (!ensureBuilt()) process.exit(1);

let reason = 'there is no display for it';
if (hasDisplay(process.platform, process.env)) {
  const runtime = obtainElectron();
  reason = runtime.program === '' ? runtime.reason : await openElectron(runtime.program);
}
await openLoopback(reason);

/**
 * @param {readonly string[]} words
 * @returns {string[]} the arguments for either door
 */
function readArguments(words) {
  if (words.length === 0) return [];
  const file =
    words[0] === '--data' ? words[1] : words[0]?.startsWith('--data=') ? words[0].slice(7) : undefined;
  const used = words[0] === '--data' ? 2 : 1;
  if (!file || words.length > used) {
    say(`Cannot read "${words.join(' ')}". Write: npm start -- --data FILE, or postgres://… in its place`);
    process.exit(2);
  }
  if (/^postgres(ql)?:\/\//i.test(file)) return ['--data', withoutPassword(file)];
  return ['--data', resolve(process.env.INIT_CWD ?? process.cwd(), file)];
}

/**
 * Everybody on this machine can read the arguments of a program, but not its environment.
 *
 * @param {string} address one that cannot be read is left to the door, which says so
 */
function withoutPassword(address) {
  if (!URL.canParse(address)) return address;
  const url = new URL(address);
  if (url.password !== '') process.env.PGPASSWORD = decodeURIComponent(url.password);
  url.password = '';
  return url.href;
}

/**
 * Shows the Electron window until it is closed, then ends the process. Comes back only if the program died at
 * once, with the reason.
 *
 * @param {string} program
 * @returns {Promise<string>}
 */
function openElectron(program) {
  say('Opening the Electron window.');
  const env = { ...process.env };
  delete env.ELECTRON_RUN_AS_NODE;
  const startedMs = Date.now();
  const child = spawn(program, [...rootFlags(), root, ...given], {
    env,
    stdio: ['ignore', 'inherit', 'pipe'],
  });
  let stderrTail = '';
  child.stderr.setEncoding('utf8').on('data', (/** @type {string} */ text) => {
    stderrTail = (stderrTail + text).slice(-4_000);
  });
  const stop = whenAskedToEnd(() => child.kill());
  return new Promise((fallBack) => {
    child.on('error', (error) => fallBack(`its program cannot be run (${error.message})`));
    child.on('close', (code, signal) => {
      if (code === 0 || code === dataFileRefused || stop.asked) process.exit(code ?? 0);
      const lastLine = stderrTail.trim().split('\n').at(-1) ?? '';
      const how = `it ended with ${signal ?? `code ${code}`}${lastLine === '' ? '' : `: ${lastLine}`}`;
      if (Date.now() - startedMs < atOnceMs) return fallBack(how);
      say(`The Electron window is gone: ${how}`);
      process.exit(code ?? 1);
    });
  });
}

/**
 * Serves the workshop on this machine's loopback and shows it in an installed browser, or prints the address
 * where none can show it; prints a new one at each press of Enter. The process ends with the window, with the host or
 * with a signal.
 *
 * @param {string} why the Electron window is not used
 */
async function openLoopback(why) {
  say(`Electron is not used: ${why}. Opening the loopback host instead.`);
  const hostFile = join(root, 'main', 'doors', 'loopback-host.ts');
  // The host ends when its input does, so it cannot outlive this process however that ends.
  const host = spawn(ownNode, [hostFile, '--attached', ...given], { stdio: ['pipe', 'pipe', 'inherit'] });
  // One that has died hears nothing more; its exit is told below.
  host.stdin.on('error', () => {});
  const lines = createInterface({ input: host.stdout });
  /** @type {ReturnType<typeof openBrowserWindow> | undefined} */
  let opened;
  let isFirst = true;
  let shown = false;
  let ending = false;
  const end = () => {
    ending = true;
    host.stdin.end();
  };
  const askAddress = () => {
    if (!ending) host.stdin.write('\n');
  };
  whenAskedToEnd(end);
  host.on('exit', (code) => {
    opened?.close();
    if (!ending && code !== 0) say(`The loopback host ended with code ${code}.`);
    process.exitCode = ending ? 0 : (code ?? 1);
  });

  /** @param {string} address */
  const openFirst = (address) => {
    const canShow = hasDisplay(process.platform, process.env);
    const browser = canShow ? findBrowser() : '';
    if (browser === '') {
      return printAddress(
        address,
        canShow ? 'No Chrome, Edge or Chromium was found.' : 'There is no display.',
      );
    }
    const startedMs = Date.now();
    opened = openBrowserWindow(browser, address, (how) => {
      if (ending) return;
      if (shown || Date.now() - startedMs >= atOnceMs) return end();
      say(`The browser ended at once (${how}).`);
      askAddress();
    });
    say(
      `The workshop is open in ${browser}. Closing its window ends the host; Enter gives an address for another.`,
    );
    // A browser that may not open files, as some workplaces have it, shows an empty window.
    setTimeout(() => {
      if (!shown) askAddress();
    }, unseenMs).unref();
  };

  lines.on('line', (line) => {
    if (line.startsWith('http://')) {
      if (isFirst) openFirst(line);
      else printAddress(line, '');
      isFirst = false;
    }
    if (line === 'window open') {
      shown = true;
      opened?.entered();
    }
    // On macOS a browser stays after its last window has closed, so there the page's own leaving counts.
    if (line === 'window closed' && process.platform === 'darwin' && opened) end();
  });
  onEnter(askAddress);
}

/**
 * @param {string} address
 * @param {string} why it is not opened here
 */
function printAddress(address, why) {
  say(
    `${why} Open this address in a browser on this machine. It is good once, for two minutes; Enter gives another, Ctrl+C ends the host:`.trim(),
  );
  process.stdout.write(`${address}\n`);
}
