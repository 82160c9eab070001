import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { type BrowserContext, expect, type Page, test } from '@playwright/test';
import { findBrowser } from '../../main/launch/browser.mjs';
import { entryPage, windowFlags } from '../../main/launch/browser-window.mjs';
import { ownNode, root } from '../../main/launch/install.mjs';
import { readNetLog } from './net-log.ts';

let folder: string;

test.beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-network-'));
});

test.afterEach(() => {
  rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
});

/** What the recorder wrote down of a program. */
function recorded(file: string): { kind: string; to: string }[] {
  if (!existsSync(file)) return [];
  return readFileSync(file, 'utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
}

/** From the demo to a list that is saved, a backup and the versions. */
async function useTheWorkshop(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('heading', { name: 'Cover', level: 1 })).toBeVisible();
  const road = page.getByRole('region', { name: 'The road of this coat' });
  for (const step of ['Needs', 'Lay', 'To buy', 'Cost']) {
    await road.getByRole('link', { name: new RegExp(`^${step}`) }).click();
    await expect(page.getByRole('heading', { name: step, level: 1 })).toBeVisible();
  }
  const rooms = page.getByRole('navigation', { name: 'Rooms' });
  await rooms.getByRole('link', { name: 'Stash' }).click();
  await page.getByLabel('Search the stash').fill('slatewater');
  await rooms.getByRole('link', { name: 'Settings' }).click();
  await expect(page.getByText('This build knows no place to ask.')).toBeVisible();
  await page.getByLabel('Workshop name').fill('Thrush & Bramble');
  await expect(page.getByRole('status').getByText('Saved')).toBeVisible();
}

/** What a test started and has not ended, so that a failure leaves nothing running. */
const started: ChildProcess[] = [];
test.afterEach(() => {
  for (const child of started.splice(0)) child.kill('SIGKILL');
});

test('in a session of use host and window speak to each other and to nobody else', async ({
  playwright,
}, info) => {
  test.skip(info.project.name !== 'loopback', 'records the installed browser that the start opens');
  const browser = findBrowser();
  test.skip(browser === '', process.env.BOLT_NO_BROWSER || 'no Chrome, Edge or Chromium is installed');
  const connections = join(folder, 'connections.jsonl');
  const hostFile = join(root, 'main/doors/loopback-host.ts');
  const recorder = join(import.meta.dirname, 'connection-recorder.ts');
  const host = spawn(
    ownNode,
    ['--import', recorder, hostFile, '--attached', '--data', join(folder, 'workshop.sqlite')],
    { stdio: ['pipe', 'pipe', 'inherit'], env: { ...process.env, BOLT_CONNECTIONS: connections } },
  );
  started.push(host);
  const [address] = (await once(createInterface({ input: host.stdout }), 'line')) as [string];
  const { host: hostName } = new URL(address);
  const entry = join(folder, 'open.html');
  writeFileSync(entry, entryPage(address));
  const profile = join(folder, 'profile');
  const netLog = join(folder, 'net-log.json');
  // The window as the start opens it, seen from outside and without a display.
  const flags = ['--headless=new', '--remote-debugging-port=0', `--log-net-log=${netLog}`];
  const child = spawn(browser, [...windowFlags(entry, profile), ...flags], { stdio: 'ignore' });
  started.push(child);
  const closed = once(child, 'exit');
  const portFile = join(profile, 'DevToolsActivePort');
  await expect.poll(() => existsSync(portFile) && readFileSync(portFile, 'utf8')).toContain('\n');
  const seen = await playwright.chromium.connectOverCDP(
    `http://127.0.0.1:${readFileSync(portFile, 'utf8').split('\n')[0]}`,
  );
  const page = await firstPage(seen.contexts()[0]!);
  await useTheWorkshop(page);
  const session = await seen.newBrowserCDPSession();
  await session.send('Browser.close');
  await closed;
  const ended = once(host, 'exit');
  host.stdin.end();
  await ended;

  const found = readNetLog(netLog);
  const own = found.requests.filter((url) => url.startsWith(`http://${hostName}/`));
  // The record holds the session: the page, what it is made of, and its calls.
  const asked = own.map((url) => new URL(url).pathname);
  for (const part of ['/', '/call', '.js', '.css'])
    expect(asked.filter((path) => path.endsWith(part))).not.toEqual([]);
  // A browser may still want something of its makers, and reaches nobody; nothing that it wants comes from the page.
  const others = found.requests.filter((url) => !own.includes(url));
  expect(others.filter((url) => /autofill|optimizationguide|translate/.test(url))).toEqual([]);
  expect(found.connections).toEqual([hostName]);
  expect(found.lookupCount).toBe(0);
  expect(found.datagramCount).toBe(0);
  const notes = recorded(connections);
  // To listen it looks up its own address, which is one already.
  expect([...new Set(notes.map(({ kind }) => kind))].sort()).toEqual(['listen', 'lookup']);
  expect(notes.filter(({ to }) => !to.includes('"127.0.0.1"'))).toEqual([]);
});

test('the recorder hears every way in which a program of Node can reach out', () => {
  const connections = join(folder, 'connections.jsonl');
  const tries = `
    const quiet = (work) => Promise.resolve().then(work).catch(() => {});
    await quiet(() => fetch('http://127.0.0.1:65533/'));
    await quiet(() => fetch('https://localhost:65533/'));
    await quiet(() => new Promise((done) => require('node:http').get('http://127.0.0.1:65533/').on('error', done)));
    await quiet(() => new Promise((done) => require('node:dgram').createSocket('udp4').send('x', 65533, '127.0.0.1', done)));
    await quiet(() => require('node:dns').promises.lookup('localhost'));
    process.exit();
  `;
  const script = `const require = process.getBuiltinModule('node:module').createRequire(import.meta.url);${tries}`;
  const recorder = join(import.meta.dirname, 'connection-recorder.ts');
  spawnSync(ownNode, ['--import', recorder, '--input-type=module', '-e', script], {
    env: { ...process.env, BOLT_CONNECTIONS: connections },
    timeout: 300_000,
  });
  const kinds = recorded(connections).map(({ kind }) => kind);
  expect(kinds.filter((kind) => kind === 'connect').length).toBeGreaterThanOrEqual(3);
  expect(kinds).toEqual(expect.arrayContaining(['lookup', 'datagram']));
});

/** The window navigates from its entry to the workshop by itself. */
async function firstPage(context: BrowserContext): Promise<Page> {
  const page = context.pages()[0] ?? (await context.waitForEvent('page'));
  await page.waitForURL((url) => url.protocol === 'http:' && url.pathname !== '/enter');
  return page;
}
