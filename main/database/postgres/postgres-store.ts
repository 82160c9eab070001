/**
 * A workshop that several desks share, on PostgreSQL. Each change is a serialisable transaction that first takes the
 * turn of the part it is about, so that desks seldom cross each other; where they do, the server refuses one, and it is
 * run again. Why so: docs/decisions/0006-several-desks.md.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { randomUUID } from 'node:crypto';
import { setTimeout as sleep } from 'node:timers/promises';
import { type Kysely, sql } from 'kysely';
import { err, ok, type Problem, type Result } from '../../../shared-core/measure/problem.ts';
import { refusalRollsBack } from '../rolled-back.ts';
import type { Schema } from '../schema/schema.ts';
import type { Queries, Store, Work, WriteOptions } from '../store.ts';
import { type Address, readAddress } from './address.ts';
import { lineOf, queriesOf } from './connecting.ts';
import { isConflict, isLost, serverProblem, UnknownOutcome } from './failing.ts';
import { bringUp, holdShut, lacksTriggers, lookAt } from './founding.ts';
import { sharedSchema } from './shared-migrations.ts';
import { channel, openNotices } from './notices.ts';

/** How often a change is run again after others crossed it, and how often after the connection went. */
const maxConflicts = 12;
const maxLosses = 2;
/** Kept steps are only asked for within seconds. */
const forgetAfter = '1 hour';

export interface SharedOptions {
  /** postgres://… */
  readonly address: string;
  /** How long to wait for the server. */
  readonly waitMs: number;
  /** How long a change waits for that of another desk; 20 s where nothing is said. */
  readonly lockMs?: number;
  /** Makes and changes nothing, not even the tables of an empty database. */
  readonly isReadOnly?: boolean;
  /** Told of each time that a change was run again. */
  readonly onAgain?: (why: 'conflict' | 'loss') => void;
}

export interface SharedStore extends Store {
  /** Outside any transaction; for what is done with the workshop as a whole. */
  readonly queries: Kysely<Schema>;
}

/** Makes the tables in an empty database, and brings older ones up. Refused where it cannot be had. */
export async function openSharedStore(options: SharedOptions): Promise<Result<SharedStore>> {
  const read = readAddress(options.address);
  if (!read.ok) return read;
  const address = read.value;
  const queries = queriesOf(address, options.waitMs, options.lockMs);
  let opened: Result<SharedStore> | null = null;
  try {
    opened = await openedOver(queries, address, options);
    return opened;
  } catch (error) {
    const problem = serverProblem(error, address.shown);
    if (problem === null) throw error;
    return err(problem);
  } finally {
    if (!opened?.ok) await queries.destroy();
  }
}

async function openedOver(
  queries: Kysely<Schema>,
  address: Address,
  { waitMs, isReadOnly = false, onAgain = () => {} }: SharedOptions,
): Promise<Result<SharedStore>> {
  const founded = await (isReadOnly
    ? foundForReading(queries, address)
    : foundedAs(queries, address, waitMs));
  if (!founded.ok) return founded;
  const lacking = await lacksTriggers(queries, address.shown);
  if (lacking) return err(lacking);
  const desk = randomUUID();
  const isStillOurs = async () => {
    const look = await lookAt(queries, address.shown);
    return look.ok && look.value === 'ready';
  };
  const listening = await openNotices({ address, waitMs, desk, isStillOurs });
  if (!listening.ok) return listening;
  const notices = listening.value;
  if (!isReadOnly)
    await sql`delete from kept_step where at < now() - ${sql.lit(forgetAfter)}::interval`.execute(queries);
  let isClosed = false;
  return ok({
    queries,
    name: address.shown,
    schemaVersion: () => sharedSchema,
    ready: async () => ok(null),
    told: () => [],
    read: (_, work) => readIn(queries, work),
    write: (how, work) => writeIn(queries, how, work, { desk, waitMs, onAgain }),
    onChangeElsewhere: notices.onChange,
    explain: async (error) => serverProblem(error, address.shown),
    async close() {
      if (isClosed) return;
      isClosed = true;
      await notices.close();
      await queries.destroy();
    },
  });
}

async function foundForReading(queries: Kysely<Schema>, { shown }: Address): Promise<Result<null>> {
  const looked = await lookAt(queries, shown);
  if (!looked.ok) return looked;
  if (looked.value === 'ready') return ok(null);
  return err(
    looked.value === 'empty'
      ? {
          where: shown,
          what: say('postgres-store.holds-no-workshop'),
          fix: say('postgres-store.check-the-last-part'),
        }
      : {
          where: shown,
          what: say('postgres-store.is-of-an-older-version'),
          fix: say('postgres-store.open-it-once'),
        },
  );
}

/** Brings the tables up where that is needed, alone. */
async function foundedAs(queries: Kysely<Schema>, address: Address, waitMs: number): Promise<Result<null>> {
  const looked = await lookAt(queries, address.shown);
  if (!looked.ok) return looked;
  if (looked.value === 'ready') return ok(null);
  const line = lineOf(address, waitMs);
  line.on('error', () => {});
  await line.connect();
  try {
    for (const until = performance.now() + waitMs; ; await sleep(100)) {
      const { rows } = await line.query<{ held: boolean }>(holdShut);
      if (rows[0]?.held === true) break;
      // Another desk may be making the tables just now.
      const again = await lookAt(queries, address.shown);
      if (!again.ok) return again;
      if (again.value === 'ready') return ok(null);
      if (performance.now() > until) return err(othersAreIn(address.shown));
    }
    // By itself Kysely would make its own tables beforehand: whoever looked then would see half a workshop.
    await queries.transaction().execute(bringUp);
    return ok(null);
  } finally {
    await line.end();
  }
}

function othersAreIn(shown: string): Problem {
  return {
    where: shown,
    what: say('postgres-store.was-written-by-an-older-version'),
    fix: say('postgres-store.close-the-program-at-every-desk'),
  };
}

/** One snapshot for the whole of it. What was lost on the way is read again. */
async function readIn<Value>(queries: Kysely<Schema>, work: Work<Value>): Promise<Result<Value>> {
  for (let losses = 0; ; losses++) {
    try {
      return await transact(work, (rolling) =>
        queries
          .transaction()
          .setIsolationLevel('repeatable read')
          .setAccessMode('read only')
          .execute(rolling),
      );
    } catch (error) {
      if (!isLost(error) || losses >= maxLosses) throw error;
    }
  }
}

interface Writing {
  readonly desk: string;
  readonly waitMs: number;
  readonly onAgain: (why: 'conflict' | 'loss') => void;
}

async function writeIn<Value>(
  queries: Kysely<Schema>,
  { locks }: WriteOptions,
  work: Work<Value>,
  { desk, waitMs, onAgain }: Writing,
): Promise<Result<Value>> {
  const turn = sql.table(`${locks}_turn`);
  for (let conflicts = 0, losses = 0; ; ) {
    const step = randomUUID();
    let kept: Result<Value> | null = null;
    try {
      return await transact(work, (rolling) =>
        queries
          .transaction()
          .setIsolationLevel('serializable')
          .execute(async (inside) => {
            // Before anything is read: the snapshot is then taken after the desk before has finished.
            await sql`lock table ${turn} in share row exclusive mode`.execute(inside);
            const outcome = await rolling(inside);
            // A kept lay is a convenience that nobody waits for, and they come every few seconds.
            const tell = locks === 'lays' ? sql`select` : sql`select pg_notify(${channel}, ${desk})`;
            await sql`with kept as (insert into kept_step (id) values (${step})) ${tell}`.execute(inside);
            kept = outcome;
            return outcome;
          }),
      );
    } catch (error) {
      if (isConflict(error) && ++conflicts <= maxConflicts) {
        onAgain('conflict');
        await sleep(Math.random() * 10 * 2 ** Math.min(conflicts, 6));
      } else if (isLost(error) && kept !== null) {
        // It may have been kept, and only the answer was lost.
        if (await wasKept(queries, turn, step, waitMs)) return kept;
        if (++losses > maxLosses) throw error;
        onAgain('loss');
      } else if (isLost(error) && ++losses <= maxLosses) {
        onAgain('loss');
      } else throw error;
    }
  }
}

/**
 * Whether a step was kept whose answer was lost. It waits for the turn first: a transaction that is still ending holds
 * it, so the answer is final. Throws an UnknownOutcome where the server does not come back in time.
 */
async function wasKept(
  queries: Kysely<Schema>,
  turn: ReturnType<typeof sql.table>,
  step: string,
  waitMs: number,
): Promise<boolean> {
  const until = performance.now() + waitMs;
  for (;;) {
    try {
      return await queries.transaction().execute(async (inside) => {
        await sql`lock table ${turn} in share row exclusive mode`.execute(inside);
        const { rows } = await sql`select from kept_step where id = ${step}`.execute(inside);
        return rows.length > 0;
      });
    } catch (error) {
      if (performance.now() > until)
        throw new UnknownOutcome('the answer to a commit was lost', { cause: error });
      await sleep(100);
    }
  }
}

/** As refusalRollsBack, but what the work threw is told rather than what the rolling back threw after it. */
async function transact<Value>(
  work: Work<Value>,
  run: (rolling: (queries: Queries) => Promise<Result<Value>>) => Promise<Result<Value>>,
): Promise<Result<Value>> {
  let first: unknown;
  try {
    return await refusalRollsBack(async (queries) => {
      try {
        return await work(queries);
      } catch (error) {
        first = error;
        throw error;
      }
    }, run);
  } catch (error) {
    throw first ?? error;
  }
}
