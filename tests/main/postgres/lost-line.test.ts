/** The server goes away and comes back while desks work: what they are told, and what is kept. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { problemSentence } from '../../../shared-core/measure/problem.ts';
import { openDesk, receivedFill } from '../asking.ts';
import { besideDatabase } from '../beside.ts';
import { startServer, type TempServer } from './temp-server.ts';

let server: TempServer | null = null;

beforeAll(async () => {
  server = await startServer();
});

afterAll(async () => {
  await server?.end();
});

async function desksAt(more: { readonly lockMs?: number } = {}) {
  const dataFile = server!.address(await server!.createDatabase());
  const first = openDesk({ dataFile, waitMs: 6000, ...more });
  const fill = await receivedFill(first, 640);
  const second = openDesk({ dataFile, waitMs: 6000 });
  await second.get('workshopFacts', {});
  return { first, second, fill };
}

const entry = (lotId: string) => ({ lotId, lengthId: null, amount: 1, reason: 'moths' });

test('a desk without its server says so, and goes on by itself when it is back', async () => {
  const { first, second, fill } = await desksAt();
  await server!.kill();
  for (const [call, input] of [
    ['workshopFacts', {}],
    ['writeOff', entry(fill.lotId)],
  ] as const) {
    const outcome = await first.services.answer({ call, workshop: 'own', input });
    expect(outcome.ok ? '' : problemSentence(outcome.problems[0]!)).toMatch(
      /^postgres:\/\/maker@127\.0\.0\.1:\d+\/workshop_\w+ cannot be reached\. Nothing was changed\./,
    );
  }
  const heard = new Promise<void>((done) => second.services.onChangeElsewhere(done));
  await server!.startAgain();
  await first.get('writeOff', entry(fill.lotId));
  const { shelf } = await second.get('readItem', { itemId: fill.itemId });
  expect(shelf.lots[0]?.onHand).toBe(639);
  // Its line is there again, and what it may have missed is looked at.
  await heard;
  expect(first.logged).toEqual([]);
});

test('connections that are cut in the middle leave nothing half done, and are made anew', async () => {
  const { first, fill } = await desksAt();
  const name = new URL(first.dataFile).pathname.slice(1);
  const beside = besideDatabase(server!.address('postgres'));
  /** After so many questions: as long as they take, so that each cut falls into another moment of what is cut. */
  const cut = async (questions: number) => {
    for (let asked = 0; asked < questions; asked++) await beside.ask('select 1');
    const [{ count }] = (await beside.ask(
      `select count(pg_terminate_backend(pid)) from pg_stat_activity where datname = '${name}'`,
    )) as [{ count: unknown }];
    return Number(count);
  };
  let kept = 0;
  let cutCount = 0;
  const told = new Set<string>();
  for (let at = 0; at < 40; at++) {
    const [outcome, count] = await Promise.all([
      first.ask('writeOff', entry(fill.lotId)),
      at % 2 === 0 ? cut(at) : 0,
    ]);
    cutCount += count;
    if (outcome.ok) kept++;
    else for (const problem of outcome.problems) told.add(problem.what);
  }
  await beside.close();
  expect(cutCount).toBeGreaterThan(20);
  const { shelf, movements } = await first.get('readItem', { itemId: fill.itemId });
  // What was said to be kept is there once, and nothing else is.
  expect(movements).toHaveLength(kept + 1);
  expect(shelf.lots[0]?.onHand).toBe(640 - kept);
  expect(kept).toBeGreaterThan(0);
  expect([...told].filter((what) => what !== 'cannot be reached')).toEqual([]);
  expect(first.logged).toEqual([]);
});

test('a change that waits for another desk too long is refused in a sentence', async () => {
  const { first, fill } = await desksAt({ lockMs: 300 });
  const beside = openDesk({ dataFile: first.dataFile });
  await beside.beside('BEGIN');
  await beside.beside('LOCK TABLE stash_turn IN SHARE ROW EXCLUSIVE MODE');
  const outcome = await first.ask('writeOff', entry(fill.lotId));
  await beside.beside('ROLLBACK');
  expect(outcome.ok ? '' : problemSentence(outcome.problems[0]!)).toContain(
    'is being changed by other desks just now. Nothing was changed. Try again in a moment.',
  );
  await first.get('writeOff', entry(fill.lotId));
});
