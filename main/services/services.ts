/**
 * The contract, served: one envelope in, one Outcome out. Each call runs in one transaction; what is refused or
 * fails is rolled back whole. The maker's own workshop and the demo are two files that never mix.
 */
import { resolve } from 'node:path';
import type { z } from 'zod';
import {
  type CallInput,
  type CallName,
  calls,
  envelope,
  type Workshop,
} from '../../shared-core/contract/contract.ts';
import { found, type Outcome, type Problem, refused } from '../../shared-core/measure/problem.ts';
import { bringBack } from '../database/bring-back.ts';
import { type Claim, claimFile } from '../database/claim.ts';
import { type OpenWorkshop, openWorkshop } from '../database/connection.ts';
import { databaseProblem } from '../database/failure.ts';
import { checkDataFile } from '../database/file-check.ts';
import { schemaVersion } from '../database/migrate.ts';
import { readWorkshop } from '../database/reading.ts';
import { backUp, backUpAtStart, demoHasNone, isBackupDue, isEmpty, readBackups } from './backups.ts';
import { accountCalls } from './accounts.ts';
import type { CallContext } from './call.ts';
import { cutSheetCalls } from './cut-sheet.ts';
import { cuttingCalls } from './cutting.ts';
import { rebuildDemo } from './demo.ts';
import { flowInputCalls } from './flow-input.ts';
import { inputProblems } from './input-problems.ts';
import { layCalls } from './lays.ts';
import { offerCalls } from './offers.ts';
import { photoCalls } from './photos.ts';
import { planCalls } from './plans.ts';
import { priceListCalls } from './price-lists.ts';
import { seasonCalls } from './season.ts';
import { shoppingCalls } from './shopping.ts';
import { stashCalls } from './stash.ts';
import { supplierCalls } from './suppliers.ts';
import { stashFileCalls } from './stash-file.ts';
import { openTurns } from './turns.ts';
import { workshopCalls, workshopFacts } from './workshop.ts';

const usualWaitMs = 5000;

export interface ServiceOptions {
  readonly dataFile: string;
  readonly demoFile: string;
  /** The clock; the machine's own where none is given. */
  readonly now?: () => Date;
  /** How long a call waits for another program that holds the file. */
  readonly waitMs?: number;
  /** Told of a programmer's mistake, which the maker only hears of in general; console.error where none is given. */
  readonly log?: (error: unknown) => void;
  /** For a program that only reads, beside an open window or not: see database/reading.ts. Calls that change the file are refused. */
  readonly isReadOnly?: boolean;
}

export interface Services {
  /** Answers any value whatever; never rejects. */
  answer(envelope: unknown): Promise<Outcome<unknown>>;
  close(): void;
}

const onlyRead: Problem = {
  where: 'The workshop',
  what: 'is open for reading only',
  mend: 'Open it in the window to change it.',
};

/** These need the file as a whole rather than a transaction. */
const wholeFileCalls = ['openDemo', 'listBackups', 'backUp', 'bringBack'] as const;
type WholeFileCall = (typeof wholeFileCalls)[number];

const served = {
  ...workshopCalls,
  ...stashCalls,
  ...stashFileCalls,
  ...photoCalls,
  ...offerCalls,
  ...supplierCalls,
  ...priceListCalls,
  ...shoppingCalls,
  ...planCalls,
  ...flowInputCalls,
  ...layCalls,
  ...accountCalls,
  ...cutSheetCalls,
  ...cuttingCalls,
  ...seasonCalls,
} satisfies Record<Exclude<CallName, WholeFileCall>, unknown>;

/** Opens the maker's own file, or says why not. The demo's file is opened, or made, when it is first asked for. */
export function openServices(options: ServiceOptions): Outcome<Services> {
  const now = options.now ?? (() => new Date());
  const log = options.log ?? ((error: unknown) => console.error(error));
  const openFile = (file: string) => openWorkshop(file, { now, waitMs: options.waitMs ?? usualWaitMs });
  const opened = openOwn(options, openFile, now);
  if (!opened.ok) return opened;
  const { claim, backupProblem } = opened.value;
  let own: OpenWorkshop | null = opened.value.open;
  let demo: OpenWorkshop | undefined;
  let isClosed = false;
  const turns = openTurns();

  function openNamed(workshop: Workshop): Outcome<OpenWorkshop> {
    if (isClosed || (workshop === 'own' && own === null))
      return refused({ where: 'The workshop', what: 'is closed', mend: 'Start the program again.' });
    if (workshop === 'own') return found(own!);
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
      if (options.isReadOnly && workshop === 'own' && calls[call].changes) return refused(onlyRead);
      if (call === 'bringBack') return await turns.alone(() => answerBringBack(workshop, input.data));
      return await turns.together(async () => {
        const open = openNamed(workshop);
        if (!open.ok) return open;
        return isWholeFile(call)
          ? answerWhole(open.value, call, workshop)
          : serve(open.value, { call, workshop, input: input.data }, now);
      });
    } catch (error) {
      const known = databaseProblem(error, file);
      if (known) return refused(known);
      log(error);
      const mend = 'Nothing was changed. Try it again; if it fails again, what the program printed says why.';
      return refused({ where: 'This step', what: 'could not be done', mend });
    }
  }

  async function answerWhole(
    open: OpenWorkshop,
    call: Exclude<WholeFileCall, 'bringBack'>,
    workshop: Workshop,
  ): Promise<Outcome<unknown>> {
    if (call === 'openDemo') return openDemo(open, workshop, now);
    if (workshop === 'demo') return demoHasNone;
    // Holding the connection keeps every other call of this program waiting meanwhile.
    return open.queries
      .connection()
      .execute(async () =>
        call === 'backUp' ? backUp(open, now()) : found(readBackups(open.file, backupProblem)),
      );
  }

  /** No other call is under way meanwhile. */
  async function answerBringBack(workshop: Workshop, input: unknown): Promise<Outcome<unknown>> {
    const open = openNamed(workshop);
    if (!open.ok) return open;
    if (workshop === 'demo') return demoHasNone;
    const { name } = input as CallInput<'bringBack'>;
    const brought = bringBack(open.value, name, now, openFile);
    own = brought.open;
    if (own === null || brought.problems.length > 0) return refused(...brought.problems);
    const current = own;
    return current.queries
      .connection()
      .execute((queries) => workshopFacts(contextOf(current, workshop, queries, now)));
  }

  return found({
    answer,
    close() {
      if (isClosed) return;
      isClosed = true;
      own?.close();
      demo?.close();
      claim?.release();
    },
  });
}

interface OpenedOwn {
  readonly open: OpenWorkshop;
  readonly claim: Claim | null;
  /** Why the backup at the start could not be made. */
  readonly backupProblem: Problem | null;
}

/** Looks at the file, claims it, opens it and takes the backup that is due, in this order. */
function openOwn(
  options: ServiceOptions,
  openFile: (file: string) => Outcome<OpenWorkshop>,
  now: () => Date,
): Outcome<OpenedOwn> {
  const file = resolve(options.dataFile);
  if (options.isReadOnly) {
    const opened = readWorkshop(file, options.waitMs ?? usualWaitMs);
    return opened.ok ? found({ open: opened.value, claim: null, backupProblem: null }) : opened;
  }
  // A file that is refused gets nothing beside it.
  const looked = checkDataFile(file);
  if (!looked.ok) return looked;
  const claim = claimFile(file, now);
  if (!claim.ok) return claim;
  const isDue = isBackupDue(file);
  try {
    const opened = openFile(file);
    if (!opened.ok) {
      claim.value.release();
      return opened;
    }
    const backupProblem = backUpAtStart(opened.value, isDue, now());
    return found({ open: opened.value, claim: claim.value, backupProblem });
  } catch (error) {
    claim.value.release();
    throw error;
  }
}

function isWholeFile(call: CallName): call is WholeFileCall {
  return (wholeFileCalls as readonly CallName[]).includes(call);
}

interface ReadCall {
  readonly call: Exclude<CallName, WholeFileCall>;
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
