/**
 * The contract, served: one envelope in, one Outcome out. Each call runs in one transaction; what is refused or
 * fails is rolled back whole. The maker's own workshop and the demo are two files that never mix.
 */
import type { z } from 'zod';
import { type CallName, calls, envelope, type Workshop } from '../../shared-core/contract/contract.ts';
import { found, type Outcome, refused } from '../../shared-core/measure/problem.ts';
import { type OpenWorkshop, openWorkshop } from '../database/connection.ts';
import { databaseProblem } from '../database/failure.ts';
import { schemaVersion } from '../database/migrate.ts';
import type { CallContext } from './call.ts';
import { rebuildDemo } from './demo.ts';
import { flowInputCalls } from './flow-input.ts';
import { inputProblems } from './input-problems.ts';
import { layCalls } from './lays.ts';
import { offerCalls } from './offers.ts';
import { planCalls } from './plans.ts';
import { stashCalls } from './stash.ts';
import { workshopCalls, workshopFacts } from './workshop.ts';

export interface ServiceOptions {
  readonly dataFile: string;
  readonly demoFile: string;
  /** The clock; the machine's own where none is given. */
  readonly now?: () => Date;
  /** How long a call waits for another program that holds the file. */
  readonly waitMs?: number;
  /** Told of a programmer's mistake, which the maker only hears of in general; console.error where none is given. */
  readonly log?: (error: unknown) => void;
}

export interface Services {
  /** Answers any value whatever; never rejects. */
  answer(envelope: unknown): Promise<Outcome<unknown>>;
  close(): void;
}

const served = {
  ...workshopCalls,
  ...stashCalls,
  ...offerCalls,
  ...planCalls,
  ...flowInputCalls,
  ...layCalls,
} satisfies Record<Exclude<CallName, 'openDemo'>, unknown>;

/** Opens the maker's own file, or says why not. The demo's file is opened, or made, when it is first asked for. */
export function openServices(options: ServiceOptions): Outcome<Services> {
  const now = options.now ?? (() => new Date());
  const log = options.log ?? ((error: unknown) => console.error(error));
  const openFile = (file: string) => openWorkshop(file, { now, waitMs: options.waitMs ?? 5000 });
  const own = openFile(options.dataFile);
  if (!own.ok) return own;
  let demo: OpenWorkshop | undefined;
  let isClosed = false;

  function openNamed(workshop: Workshop): Outcome<OpenWorkshop> {
    if (isClosed)
      return refused({ where: 'The workshop', what: 'is closed', mend: 'Start the program again.' });
    if (workshop === 'own') return own;
    if (demo) return found(demo);
    const opened = openFile(options.demoFile);
    if (!opened.ok) return opened;
    demo = opened.value;
    // A file that was made a moment ago holds no item yet.
    if (isEmpty(demo)) rebuildDemo(demo.connection, now);
    return opened;
  }

  async function answer(given: unknown): Promise<Outcome<unknown>> {
    let file = options.dataFile;
    try {
      const read = envelope.safeParse(given, { reportInput: true });
      if (!read.success) return refused(...inputProblems(read.error, given));
      const { call, workshop } = read.data;
      if (workshop === 'demo') file = options.demoFile;
      const input = (calls[call].input as z.ZodType).safeParse(read.data.input, { reportInput: true });
      if (!input.success) return refused(...inputProblems(input.error, read.data.input));
      const open = openNamed(workshop);
      if (!open.ok) return open;
      if (call === 'openDemo') return await openDemo(open.value, workshop, now);
      return await serve(open.value, { call, workshop, input: input.data }, now);
    } catch (error) {
      const known = databaseProblem(error, file);
      if (known) return refused(known);
      log(error);
      const mend = 'Nothing was changed. Try it again; if it fails again, what the program printed says why.';
      return refused({ where: 'This step', what: 'could not be done', mend });
    }
  }

  return found({
    answer,
    close() {
      if (isClosed) return;
      isClosed = true;
      own.value.close();
      demo?.close();
    },
  });
}

function isEmpty(open: OpenWorkshop): boolean {
  return (
    open.connection
      .prepare('SELECT NOT EXISTS (SELECT 1 FROM item) AND NOT EXISTS (SELECT 1 FROM plan)')
      .pluck()
      .get() === 1
  );
}

interface ReadCall {
  readonly call: Exclude<CallName, 'openDemo'>;
  readonly workshop: Workshop;
  /** As the call's own schema gave it. */
  readonly input: unknown;
}

/** Carries a refusal out of the transaction, so that it is rolled back. */
class RolledBack extends Error {
  readonly outcome: Outcome<never>;
  constructor(outcome: Outcome<never>) {
    super('rolled back');
    this.outcome = outcome;
  }
}

async function serve(
  open: OpenWorkshop,
  { call, workshop, input }: ReadCall,
  now: () => Date,
): Promise<Outcome<unknown>> {
  const run = served[call] as (context: CallContext, input: unknown) => Promise<Outcome<unknown>>;
  const accessMode = calls[call].changes ? 'read write' : 'read only';
  try {
    return await open.queries
      .transaction()
      .setAccessMode(accessMode)
      .execute(async (queries) => {
        const outcome = await run(contextOf(open, workshop, queries, now), input);
        if (!outcome.ok) throw new RolledBack(outcome);
        return outcome;
      });
  } catch (error) {
    if (error instanceof RolledBack) return error.outcome;
    throw error;
  }
}

async function openDemo(open: OpenWorkshop, workshop: Workshop, now: () => Date): Promise<Outcome<unknown>> {
  if (workshop !== 'demo') {
    return refused({
      where: 'The demo',
      what: 'is a workshop of its own',
      mend: 'Open the demo workshop for it.',
    });
  }
  // Holding the connection keeps every other call of this program waiting meanwhile.
  return open.queries.connection().execute(async (queries) => {
    rebuildDemo(open.connection, now);
    return workshopFacts(contextOf(open, workshop, queries, now));
  });
}

function contextOf(
  open: OpenWorkshop,
  workshop: Workshop,
  queries: CallContext['queries'],
  now: () => Date,
): CallContext {
  return { queries, workshop, dataFile: open.file, schemaVersion: schemaVersion(open.connection), now };
}
