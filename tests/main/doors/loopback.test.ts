import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { request as rawRequest } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { largestBodyBytes, type Loopback, startLoopback } from '../../../main/doors/loopback.ts';
import { openServices, type Services } from '../../../main/services/services.ts';

let folder: string;
let services: Services;
let door: Loopback;
let cookie: string;
const seen: ('open' | 'closed')[] = [];

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
  door = await startLoopback({
    services,
    rendererDir: join(folder, 'page'),
    onWindow: (state) => seen.push(state),
  });
  const first = await fetch(door.url, { redirect: 'manual' });
  cookie = (first.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
});

afterEach(async () => {
  await door.close();
  services.close();
  rmSync(folder, { recursive: true, force: true });
});

const factsCall = JSON.stringify({ call: 'workshopFacts', workshop: 'own', input: {} });

function post(body: string, headers: Record<string, string> = {}): Promise<Response> {
  const usual = { cookie, origin: door.address, 'content-type': 'application/json' };
  return fetch(`${door.address}/call`, { method: 'POST', body, headers: { ...usual, ...headers } });
}

/** A request whose Host the sender chooses, which fetch does not allow. */
function statusForHost(host: string, path: string): Promise<number | undefined> {
  return new Promise((answered, failed) => {
    const port = Number(new URL(door.address).port);
    const sent = rawRequest({ host: '127.0.0.1', port, path, headers: { host, cookie } }, (response) => {
      response.resume();
      answered(response.statusCode);
    });
    sent.on('error', failed).end();
  });
}

test('the address opens the page once its token has become a cookie', async () => {
  const first = await fetch(door.url, { redirect: 'manual' });
  expect(first.status).toBe(303);
  expect(first.headers.get('location')).toBe('/');
  const set = first.headers.get('set-cookie') ?? '';
  expect(set).toContain('HttpOnly');
  expect(set).toContain('SameSite=Strict');
  const page = await fetch(door.address, { headers: { cookie } });
  expect(await page.text()).toContain('The built page');
  expect(page.headers.get('content-security-policy')).toContain("script-src 'self'");
  expect(page.headers.get('access-control-allow-origin')).toBeNull();
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

test('without the token nothing is served', async () => {
  for (const path of [
    '/',
    '/index.html',
    '/window',
    '/?token=guess',
    `/?token=${'x'.repeat(door.token.length)}`,
  ]) {
    expect((await fetch(`${door.address}${path}`)).status, path).toBe(403);
  }
  expect((await post(factsCall, { cookie: '' })).status).toBe(403);
  expect((await post(factsCall, { cookie: cookie.replace(/.$/, '~') })).status).toBe(403);
});

test('a name that was pointed at this machine from elsewhere is refused', async () => {
  const port = new URL(door.address).port;
  expect(await statusForHost('shop.example.org', '/')).toBe(403);
  expect(await statusForHost(`shop.example.org:${port}`, `/?token=${door.token}`)).toBe(403);
  expect(await statusForHost(`localhost:${port}`, '/')).toBe(200);
});

test('a page from elsewhere cannot call, whatever cookie the browser sends', async () => {
  expect((await post(factsCall, { origin: 'https://example.org' })).status).toBe(403);
  expect((await post(factsCall, { origin: 'null' })).status).toBe(403);
  const bare = { method: 'POST', body: factsCall };
  const unnamed = await fetch(`${door.address}/call`, {
    ...bare,
    headers: { cookie, 'content-type': 'application/json' },
  });
  expect(unnamed.status).toBe(403);
});

test('a program with the token in its header may call', async () => {
  const headers = { authorization: `Bearer ${door.token}`, 'content-type': 'application/json' };
  const answer = await fetch(`${door.address}/call`, { method: 'POST', body: factsCall, headers });
  expect(answer.status).toBe(200);
});

test('a broken-off request gets a sentence', async () => {
  const answer = await post(factsCall.slice(0, 20));
  expect(answer.status).toBe(400);
  expect(await answer.json()).toMatchObject({ ok: false, problems: [{ where: 'The request' }] });
});

test('a form of another site cannot pass as a call', async () => {
  expect((await post(factsCall, { 'content-type': 'text/plain' })).status).toBe(415);
  expect((await fetch(`${door.address}/call`, { headers: { cookie } })).status).toBe(405);
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
    expect((await fetch(`${door.address}${path}`, { headers: { cookie } })).status, path).toBe(404);
  }
  expect((await fetch(door.address, { method: 'DELETE', headers: { cookie } })).status).toBe(405);
});

test('a failure inside the host is a plain 500 and the host goes on', async () => {
  const failing = await startLoopback({
    services: {
      answer: async () => {
        throw new Error('the shelf fell down');
      },
    },
    rendererDir: join(folder, 'page'),
  });
  const headers = { authorization: `Bearer ${failing.token}`, 'content-type': 'application/json' };
  const messages: unknown[] = [];
  const written = console.error;
  console.error = (message: unknown) => messages.push(message);
  const answer = await fetch(`${failing.address}/call`, { method: 'POST', body: factsCall, headers });
  console.error = written;
  expect(answer.status).toBe(500);
  expect(await answer.text()).not.toContain('shelf');
  expect(String(messages[0])).toContain('the shelf fell down');
  expect((await fetch(failing.address, { headers })).status).toBe(200);
  await failing.close();
});

test('the host knows when its last window has closed, and a reload is no closing', async () => {
  const first = new AbortController();
  const headers = { cookie };
  await fetch(`${door.address}/window`, { headers, signal: first.signal });
  const second = new AbortController();
  first.abort();
  await new Promise((later) => setTimeout(later, 300));
  await fetch(`${door.address}/window`, { headers, signal: second.signal });
  await new Promise((later) => setTimeout(later, 3_400));
  expect(seen).toEqual(['open']);
  second.abort();
  await expect.poll(() => seen, { timeout: 5_000 }).toEqual(['open', 'closed']);
});
