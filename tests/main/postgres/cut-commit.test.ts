/** The line is cut in the very moment of a commit: the desk finds out whether its step was kept, and says so truly. */
import { createServer, connect, type AddressInfo, type Socket } from 'node:net';
import { expect, test, vi } from 'vitest';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { openDesk, receivedFill } from '../asking.ts';
import { createDatabase, dropDatabase, freshAddress } from './test-database.ts';

type Cut = 'before the server hears of it' | 'before its answer comes' | 'and nobody is reached after';

/** Stands between a desk and the server, and cuts the line at the next commit once it is told to. */
async function cuttingLine(address: string) {
  const url = new URL(address);
  const port = Number(url.port);
  let cut: Cut | null = null;
  let isShut = false;
  const sockets = new Set<Socket>();
  const line = createServer((desk) => {
    if (isShut) return void desk.destroy();
    const server = connect(port, url.hostname);
    for (const socket of [desk, server]) {
      sockets.add(socket);
      socket.on('error', () => {});
    }
    desk.on('data', (bytes) => {
      const isCommit = bytes.includes('commit\0');
      if (!isCommit || cut === null) return void server.write(bytes);
      const how = cut;
      cut = null;
      if (how === 'and nobody is reached after') isShut = true;
      if (how === 'before the server hears of it') server.destroy();
      // Its answer comes to a line that is cut already.
      else server.write(bytes, () => server.end());
      desk.destroy();
    });
    server.on('data', (bytes) => void (desk.destroyed || desk.write(bytes)));
    desk.on('close', () => server.end());
    server.on('close', () => desk.destroy());
  });
  await new Promise<void>((listening) => line.listen(0, '127.0.0.1', listening));
  url.port = String((line.address() as AddressInfo).port);
  return {
    address: url.href,
    cutNext: (how: Cut) => {
      cut = how;
    },
    isShut: () => isShut,
    open: () => {
      isShut = false;
    },
    close: () => {
      line.close();
      for (const socket of sockets) socket.destroy();
    },
  };
}

async function deskOverLine() {
  const direct = freshAddress();
  await createDatabase(direct);
  const line = await cuttingLine(direct);
  const desk = openDesk({ dataFile: line.address, waitMs: 6000 });
  const { itemId, lotId } = await receivedFill(desk, 640);
  const book = () => desk.ask('writeOff', { lotId, lengthId: null, amount: 1, reason: 'moths' });
  const entries = async () => (await desk.get('readItem', { itemId })).movements.length - 1;
  const end = async () => {
    await desk.services.close();
    line.close();
    await dropDatabase(direct);
  };
  return { line, desk, book, entries, end };
}

test.each(['before the server hears of it', 'before its answer comes'] as const)(
  '%s: the step is kept once, and said to be',
  async (how) => {
    const { line, desk, book, entries, end } = await deskOverLine();
    for (let at = 1; at <= 3; at++) {
      line.cutNext(how);
      expect(await book()).toMatchObject({ ok: true });
      expect(await entries()).toBe(at);
    }
    expect(desk.logged).toEqual([]);
    await end();
  },
);

test('and nobody is reached after: it is said that this is not known, and no more is said than is', async () => {
  const { line, book, entries, end } = await deskOverLine();
  line.cutNext('and nobody is reached after');
  // While nobody is reached, two seconds pass with each look at the clock.
  const real = performance.now.bind(performance);
  let aheadMs = 0;
  const clock = vi.spyOn(performance, 'now').mockImplementation(() => {
    if (line.isShut()) aheadMs += 2000;
    return real() + aheadMs;
  });
  const outcome = await book();
  clock.mockRestore();
  expect(outcome.ok ? '' : problemSentence(outcome.problems[0]!)).toContain(
    'was lost just as this step was being kept. Whether it was kept is not known.',
  );
  line.open();
  expect(await entries()).toBe(1);
  expect(await book()).toMatchObject({ ok: true });
  expect(await entries()).toBe(2);
  await end();
});
