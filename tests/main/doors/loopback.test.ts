import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request as rawRequest } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { ticketMs } from '../../../main/doors/entry.ts';
import {
  type HostTime,
  largestBodyBytes,
  type Loopback,
  startLoopback,
} from '../../../main/doors/loopback.ts';
import { openServices, type Services } from '../../../main/services/calls/services.ts';

let folder: string;
let services: Services;
let door: Loopback;
let cookie: string;
const seen: ('open' | 'closed')[] = [];

/** A clock that only the test moves, and what is to be done later by it. */
let nowMs: number;
let due: Set<() => void>;
const time: HostTime = {
  nowMs: () => nowMs,
  later(work) {
    due.add(work);
    return () => due.delete(work);
  },
};

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-loopback-'));
  mkdirSync(join(folder, 'page'));
  writeFileSync(join(folder, 'outside.html'), 'not for the page');
  writeFileSync(join(folder, 'page', 'index.html'), '<title>The built page</title>');
  writeFileSync(join(folder, 'page', 'secret.sqlite'), 'rows');
  const opened = openServices({
    dataFile: join(folder, 'own.sqlite'),
    demoFile: join(folder, 'demo.sqlite'),
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  services = opened.value;
  seen.length = 0;
  nowMs = 7_000;
  due = new Set();
  door = await startLoopback({
    services,
    rendererDir: join(folder, 'page'),
    onWindow: (state) => seen.push(state),
    time,
  });
  cookie = await cookieFor(door);
});

afterEach(async () => {
  await door.close();
  services.close();
  rmSync(folder, { recursive: true, force: true });
});

/** What a browser that opens a new address has from then on. */
async function cookieFor(opened: Loopback): Promise<string> {
  const first = await fetch(opened.newAddress());
  return (first.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
}

const factsCall = JSON.stringify({ call: 'workshopFacts', workshop: 'own', input: {} });

function post(body: string, headers: Record<string, string> = {}): Promise<Response> {
  const usual = { cookie, origin: new URL(door.address).origin, 'content-type': 'application/json' };
  return fetch(`${door.address}call`, { method: 'POST', body, headers: { ...usual, ...headers } });
}

/** A request whose Host the sender chooses, which fetch does not allow. */
function statusForHost(host: string, path: string, withCookie = cookie): Promise<number | undefined> {
  return new Promise((answered, failed) => {
    const port = Number(new URL(door.address).port);
    const sent = rawRequest(
      { host: '127.0.0.1', port, path, headers: { host, cookie: withCookie } },
      (response) => {
        response.resume();
        answered(response.statusCode);
      },
    );
    sent.on('error', failed).end();
  });
}

/** A ticket as the start's own page sends it. */
function postTicket(ticket: string | null): Promise<Response> {
  const { origin } = new URL(door.address);
  const body = new URLSearchParams({ ticket: ticket ?? '' });
  return fetch(`${origin}/enter`, { method: 'POST', body, headers: { origin: 'null' } });
}

function ticketIn(address: string): string {
  return new URL(address).searchParams.get('ticket') ?? '';
}

test('the address opens the page once its ticket has become a cookie', async () => {
  const first = await fetch(door.newAddress());
  expect(first.status).toBe(200);
  expect(first.headers.get('refresh')).toBe(`0; url=${new URL(door.address).pathname}`);
  const set = first.headers.get('set-cookie') ?? '';
  expect(set).toContain('HttpOnly');
  expect(set).toContain('SameSite=Strict');
  const page = await fetch(door.address, { headers: { cookie: set.split(';')[0]! } });
  expect(await page.text()).toContain('The built page');
  expect(page.headers.get('content-security-policy')).toContain("script-src 'self'");
  expect(page.headers.get('access-control-allow-origin')).toBeNull();
});

test('an address lets one browser in, once, and whoever is in stays in', async () => {
  const address = door.newAddress();
  expect((await fetch(address)).status).toBe(200);
  const again = await fetch(address);
  expect([again.status, again.headers.get('set-cookie')]).toEqual([403, null]);
  expect(await again.text()).toContain('Press Enter where the program runs');
  const other = await cookieFor(door);
  expect((await fetch(door.address, { headers: { cookie: other } })).status).toBe(200);
  expect((await fetch(door.address, { headers: { cookie } })).status).toBe(200);
});

test('an address that was not opened in time lets nobody in', async () => {
  const [late, justInTime] = [door.newAddress(), door.newAddress()];
  nowMs += ticketMs - 1;
  expect((await fetch(justInTime)).status).toBe(200);
  nowMs += 1;
  expect((await fetch(late)).status).toBe(403);
});

test('a ticket may come in a form, from a page that is no site’s, and is spent with it', async () => {
  const ticket = ticketIn(door.newAddress());
  const entered = await postTicket(ticket);
  expect([entered.status, entered.headers.get('set-cookie')]).toEqual([
    200,
    expect.stringContaining('SameSite=Strict'),
  ]);
  expect((await postTicket(ticket)).status).toBe(403);
  expect((await postTicket('a'.repeat(100_000))).status).toBe(403);
});

test('the cookie holds a secret of its own, and goes to the page’s own room alone', async () => {
  const address = door.newAddress();
  const [pair = '', ...rest] = ((await fetch(address)).headers.get('set-cookie') ?? '').split('; ');
  const secret = pair.slice(pair.indexOf('=') + 1);
  const ticket = ticketIn(address);
  expect(secret).not.toBe(ticket);
  expect(rest).toContain(`Path=${new URL(door.address).pathname}`);
  expect(new URL(door.address).pathname).toMatch(/^\/[\w-]{43}\/$/);
  expect(`${address} ${door.address}`).not.toContain(secret);
  const asCookie = { cookie: pair.replace(secret, ticketIn(door.newAddress())) };
  expect((await fetch(door.address, { headers: asCookie })).status).toBe(403);
  const asHeader = { authorization: `Bearer ${secret}` };
  expect((await fetch(door.address, { headers: asHeader })).status).toBe(403);
  expect((await postTicket(secret)).status).toBe(403);
});

test('a maker’s call is answered from the data file', async () => {
  const answer = await post(factsCall);
  expect(answer.status).toBe(200);
  expect(await answer.json()).toMatchObject({ ok: true, value: { dataFile: join(folder, 'own.sqlite') } });
});

test('a call that the contract does not know comes back as a problem', async () => {
  const answer = await post(JSON.stringify({ call: 'burnTheStash', workshop: 'own', input: {} }));
  expect(await answer.json()).toMatchObject({ ok: false });
});

test('without the cookie nothing is served', async () => {
  const { origin, pathname } = new URL(door.address);
  const unknown = 'x'.repeat(ticketIn(door.newAddress()).length);
  const paths = ['/', '/index.html', '/enter', '/enter?ticket=', `/enter?ticket=${unknown}`];
  for (const path of [...paths, pathname, `${pathname}window`, `${pathname}index.html`]) {
    expect((await fetch(`${origin}${path}`)).status, path).toBe(403);
  }
  expect((await post(factsCall, { cookie: '' })).status).toBe(403);
  expect((await post(factsCall, { cookie: cookie.replace(/.$/, '~') })).status).toBe(403);
});

test('a request for no address at all is refused like any other, and nothing of it is printed', async () => {
  const messages: unknown[] = [];
  const written = console.error;
  console.error = (message: unknown) => messages.push(message);
  const { host } = new URL(door.address);
  const statuses = [];
  for (const path of ['//', '//?ticket=guess', '*', 'http://['])
    statuses.push(await statusForHost(host, path, ''));
  console.error = written;
  expect([statuses, messages]).toEqual([[403, 403, 403, 403], []]);
});

test('a name that was pointed at this machine from elsewhere is refused', async () => {
  const { port, pathname } = new URL(door.address);
  const ticket = ticketIn(door.newAddress());
  expect(await statusForHost('shop.example.org', pathname)).toBe(403);
  expect(await statusForHost(`shop.example.org:${port}`, `/enter?ticket=${ticket}`)).toBe(403);
  expect(await statusForHost(`localhost:${port}`, pathname)).toBe(200);
});

test('a page from elsewhere cannot call, whatever cookie the browser sends', async () => {
  expect((await post(factsCall, { origin: 'https://example.org' })).status).toBe(403);
  expect((await post(factsCall, { origin: 'null' })).status).toBe(403);
  const bare = { method: 'POST', body: factsCall };
  const unnamed = await fetch(`${door.address}call`, {
    ...bare,
    headers: { cookie, 'content-type': 'application/json' },
  });
  expect(unnamed.status).toBe(403);
});

test('a broken-off request gets a sentence', async () => {
  const answer = await post(factsCall.slice(0, 20));
  expect(answer.status).toBe(400);
  expect(await answer.json()).toMatchObject({ ok: false, problems: [{ where: 'The request' }] });
});

test('a form of another site cannot pass as a call', async () => {
  expect((await post(factsCall, { 'content-type': 'text/plain' })).status).toBe(415);
  expect((await fetch(`${door.address}call`, { headers: { cookie } })).status).toBe(405);
});

test('a request that is too large is refused with the limit, and the next one is answered', async () => {
  const answer = await post(`"${'a'.repeat(largestBodyBytes)}"`);
  expect(answer.status).toBe(413);
  expect(JSON.stringify(await answer.json())).toContain('32 MiB');
  expect((await post(factsCall)).status).toBe(200);
});

test('only files of the page are served', async () => {
  const paths = [
    '/secret.sqlite',
    '/%2e%2e/own.sqlite',
    '/..%2foutside.html',
    '/assets/..%2f..%2foutside.html',
    '/%00',
    '/%',
    '/nothing.js',
    '/..%5cown',
  ];
  for (const path of paths) {
    expect((await fetch(`${door.address}${path.slice(1)}`, { headers: { cookie } })).status, path).toBe(404);
  }
  expect((await fetch(door.address, { method: 'DELETE', headers: { cookie } })).status).toBe(405);
});

test('a failure inside the host is a plain 500, goes into the log, and the host goes on', async () => {
  const failures: unknown[] = [];
  const failing = await startLoopback({
    services: {
      answer: async () => {
        throw new Error('the shelf fell down');
      },
    },
    rendererDir: join(folder, 'page'),
    onFailure: (error) => failures.push(error),
  });
  const headers = {
    cookie: await cookieFor(failing),
    origin: new URL(failing.address).origin,
    'content-type': 'application/json',
  };
  const messages: unknown[] = [];
  const written = console.error;
  console.error = (message: unknown) => messages.push(message);
  const answer = await fetch(`${failing.address}call`, { method: 'POST', body: factsCall, headers });
  console.error = written;
  expect(answer.status).toBe(500);
  expect(await answer.text()).not.toContain('shelf');
  expect([...messages, ...failures].map(String)).toEqual(Array(2).fill('Error: the shelf fell down'));
  expect((await fetch(failing.address, { headers })).status).toBe(200);
  await failing.close();
});

test('the host knows when its last window has closed, and a reload is no closing', async () => {
  const [first, second] = [new AbortController(), new AbortController()];
  const openWindow = (signal: AbortSignal) => fetch(`${door.address}window`, { headers: { cookie }, signal });
  await openWindow(first.signal);
  first.abort();
  await expect.poll(() => due.size).toBe(1);
  await openWindow(second.signal);
  expect([seen, due.size]).toEqual([['open'], 0]);
  second.abort();
  await expect.poll(() => due.size).toBe(1);
  expect(seen).toEqual(['open']);
  for (const work of due) work();
  expect(seen).toEqual(['open', 'closed']);
});
