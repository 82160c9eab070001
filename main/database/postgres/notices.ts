/**
 * The line over which a desk hears of the changes of others: one connection that listens, is looked after, and is made
 * anew when it is lost. It also holds the workshop open, so that nobody changes its tables meanwhile.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { setTimeout as sleep } from 'node:timers/promises';
import type { Client } from 'pg';
import { err, ok, type Problem, type Result } from '../../../shared-core/measure/problem.ts';
import type { Address } from './address.ts';
import { lineOf } from './connecting.ts';
import { holdOpen } from './founding.ts';

export const channel = 'bolt_and_baffle_change';

const firstPauseMs = 100;
const longestPauseMs = 2_000;
/** A line that says nothing may be dead: so often it is asked, and so long it may take to answer. */
const askMs = 15_000;
const answerMs = 5_000;

export interface Notices {
  /** Gives what ends it. */
  onChange(listener: () => void): () => void;
  close(): Promise<void>;
}

export interface NoticeOptions {
  readonly address: Address;
  readonly waitMs: number;
  /** This desk's own mark: what it changed itself is no news. */
  readonly desk: string;
  /** Whether the tables are still those that this desk knows, asked when a lost line is there again. */
  readonly isStillOurs: () => Promise<boolean>;
}

/** Rejects where the server cannot be reached; refused where another desk is changing the tables. */
export async function openNotices(options: NoticeOptions): Promise<Result<Notices>> {
  const { address, waitMs, desk, isStillOurs } = options;
  const listeners = new Set<() => void>();
  let line: Client | null = null;
  let isClosed = false;
  let pause: NodeJS.Timeout | undefined;

  const tell = () => {
    for (const listener of listeners) listener();
  };

  async function connect(): Promise<boolean> {
    const client = lineOf(address, waitMs);
    const lost = () => {
      if (line !== client) return;
      line = null;
      if (!isClosed) again(firstPauseMs);
    };
    client.on('error', lost).on('end', lost);
    client.on('notification', ({ payload }) => {
      if (payload !== desk) tell();
    });
    await client.connect();
    const { rows } = await client.query<{ held: boolean }>(holdOpen);
    if (rows[0]?.held !== true || isClosed) {
      await client.end();
      return false;
    }
    await client.query(`listen ${channel}`);
    line = client;
    return true;
  }

  function again(afterMs: number): void {
    clearTimeout(pause);
    pause = setTimeout(async () => {
      const isBack = await connect()
        .then((held) => held && isStillOurs())
        .catch(() => false);
      if (isClosed) return;
      if (!isBack) again(Math.min(2 * afterMs, longestPauseMs));
      // What was changed meanwhile was told to nobody.
      else tell();
    }, afterMs);
    pause.unref();
  }

  const asking = setInterval(() => {
    const asked = line;
    if (asked === null) return;
    // Ended while a question is open, its socket is let go at once.
    const silent = setTimeout(() => void asked.end().catch(() => {}), answerMs);
    asked
      .query('select 1')
      .catch(() => {})
      .finally(() => clearTimeout(silent));
  }, askMs);
  asking.unref();

  for (const until = performance.now() + waitMs; !(await connect()); await sleep(firstPauseMs)) {
    if (performance.now() < until) continue;
    clearInterval(asking);
    return err(beingChanged(address.shown));
  }
  return ok({
    onChange(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    async close() {
      isClosed = true;
      clearInterval(asking);
      clearTimeout(pause);
      await line?.end().catch(() => {});
    },
  });
}

function beingChanged(shown: string): Problem {
  return {
    where: shown,
    what: say('notices.is-being-brought-up-to-a'),
    fix: say('notices.start-the-program-again-in-a'),
  };
}
