/** Finds an installed browser of the Chromium family and knows how to open one page in it as a window. */
import { existsSync } from 'node:fs';
import { posix, win32 } from 'node:path';

/**
 * Places where browsers are installed, most usual first.
 *
 * @param {string} platform as process.platform
 * @param {Readonly<Record<string, string | undefined>>} env
 * @returns {string[]}
 */
export function browserPlaces(platform, env) {
  switch (platform) {
    case 'win32': {
      const inside = [
        'Google\\Chrome\\Application\\chrome.exe',
        'Microsoft\\Edge\\Application\\msedge.exe',
        'Chromium\\Application\\chrome.exe',
      ];
      const folders = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA];
      return inside.flatMap((path) =>
        folders.flatMap((folder) => (folder ? [win32.join(folder, path)] : [])),
      );
    }
    case 'darwin': {
      const inside = ['Google Chrome', 'Microsoft Edge', 'Chromium'].map(
        (name) => `Applications/${name}.app/Contents/MacOS/${name}`,
      );
      return inside.flatMap((path) =>
        ['/', ...(env.HOME ? [env.HOME] : [])].map((folder) => posix.join(folder, path)),
      );
    }
    default: {
      const names = [
        'google-chrome-stable',
        'google-chrome',
        'chromium',
        'chromium-browser',
        'microsoft-edge-stable',
        'microsoft-edge',
      ];
      return names.flatMap((name) => foldersOf(env).map((folder) => posix.join(folder, name)));
    }
  }
}

/** @param {Readonly<Record<string, string | undefined>>} env */
function foldersOf(env) {
  const folders = (env.PATH ?? '').split(':').filter((folder) => folder.startsWith('/'));
  return [...new Set([...folders, '/usr/bin', '/usr/local/bin', '/snap/bin'])];
}

/** For tests: a Chromium that cannot show itself, which does the same with a seventh less work; else as findBrowser. */
export function findBrowserForTests() {
  const shells = foldersOf(process.env).map((folder) => posix.join(folder, 'chromium-headless-shell'));
  return shells.find((path) => existsSync(path)) ?? findBrowser();
}

/** The first installed browser, or '' where there is none. */
export function findBrowser() {
  return browserPlaces(process.platform, process.env).find((path) => existsSync(path)) ?? '';
}

/** What a browser must be told when it runs as root (containers, CI), where it refuses its own sandbox. */
export function rootFlags() {
  return process.platform === 'linux' && process.getuid?.() === 0 ? ['--no-sandbox', '--disable-gpu'] : [];
}

/** Keeps a browser that serves one window from doing anything else. */
export const quietFlags = [
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-quic',
  '--disable-sync',
  '--disable-domain-reliability',
  '--no-pings',
  // Whatever else a browser asks its makers for by itself gets nowhere: no name is resolved, and no proxy asked to.
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
  '--no-proxy-server',
];

/** What browsers ask their makers for beside pages; of forms that are filled in, too. */
export const offFeatures = [
  'AutofillServerCommunication',
  'MediaRouter',
  'NetworkTimeServiceQuerying',
  'OptimizationGuideModelDownloading',
  'OptimizationHints',
  'Translate',
];

/**
 * Whether a window can be shown at all: on Linux only with a display server.
 *
 * @param {string} platform
 * @param {Readonly<Record<string, string | undefined>>} env
 */
export function hasDisplay(platform, env) {
  return platform !== 'linux' || Boolean(env.DISPLAY) || Boolean(env.WAYLAND_DISPLAY);
}
