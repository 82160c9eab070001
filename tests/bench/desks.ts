/**
 * npm run -s bench:desks -- --json [--desks 8] [--seconds 20] [--kills 10] [--seed 1]: desks at one workshop of 5,000
 * items and 200,000 movements, each in a thread of its own with the real services, on a server that this starts and
 * ends. First the server is left alone, then it is killed and started again while they go on working. What a desk was
 * told to be kept must be there once, what it was told not to be must not be there. Ends with 1 where that fails.
 */
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { parseArgs } from 'node:util';
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads';
import { wrongBalances } from '../../main/database/carry/proof.ts';
import { openWorkshop } from '../../main/database/file/connection.ts';
import { moveWorkshop } from '../../main/database/move.ts';
import { readAddress } from '../../main/database/postgres/address.ts';
import { queriesOf } from '../../main/database/postgres/connecting.ts';
import { openServicesAt } from '../../main/services/calls/services.ts';
import { fillLargeStash, largeStash, seeded } from '../fixtures/large-stash.ts';
import { besideDatabase } from '../main/beside.ts';
import { noServer, startServer, type TempServer } from '../main/postgres/temp-server.ts';

interface Place {
  readonly lotId: string;
  readonly lengthId: string | null;
}

interface Order {
  readonly address: string;
  readonly desk: number;
  readonly seed: number;
  readonly seconds: number;
  readonly places: readonly Place[];
  readonly planId: string;
}

/** What a desk did and was told; times in ms, of the calls that were answered. */
interface Report {
  readonly reads: readonly number[];
  readonly writes: readonly number[];
  /** Reasons under which entries were said to be kept, said not to be, and of which neither could be said. */
  readonly kept: readonly string[];
  readonly notKept: readonly string[];
  readonly unknown: readonly string[];
  /** Sentences by how often they were told, without what differs from one to the next. */
  readonly told: Readonly<Record<string, number>>;
  readonly again: { readonly conflict: number; readonly loss: number };
  readonly mistakes: readonly string[];
}

/** One call in so many writes, as at a table where people look more than they book. */
const writesOfTen = 3;
const waitMs = 5000;

async function work({ address, desk, seed, seconds, places, planId }: Order): Promise<Report> {
  const random = seeded(seed * 1000 + desk);
  const pick = <Value>(values: readonly Value[]) => values[Math.floor(random() * values.length)]!;
  const folder = mkdtempSync(join(tmpdir(), 'bolt-desk-'));
  const again = { conflict: 0, loss: 0 };
  const mistakes: string[] = [];
  const opened = await openServicesAt({
    dataFile: address,
    demoFile: join(folder, 'demo.sqlite'),
    localFile: join(folder, 'desk.sqlite'),
    waitMs,
    onAgain: (why) => void again[why]++,
    log: (error) => void mistakes.push(String(error)),
  });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const [reads, writes]: [number[], number[]] = [[], []];
  const [kept, notKept, unknown]: [string[], string[], string[]] = [[], [], []];
  const told: Record<string, number> = {};
  const page = { search: '', kinds: [], sortBy: 'name', isDescending: false, limit: 100 };

  const readings = [
    () => ['listItems', { ...page, offset: Math.floor(random() * 4900) }],
    () => ['listItems', { ...page, offset: 0, search: pick(['peatwater', 'tarn ost', 'd4', 'moss lawn']) }],
    () => ['readItem', { itemId: `item-${Math.floor(random() * largeStash.itemCount)}` }],
    () => ['workshopFacts', {}],
    () => ['flowInput', { planId }],
  ] as const;
  const writings = [
    (reason: string) => ['writeOff', { ...pick(places), amount: 1, reason }],
    (reason: string) => [
      'correctCount',
      { ...pick(places), counted: 20_000 + Math.floor(random() * 500), reason },
    ],
    () => ['setAside', { planId, uses: [{ ...pick(places), amount: 1 + Math.floor(random() * 900) }] }],
    () => ['setAside', { planId, uses: [] }],
  ] as const;

  parentPort?.postMessage('ready');
  await once(parentPort!, 'message');
  const until = performance.now() + seconds * 1000;
  for (let at = 0; performance.now() < until; at++) {
    const isWriting = random() * 10 < writesOfTen;
    const reason = `desk ${desk} entry ${at} of ${seed}`;
    const [call, input] = isWriting ? pick(writings)(reason) : pick(readings)();
    const begun = performance.now();
    const outcome = await opened.value.answer({ call, workshop: 'own', input });
    // A refusal is quick, and would flatter the figures.
    if (outcome.ok) (isWriting ? writes : reads).push(performance.now() - begun);
    const what = outcome.ok ? '' : outcome.problems[0]!.what;
    if (!outcome.ok) told[spoken(what)] = (told[spoken(what)] ?? 0) + 1;
    if (!isWriting || !JSON.stringify(input).includes(reason)) continue;
    // A count that finds what is booked books nothing: it is kept without an entry.
    if (/was lost just as/.test(what)) unknown.push(reason);
    else if (!outcome.ok) notKept.push(reason);
    else if (call === 'writeOff') kept.push(reason);
    // Who is told that nothing can be reached tries again after a moment, as people do.
    if (/cannot be reached/.test(what)) await sleep(200);
  }
  await opened.value.close();
  rmSync(folder, { recursive: true, force: true });
  return { reads, writes, kept, notKept, unknown, told, again, mistakes };
}

/** Amounts differ from sentence to sentence. */
function spoken(what: string): string {
  return what.replace(/[\d.,]+ ?\w*/g, '…').slice(0, 80);
}

/** All desks are open before the first of them begins. meanwhile: what is done to them while they work. */
async function atDesks(orders: readonly Order[], meanwhile: () => Promise<void>): Promise<Report[]> {
  const workers = orders.map((order) => new Worker(new URL(import.meta.url), { workerData: order }));
  await Promise.all(workers.map((worker) => once(worker, 'message')));
  const reports = workers.map(async (worker) => (await once(worker, 'message'))[0] as Report);
  for (const worker of workers) worker.postMessage('go');
  await meanwhile();
  return Promise.all(reports);
}

/** A large workshop in a database of the server, and one plan for each desk. */
async function largeWorkshop(server: TempServer, deskCount: number, folder: string) {
  const file = join(folder, 'large.sqlite');
  const made = openWorkshop(file, { now: () => new Date() });
  if (!made.ok) throw new Error(made.problems[0]?.what);
  fillLargeStash(made.value.connection, largeStash);
  const { connection } = made.value;
  const planIds = Array.from({ length: deskCount }, (_, desk) => `plan-${desk}`);
  for (const id of planIds) {
    const plan = { id, name: id, size: '42', coatCount: 1, slots: [], pieces: [], seams: [], quilting: null };
    connection.prepare('INSERT INTO plan VALUES (?, ?, ?, 1, 1, ?)').run(id, id, '42', '2026-01-01');
    connection
      .prepare("INSERT INTO plan_revision VALUES (?, 1, ?, '', '2026-01-01', NULL)")
      .run(id, JSON.stringify(plan));
  }
  // Few places for many hands, so that desks meet: those with the most on them.
  const places = connection
    .prepare(
      `SELECT lot_id AS lotId, length_id AS lengthId FROM length_balance JOIN length ON length.id = length_id
       JOIN lot ON lot.id = lot_id JOIN item ON item.id = item_id WHERE item.kind = 'cloth'
       ORDER BY length_balance.on_hand_milli - length_balance.reserved_milli DESC LIMIT 40`,
    )
    .all() as Place[];
  made.value.close();
  const address = server.address(await server.createDatabase());
  const begun = performance.now();
  const moved = await moveWorkshop({ from: file, to: address, now: () => new Date(), waitMs });
  if (!moved.ok) throw new Error(JSON.stringify(moved.problems));
  return { address, planIds, places, moveSeconds: (performance.now() - begun) / 1000 };
}

/** How many reasons do not stand in the ledger as often as they should. */
async function faults(address: string, reports: readonly Report[]) {
  const beside = besideDatabase(address);
  const rows = await beside.ask(
    "SELECT reason, count(*) AS count FROM movement WHERE reason LIKE 'desk %' GROUP BY reason",
  );
  await beside.close();
  const counts = new Map(rows.map(({ reason, count }) => [String(reason), Number(count)]));
  const kept = reports.flatMap((report) => report.kept);
  const notKept = reports.flatMap((report) => report.notKept);
  const unknown = reports.flatMap((report) => report.unknown);
  const read = readAddress(address);
  if (!read.ok) throw new Error('no address');
  const queries = queriesOf(read.value, waitMs);
  const contradictions = await wrongBalances(queries);
  await queries.destroy();
  return {
    lost: kept.filter((reason) => !counts.has(reason)).length,
    twice: [...counts.values()].filter((count) => count > 1).length,
    keptThoughRefused: notKept.filter((reason) => counts.has(reason)).length,
    unknown: unknown.length,
    contradictions: contradictions.length,
  };
}

function percentile(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return Number((sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? 0).toFixed(1));
}

function summary(reports: readonly Report[], seconds: number) {
  const [reads, writes] = [reports.flatMap((each) => each.reads), reports.flatMap((each) => each.writes)];
  const all = [...reads, ...writes];
  const told: Record<string, number> = {};
  for (const [what, times] of reports.flatMap((each) => Object.entries(each.told))) {
    told[what] = (told[what] ?? 0) + times;
  }
  return {
    calls: all.length,
    callsPerSecond: Number((all.length / seconds).toFixed(1)),
    medianMs: percentile(all, 0.5),
    p99Ms: percentile(all, 0.99),
    reads: { calls: reads.length, medianMs: percentile(reads, 0.5), p99Ms: percentile(reads, 0.99) },
    writes: { calls: writes.length, medianMs: percentile(writes, 0.5), p99Ms: percentile(writes, 0.99) },
    conflictsRetried: reports.reduce((sum, { again }) => sum + again.conflict, 0),
    lossesRetried: reports.reduce((sum, { again }) => sum + again.loss, 0),
    mistakes: reports.flatMap(({ mistakes }) => mistakes),
    told,
  };
}

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      json: { type: 'boolean', default: false },
      desks: { type: 'string', default: '8' },
      seconds: { type: 'string', default: '20' },
      kills: { type: 'string', default: '10' },
      seed: { type: 'string', default: '1' },
    },
  });
  const [desks, seconds, kills, seed] = [values.desks, values.seconds, values.kills, values.seed].map(
    Number,
  ) as [number, number, number, number];
  const loadBefore = Number((loadavg()[1] ?? 0).toFixed(1));
  const server = await startServer({ isDurable: true });
  if (server === null) {
    console.error(noServer);
    process.exitCode = 2;
    return;
  }
  const folder = mkdtempSync(join(tmpdir(), 'bolt-desks-'));
  try {
    const { address, planIds, places, moveSeconds } = await largeWorkshop(server, desks, folder);
    console.error(`carried into the database in ${moveSeconds.toFixed(1)} s`);
    const orders = (run: number, forSeconds: number) =>
      planIds.map((planId, desk) => ({
        address,
        desk,
        seed: seed + run,
        seconds: forSeconds,
        places,
        planId,
      }));
    const calm = await atDesks(orders(0, seconds), async () => {});
    const calmFaults = await faults(address, calm);
    console.error(`${summary(calm, seconds).calls} calls at a server that runs on`);
    const killSeconds = Math.max(seconds, kills * 4);
    const shaken = await atDesks(orders(1, killSeconds), async () => {
      for (let kill = 0; kill < kills; kill++) {
        await sleep((killSeconds * 800) / kills);
        await server.kill(kill % 2 === 0 ? 'SIGKILL' : 'SIGQUIT');
        await server.startAgain();
      }
    });
    const shakenFaults = await faults(address, [...calm, ...shaken]);
    const result = {
      desks,
      items: largeStash.itemCount,
      movements: largeStash.movementCount,
      cores: availableParallelism(),
      // Of the machine before it began, over 5 minutes: what else ran on it took its share.
      loadBefore,
      moveSeconds: Number(moveSeconds.toFixed(1)),
      calm: { seconds, ...summary(calm, seconds), ...calmFaults },
      killed: { kills, seconds: killSeconds, ...summary(shaken, killSeconds), ...shakenFaults },
    };
    console.log(JSON.stringify(result, null, values.json ? 0 : 2));
    const isWrong = [calmFaults, shakenFaults].some(
      (each) => each.lost + each.twice + each.keptThoughRefused + each.contradictions > 0,
    );
    process.exitCode = isWrong || [...calm, ...shaken].some(({ mistakes }) => mistakes.length > 0) ? 1 : 0;
  } finally {
    await server.end();
    rmSync(folder, { recursive: true, force: true });
  }
}

if (isMainThread) await main();
else parentPort?.postMessage(await work(workerData as Order));
