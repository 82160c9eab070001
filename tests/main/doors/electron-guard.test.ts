import { mkdirSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type * as Electron from 'electron';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';

type StandIn = typeof import('./electron-stand-in.ts');

let folder: string;
let standIn: StandIn;
const argv = process.argv;
const page = 'bolt-and-baffle://window/';

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-guard-'));
  vi.stubEnv('XDG_DATA_HOME', folder);
  vi.stubEnv('APPDATA', folder);
  vi.resetModules();
  standIn = await import('./electron-stand-in.ts');
  standIn.scene.appPath = standIn.scene.home = folder;
  process.argv = ['electron', folder];
});

afterEach(() => {
  standIn.app.emit('will-quit');
  process.argv = argv;
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true, force: true });
});

async function openedWindow() {
  await import('../../../main/doors/electron.ts');
  await vi.waitUntil(() => standIn.scene.windows.length > 0);
  return standIn.scene.windows[0]!;
}

/** Whether the window was kept from going there. */
function isKept(contents: NodeJS.EventEmitter, event: string, url: string, isMainFrame = true): boolean {
  const preventDefault = vi.fn();
  contents.emit(event, { url, isMainFrame, preventDefault });
  return preventDefault.mock.calls.length > 0;
}

function isGranted(permission: string, requestingUrl: string, isMainFrame = true): [boolean, boolean] {
  const { request, check } = standIn.registered;
  let asked = false;
  const answer = (granted: boolean): void => {
    asked = granted;
  };
  const contents = {} as Electron.WebContents;
  const details = { requestingUrl, isMainFrame } as Electron.PermissionRequest;
  request?.(contents, permission as 'usb', answer, details);
  const from = requestingUrl.split('/').slice(0, 3).join('/');
  return [asked, check?.(contents, permission as 'usb', from, details) ?? true];
}

const elsewhere = [
  ...['https://example.org/', 'http://127.0.0.1:9/', 'file:///etc/hosts', 'about:blank', 'javascript:1'],
  ...['bolt-and-baffle://elsewhere/', 'bolt-and-baffle://window.example.org/', 'bolt-and-baffle:window/', ''],
  ...[
    `${page}other.html`,
    `${page}?go=https://example.org`,
    'blob:https://example.org/1',
    'ws://example.org/',
  ],
];

test('the window goes nowhere but to its own page, which may load itself anew', async () => {
  const { webContents } = await openedWindow();
  for (const event of ['will-navigate', 'will-frame-navigate', 'will-redirect']) {
    for (const url of elsewhere) expect(isKept(webContents, event, url), `${event} ${url}`).toBe(true);
  }
  for (const url of [page, `${page}#/coats`]) {
    expect(isKept(webContents, 'will-navigate', url)).toBe(false);
    expect(isKept(webContents, 'will-frame-navigate', url)).toBe(false);
  }
  expect(isKept(webContents, 'will-redirect', page)).toBe(true);
  expect(isKept(webContents, 'will-frame-navigate', page, false)).toBe(true);
});

test('nothing is opened beside the window or within it, whoever made the contents', async () => {
  const { webContents } = await openedWindow();
  expect(webContents.openHandler?.({ url: page } as never)).toEqual({ action: 'deny' });
  expect(isKept(webContents, 'will-attach-webview', page)).toBe(true);
  const { BrowserWindow } = standIn;
  const other = new BrowserWindow({}).webContents;
  expect(other.openHandler?.({ url: page } as never)).toEqual({ action: 'deny' });
  expect(isKept(other, 'will-navigate', 'https://example.org/')).toBe(true);
});

test('a table can be copied, and nothing else of the system is given', async () => {
  await openedWindow();
  expect(isGranted('clipboard-sanitized-write', page)).toEqual([true, true]);
  expect(isGranted('clipboard-sanitized-write', page, false)).toEqual([false, false]);
  expect(isGranted('clipboard-sanitized-write', 'https://example.org/')).toEqual([false, false]);
  expect(isGranted('clipboard-sanitized-write', 'bolt-and-baffle://window.example.org/')).toEqual([
    false,
    false,
  ]);
  const others = [
    'clipboard-read',
    'geolocation',
    'media',
    'notifications',
    'usb',
    'hid',
    'serial',
    'openExternal',
  ];
  for (const permission of [...others, 'fileSystem', 'local-network', 'unknown']) {
    expect(isGranted(permission, page), permission).toEqual([false, false]);
  }
  const device = { deviceType: 'usb', origin: page.slice(0, -1), device: {} };
  expect(standIn.registered.device?.(device as Electron.DevicePermissionHandlerHandlerDetails)).toBe(false);
});

function isCancelled(url: string): boolean | undefined {
  let cancelled: boolean | undefined;
  const answer = ({ cancel }: Electron.CallbackResponse): void => {
    cancelled = cancel;
  };
  standIn.registered.beforeRequest?.({ url } as Electron.OnBeforeRequestListenerDetails, answer);
  return cancelled;
}

test('the window loads what its own protocol serves and what the page makes itself, and asks no network', async () => {
  await openedWindow();
  const own = [page, `${page}assets/index.js`, `blob:${page}5e0d`, 'data:image/jpeg;base64,AAAA'];
  expect(own.map(isCancelled)).toEqual([false, false, false, false]);
  const foreign = elsewhere.filter((url) => !url.startsWith(page));
  expect(foreign.map(isCancelled)).toEqual(foreign.map(() => true));
  expect(standIn.scene.switches.get('host-resolver-rules')).toBe('MAP * ~NOTFOUND');
});

test('an installed app lets nobody look into its page', async () => {
  standIn.scene.isPackaged = true;
  standIn.scene.switches.set('remote-debugging-port', '9222').set('remote-debugging-pipe', '');
  const window = await openedWindow();
  expect(window.options.webPreferences?.devTools).toBe(false);
  expect([...standIn.scene.switches.keys()]).toEqual(['host-resolver-rules']);
  expect(menuRoles()).not.toContain('toggleDevTools');
  expect(isCancelled('devtools://devtools/bundled/index.html')).toBe(true);
});

test('a contributor may look into it', async () => {
  expect((await openedWindow()).options.webPreferences?.devTools).toBe(true);
  expect(menuRoles()).toContain('toggleDevTools');
  expect(isCancelled('devtools://devtools/bundled/index.html')).toBe(false);
});

function menuRoles(): (string | undefined)[] {
  const items = standIn.scene.menu.flatMap(({ submenu }) => (Array.isArray(submenu) ? submenu : []));
  return items.map(({ role }) => role);
}

test('no other setting of the window takes a safe default away', async () => {
  const { webPreferences = {} } = (await openedWindow()).options;
  expect(Object.keys(webPreferences).sort()).toEqual([
    ...['contextIsolation', 'devTools', 'nodeIntegration', 'preload', 'sandbox', 'spellcheck'],
  ]);
});

test('the usual folder of the workshop is its owner’s alone', async ({ skip }) => {
  skip(process.platform === 'win32', 'Windows keeps the folders of a person to that person');
  mkdirSync(join(folder, 'bolt-and-baffle'), { mode: 0o755 });
  await openedWindow();
  expect(statSync(join(folder, 'bolt-and-baffle')).mode & 0o777).toBe(0o700);
});
