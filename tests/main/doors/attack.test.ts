import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, request as rawRequest } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Entry } from '../../../main/doors/entry.ts';
import { type Answering, type Loopback, startLoopback } from '../../../main/doors/loopback.ts';
import { openServices, type Services } from '../../../main/services/calls/services.ts';
import { attack, type AttackReport, isUnharmed } from './attack.ts';

/** Checks that a test takes out of the door, to see whether the attack finds it. */
const out = { secret: false, ticket: false };
vi.mock('../../../main/doors/entry.ts', async (original) => {
  const real = await original<typeof import('../../../main/doors/entry.ts')>();
  return {
    ...real,
    openEntry(nowMs: () => number): Entry {
      const entry = real.openEntry(nowMs);
      return {
        ...entry,
        isIn: (cookies) => out.secret || entry.isIn(cookies),
        trade: (ticket) => entry.trade(out.ticket ? entry.newTicket() : ticket),
      };
    },
  };
});

let folder: string;
let services: Services;
let door: Loopback | undefined;
const printed: unknown[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-attack-'));
  mkdirSync(join(folder, 'page'));
  writeFileSync(join(folder, 'page', 'index.html'), '<title>The built page</title>');
  const files = { dataFile: join(folder, 'own.sqlite'), demoFile: join(folder, 'demo.sqlite') };
  const opened = openServices(files);
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  services = opened.value;
  Object.assign(out, { secret: false, ticket: false });
  printed.length = 0;
  vi.spyOn(console, 'error').mockImplementation((...words) => void printed.push(...words));
});

afterEach(async () => {
  await door?.close();
  services.close();
  vi.restoreAllMocks();
  rmSync(folder, { recursive: true, force: true });
});

/** Attacks a new door, through `origin` where it is reached by another way than its own address. */
async function attacked(
  every: number,
  answering: Answering = services,
  origin?: string,
): Promise<AttackReport> {
  door = await startLoopback({ services: answering, rendererDir: join(folder, 'page'), silentMs: 600 });
  const opened = door;
  const newAddress = async () => opened.newAddress();
  const own = new URL(opened.address).origin;
  return attack({ origin: origin ?? own, newAddress }, { every, silentCount: 40, silentMs: 6_000 });
}

test('an attack on the door gets nothing, breaks nothing, prints nothing, and the window is still answered', async () => {
  const report = await attacked(4);
  expect(report.sent).toBeGreaterThan(180);
  expect(Object.keys(report.groups).length).toBeGreaterThan(12);
  expect(report).toMatchObject({
    served: [],
    servedWithoutSecret: 0,
    servedAgainstTheRules: 0,
    status5xx: 0,
    silentKept: 0,
    answersStill: true,
  });
  expect(printed).toEqual([]);
  expect(isUnharmed(report)).toBe(true);
});

test('a door that does not ask for the secret is caught', async () => {
  out.secret = true;
  const report = await attacked(9);
  expect(report.servedWithoutSecret).toBeGreaterThan(5);
  expect(report.served.join()).toContain('wrong secret');
  expect(isUnharmed(report)).toBe(false);
});

test('a door that takes a ticket twice is caught', async () => {
  out.ticket = true;
  const report = await attacked(7);
  expect(report.served.join()).toContain('used ticket');
  expect(isUnharmed(report)).toBe(false);
});

test('a door that breaks is caught', async () => {
  const report = await attacked(9, { answer: () => Promise.reject(new Error('the shelf fell down')) });
  expect(report.status5xx).toBeGreaterThan(0);
  expect(report.answersStill).toBe(false);
  expect(isUnharmed(report)).toBe(false);
});

test('a door that answers to any name, and to pages from elsewhere, is caught', async () => {
  // What stands before the door puts the right names on whatever comes.
  const before = createServer((request, response) => {
    const { host } = new URL(door!.address);
    const { origin, ...rest } = request.headers;
    const named = { ...rest, host, ...(origin === undefined ? {} : { origin: `http://${host}` }) };
    const { port } = new URL(door!.address);
    const passed = rawRequest(
      { host: '127.0.0.1', port, path: request.url, method: request.method, headers: named },
      (answer) => {
        response.writeHead(answer.statusCode ?? 500, answer.headers);
        answer.pipe(response);
      },
    );
    passed.on('error', () => response.destroy());
    request.pipe(passed);
  });
  before.headersTimeout = before.timeout = 600;
  await new Promise<void>((listening) => before.listen(0, '127.0.0.1', listening));
  const report = await attacked(3, services, `http://127.0.0.1:${(before.address() as AddressInfo).port}`);
  before.close();
  before.closeAllConnections();
  expect(report.servedAgainstTheRules).toBeGreaterThan(5);
  expect(report.served.join()).toMatch(/foreign host: .*foreign origin: /s);
  expect(isUnharmed(report)).toBe(false);
});
