import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { connect, type Socket } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type Loopback, startLoopback } from '../../../main/doors/loopback.ts';
import { openOwnFolder } from '../../../main/doors/own-folder.ts';
import { ok } from '../../../shared-core/measure/problem.ts';
import { requestText } from './request-text.ts';

let folder: string;
let door: Loopback;
let host: string;
let room: string;
let cookie: string;
const sockets: Socket[] = [];
/** How long the services take for the next answers. */
let answerMs: number;

const silentMs = 400;

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-sockets-'));
  writeFileSync(join(folder, 'index.html'), '<title>The built page</title>');
  answerMs = 0;
  const answer = () => new Promise<void>((done) => setTimeout(done, answerMs)).then(() => ok('done'));
  door = await startLoopback({ services: { answer }, rendererDir: folder, silentMs });
  ({ host, pathname: room } = new URL(door.address));
  const entered = await fetch(door.newAddress());
  cookie = (entered.headers.get('set-cookie') ?? '').split(';')[0] ?? '';
});

afterEach(async () => {
  for (const socket of sockets.splice(0)) socket.destroy();
  await door.close();
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

function opened(): Socket & { heard: string } {
  const socket = Object.assign(connect(Number(host.split(':')[1]), '127.0.0.1'), { heard: '' });
  socket.setEncoding('latin1').on('error', () => {});
  socket.on('data', (text) => {
    socket.heard += text;
  });
  sockets.push(socket);
  return socket;
}

function call(headers: Record<string, string> = {}): string {
  const usual = { Host: host, Origin: `http://${host}`, Cookie: cookie, 'Content-Type': 'application/json' };
  return requestText(`POST ${room}call`, { ...usual, ...headers }, '{}');
}

test('whoever connects and says nothing, or half a sentence, is let go', async () => {
  const silent = opened();
  const half = opened();
  half.write(`GET / HTTP/1.1\r\nHost: ${host}\r\n`);
  const slow = opened();
  slow.write(requestText('POST /enter', { Host: host, 'Content-Length': '400' }, 'ticket='));
  await expect.poll(() => [silent, half, slow].map(({ destroyed }) => destroyed)).toEqual([true, true, true]);
});

test('a long answer to the window is waited for, on the second call of a connection too', async () => {
  const socket = opened();
  for (const count of [1, 2]) {
    answerMs = 3 * silentMs;
    socket.write(call());
    await expect.poll(() => socket.heard.split('"done"').length - 1).toBe(count);
  }
});

test('the stream of an open window stays, however long nothing happens', async () => {
  const stream = opened();
  stream.write(requestText(`GET ${room}window`, { Host: host, Cookie: cookie }));
  await expect.poll(() => stream.heard).toContain(': open');
  await new Promise((later) => setTimeout(later, 4 * silentMs));
  expect(stream.destroyed).toBe(false);
});

test('a crowd at the door keeps nobody out who may come in, and pushes nobody out who is', async () => {
  const stream = opened();
  stream.write(requestText(`GET ${room}window`, { Host: host, Cookie: cookie }));
  await expect.poll(() => stream.heard).toContain(': open');
  const crowd = Array.from({ length: 400 }, opened);
  const late = opened();
  late.write(call());
  await expect.poll(() => late.heard).toContain('"done"');
  expect(stream.destroyed).toBe(false);
  expect(crowd.filter(({ destroyed }) => !destroyed).length).toBeLessThan(80);
});

test('a request that is broken off is nothing to print', async () => {
  const printed = vi.spyOn(console, 'error').mockImplementation(() => {});
  const socket = opened();
  socket.write(call({ 'Content-Length': '4000' }));
  await new Promise((later) => setTimeout(later, 50));
  socket.destroy();
  const next = opened();
  next.write(call());
  await expect.poll(() => next.heard).toContain('"done"');
  expect(printed).not.toHaveBeenCalled();
});

test('whoever is turned away is cut off in the middle of what they send', async () => {
  const socket = opened();
  socket.write(requestText('POST /enter', { Host: host, 'Content-Length': '400000000' }, 'ticket='));
  await expect.poll(() => socket.destroyed).toBe(true);
  expect(socket.heard).toMatch(/^HTTP\/1\.1 403 .*connection: close/is);
});

test('the usual folder of the workshop is closed to other people, even one that was made open', ({
  skip,
}) => {
  skip(process.platform === 'win32', 'Windows keeps the folders of a person to that person');
  const usual = join(folder, 'usual');
  openOwnFolder(usual);
  expect(statSync(usual).mode & 0o777).toBe(0o700);
  openOwnFolder(folder);
  expect(statSync(folder).mode & 0o777).toBe(0o700);
});
