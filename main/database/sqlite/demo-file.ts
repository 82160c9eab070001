/**
 * The demo's own file, claimed and opened when it is first asked for. It bears a mark in its header, and a file without
 * it is never touched: the name may be that of a workshop which somebody works in.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { readFileSync } from 'node:fs';
import SqliteDatabase from 'better-sqlite3';
import { demoWorkshop } from '../../../shared-core/demo/demo-workshop.ts';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import { databaseProblem } from '../failures/failure.ts';
import type { Claim } from '../file/claim.ts';
import type { OpenOptions, OpenWorkshop } from '../file/connection.ts';
import { checkDataFile, isMarkedDemo, realFile } from '../file/file-check.ts';
import { openClaimed } from '../file/opening.ts';
import { withoutLog } from '../file/reading.ts';
import { demoApplicationId, schemaVersion } from '../schema/migrate.ts';
import type { DemoStore } from '../store.ts';
import { transactions } from './beside.ts';
import { rebuildDemo } from './demo-rows.ts';
import { isEmpty } from './file-store.ts';

/** The demo as a store; nothing is touched before it is asked whether it is ready. */
export function demoFileStore(demoFile: string, options: Omit<OpenOptions, 'isDemo'>): DemoStore {
  const { read, write } = transactions();
  let demo: OpenDemo | null = null;
  function inUse(): OpenWorkshop {
    if (demo === null) throw new Error('the demo is not open');
    return demo.open;
  }
  return {
    name: demoFile,
    schemaVersion: () => schemaVersion(inUse().connection),
    async ready() {
      if (demo !== null) return ok(null);
      const opened = openDemoFile(demoFile, options);
      if (!opened.ok) return opened;
      demo = opened.value;
      return ok(null);
    },
    told: () => [],
    read: (how, work) => read(inUse(), how, work),
    write: (how, work) => write(inUse(), how, work),
    onChangeElsewhere: () => () => {},
    explain: async (error) => databaseProblem(error, demoFile),
    // Holding the connection keeps every other call of this program waiting meanwhile.
    makeAnew: () =>
      inUse()
        .queries.connection()
        .execute(async () => {
          inUse().checkInPlace();
          rebuildDemo(inUse().connection, options.now);
        }),
    async close() {
      demo?.open.close();
      demo?.claim.release();
    },
  };
}

interface OpenDemo {
  readonly open: OpenWorkshop;
  readonly claim: Claim;
}

/** Makes the demo where there is none. Refused where the file is not a demo's, or is open elsewhere. */
function openDemoFile(demoFile: string, options: Omit<OpenOptions, 'isDemo'>): Result<OpenDemo> {
  const real = realFile(demoFile);
  if (!real.ok) return real;
  const file = real.value;
  const looked = checkDataFile(file, 'to be a demo');
  if (!looked.ok) return looked;
  const isMarked = looked.value === 'to be made' || isMarkedDemo(file);
  if (!isMarked && !isEarlierDemo(file)) {
    return err({
      where: file,
      what: say('demo-file.is-not-a-demo-and-the'),
      fix: say('demo-file.give-that-file-another-name-or'),
    });
  }
  const claimed = openClaimed(file, { ...options, isDemo: true });
  if (!claimed.ok) return claimed;
  const { claim, opened } = claimed.value;
  if (!opened.ok) {
    claim.release();
    return opened;
  }
  const open = opened.value;
  try {
    if (!isMarked) open.connection.pragma(`application_id = ${demoApplicationId}`);
    // A file that was made a moment ago holds no item yet.
    if (isEmpty(open)) rebuildDemo(open.connection, options.now);
  } catch (error) {
    open.close();
    claim.release();
    throw error;
  }
  return ok({ open, claim });
}

/** Demos of earlier versions bore no mark. They have the demo's name and its coat, which nothing else can bring in. */
function isEarlierDemo(file: string): boolean {
  const { workshop, plans } = demoWorkshop();
  try {
    const database = new SqliteDatabase(withoutLog(readFileSync(file)), { readonly: true });
    try {
      const name = database.prepare('SELECT name FROM workshop').pluck().get();
      const plan = database.prepare('SELECT id FROM plan WHERE id = ?').get(plans[0]!.id);
      return name === workshop.name && plan !== undefined;
    } finally {
      database.close();
    }
  } catch {
    return false;
  }
}
