/**
 * The contract, served: one envelope in, one Result out. The maker's own workshop and the demo are two files that
 * never mix.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { saidNow, speakingFor } from './speaking.ts';
import type { z } from 'zod';
import {
  type Backups,
  type CallInput,
  calls,
  type Workshop,
  type WorkshopFacts,
} from '../../../shared-core/contract/contract.ts';
import { envelope } from '../../../shared-core/contract/envelope.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { appendToFailureLog, failureLogFile, readFailureLog } from '../../database/failures/failure-log.ts';
import type { ChosenAddress } from '../../database/chosen-address.ts';
import { demoStore, openFileStore, openStore } from '../../database/open-store.ts';
import type { OwnStore, Store } from '../../database/store.ts';
import { failureEntry, keepLongStacks, noteEntry, windowFailureEntry } from '../workshop/failure-entry.ts';
import { inputProblems } from './input-problems.ts';
import { sizeProblem } from './input-size.ts';
import { noNewsHere, programFacts, type RunningProgram, unnamedProgram } from '../workshop/program.ts';
import { askForNews } from '../workshop/release-news.ts';
import { releaseSource, type ReleaseSource } from '../workshop/release-source.ts';
import { contextOf, serve, type Serving } from './served.ts';
import { openTurns } from './turns.ts';
import { shareWorkshop, sharingNow } from '../workshop/sharing.ts';
import { workshopFacts } from '../workshop/workshop.ts';

const defaultWaitMs = 5000;

export interface ServiceOptions {
  /** A file, or the address of a database. */
  readonly dataFile: string;
  readonly demoFile: string;
  /** Absolute; for a database alone: names what this desk keeps of its own, the log and the backups. */
  readonly localFile?: string;
  /** The clock; the machine's own where none is given. */
  readonly now?: () => Date;
  /** How long a call waits for another program that holds the file. */
  readonly waitMs?: number;
  /** Of a database: how long a change waits for that of another desk; 20 s where nothing is said. */
  readonly lockMs?: number;
  /** Told whole of a programmer's mistake, of which the log has only the place; console.error where none is given. */
  readonly log?: (error: unknown) => void;
  /** For a program that only reads, beside an open window or not: see database/file/reading.ts. Calls that change the file are refused. */
  readonly isReadOnly?: boolean;
  /** Told each time that a change was made again, since another desk crossed it or the connection went. */
  readonly onAgain?: (why: 'conflict' | 'loss') => void;
  /** Of a database: opens the services also where it cannot be had now; each call tries again. */
  readonly mayOpenLater?: boolean;
  /** Where the program remembers a shared workshop that is chosen; absent: nowhere. */
  readonly chosen?: ChosenAddress;
  /** What runs; unnamed where none is given. */
  readonly program?: RunningProgram;
  /** Where news of later versions is asked for; as built in where none is given. */
  readonly releaseSource?: ReleaseSource | null;
}

export interface Services {
  /** Answers any value whatever; never rejects. */
  answer(envelope: unknown): Promise<Result<unknown>>;
  /** Writes a failure of a door's own into the log. step: a word or two of the program's, nothing from outside. */
  noteFailure(step: string, error: unknown): void;
  /** See database/store.ts: of the maker's own workshop. Gives what ends it. */
  onChangeElsewhere(listener: () => void): () => void;
  /** A file is closed once this returns; a database once it resolves. */
  close(): Promise<void>;
}

const onlyRead: Problem = {
  get where() {
    return say('services.the-workshop');
  },
  get what() {
    return say('services.is-open-for-reading-only');
  },
  get fix() {
    return say('services.open-it-in-the-window-to');
  },
};

/** Opens the maker's own file, or says why not. The demo's file is opened, or made, when it is first asked for. */
export function openServices(options: ServiceOptions): Result<Services> {
  const notes = notesBefore(options);
  const opened = openFileStore(storeOptions(options, notes.note));
  return opened.ok ? ok(servicesOver(opened.value, options, notes)) : opened;
}

/** As above, for a file or for the address of a database that several desks share. */
export async function openServicesAt(options: ServiceOptions): Promise<Result<Services>> {
  const notes = notesBefore(options);
  const opened = await openStore(storeOptions(options, notes.note));
  return opened.ok ? ok(servicesOver(opened.value, options, notes)) : opened;
}

function storeOptions(options: ServiceOptions, note: (what: string, error?: unknown) => void) {
  return {
    dataFile: options.dataFile,
    localFile: options.localFile ?? options.demoFile,
    now: options.now ?? (() => new Date()),
    waitMs: options.waitMs ?? defaultWaitMs,
    isReadOnly: options.isReadOnly ?? false,
    mayOpenLater: options.mayOpenLater ?? false,
    ...(options.lockMs !== undefined && { lockMs: options.lockMs }),
    ...(options.onAgain && { onAgain: options.onAgain }),
    note,
  };
}

/** What is to be noted of the store while its log is not known yet, and now and then after it. */
interface Notes {
  note(what: string, error?: unknown): void;
  /** All that came since the last time. */
  take(): readonly string[];
}

function notesBefore({ now = () => new Date() }: ServiceOptions): Notes {
  const noted: string[] = [];
  return {
    note: (what, error) =>
      void noted.push(
        error === undefined ? noteEntry(now(), what) : failureEntry({ at: now(), step: what, error }),
      ),
    take: () => noted.splice(0),
  };
}

function servicesOver(own: OwnStore, options: ServiceOptions, notes: Notes): Services {
  const { now, waitMs, isReadOnly } = storeOptions(options, notes.note);
  const tellWhole = options.log ?? ((error: unknown) => console.error(error));
  keepLongStacks();
  const demo = demoStore(options.demoFile, { now, waitMs });
  const log = failureLogFile(own.file);
  const chosen = options.chosen ?? null;
  const program = options.program ?? unnamedProgram;
  const source = options.releaseSource === undefined ? releaseSource : options.releaseSource;
  let isClosed = false;
  const turns = openTurns();
  writeNotes();

  /** A program that only reads makes nothing beside the file. */
  function write(entry: string): void {
    if (!isReadOnly) appendToFailureLog(own.file, entry);
  }

  function writeNotes(): void {
    for (const entry of notes.take()) write(entry);
  }

  function noteFailure(step: string, error: unknown): void {
    write(failureEntry({ at: now(), step, error }));
  }

  async function answer(given: unknown): Promise<Result<unknown>> {
    let store: Store = own;
    let step = 'a call';
    try {
      const tooMuch = sizeProblem(given);
      if (tooMuch) return err(tooMuch);
      const read = envelope.safeParse(given, { reportInput: true });
      if (!read.success) return err(...inputProblems(read.error, given));
      const { call, workshop } = read.data;
      step = call;
      if (workshop === 'demo') store = demo;
      const input = (calls[call].input as z.ZodType).safeParse(read.data.input, { reportInput: true });
      if (!input.success) return err(...inputProblems(input.error, read.data.input));
      if (isReadOnly && workshop === 'own' && calls[call].changes) return err(onlyRead);
      if (call === 'restoreBackup') return await turns.alone(() => restoreBackup(workshop, input.data));
      return await turns.together(() => answerOne(call, workshop, input.data));
    } catch (error) {
      noteFailure(step, error);
      const known = await store.explain(error);
      if (known) return err(known);
      tellWhole(error);
      return err(couldNotBeDone(step, isReadOnly ? null : log));
    } finally {
      writeNotes();
    }
  }

  async function answerOne(
    call: Exclude<keyof typeof calls, 'restoreBackup'>,
    workshop: Workshop,
    input: unknown,
  ): Promise<Result<unknown>> {
    if (call === 'readFailureLog') return ok({ file: log, text: readFailureLog(own.file) });
    if (call === 'programFacts') return ok(programFacts(program, own.file, source));
    if (call === 'askForNews') return source === null ? err(noNewsHere) : askForNews(source, program.version);
    if (call === 'readSharing') return ok(sharingNow(chosen, own.name));
    if (call === 'shareWorkshop') {
      const trying = storeOptions(options, notes.note);
      const shared = await shareWorkshop(chosen, input as CallInput<'shareWorkshop'>, trying);
      return shared.ok ? ok(sharingNow(chosen, own.name)) : shared;
    }
    if (call === 'noteWindowFailure') {
      const { place, kind, stack } = input as CallInput<'noteWindowFailure'>;
      write(windowFailureEntry(now(), place, kind, stack));
      return ok({ file: log });
    }
    const isAboutBackups = call === 'listBackups' || call === 'backUp';
    if (isAboutBackups && workshop === 'demo') return demoHasNone;
    // The list is there for a file that cannot be opened, too.
    if (call === 'listBackups') return ok(own.backups());
    if (isClosed)
      return err({
        where: say('services.the-workshop'),
        what: say('services.is-closed'),
        fix: say('services.start-the-program-again'),
      });
    const store = workshop === 'own' ? own : demo;
    const ready = await store.ready();
    if (!ready.ok) return ready;
    if (call === 'backUp') return backUp();
    if (call === 'openDemo') return openDemo(workshop);
    return serve(store, call, input, { workshop, now });
  }

  async function backUp(): Promise<Result<Backups>> {
    const made = await own.backup();
    return made.ok ? ok({ ...own.backups(), lastProblem: null }) : made;
  }

  async function openDemo(workshop: Workshop): Promise<Result<unknown>> {
    if (workshop !== 'demo') {
      const fix = say('services.open-the-demo-workshop-for-it');
      return err({ where: say('services.the-demo'), what: say('services.is-a-workshop-of-its-own'), fix });
    }
    await demo.makeAnew();
    return factsOf(demo, { workshop, now });
  }

  /** No other call is under way meanwhile. */
  async function restoreBackup(workshop: Workshop, input: unknown): Promise<Result<unknown>> {
    if (workshop === 'demo') return demoHasNone;
    const brought = await own.restore((input as CallInput<'restoreBackup'>).name);
    return brought.ok ? factsOf(own, { workshop, now }) : brought;
  }

  return {
    answer: (envelope) => speakingFor(envelope, async () => saidNow(await answer(envelope))),
    noteFailure,
    onChangeElsewhere: own.onChangeElsewhere,
    async close() {
      if (isClosed) return;
      isClosed = true;
      await Promise.all([own.close(), demo.close()]);
    },
  };
}

const demoHasNone: Result<never> = err({
  get where() {
    return say('services.the-demo-workshop');
  },
  get what() {
    return say('services.keeps-no-backups-it-can-be');
  },
  get fix() {
    return say('services.go-back-to-your-own-workshop');
  },
});

function factsOf(store: Store, serving: Serving): Promise<Result<WorkshopFacts>> {
  return store.read({}, (queries) => workshopFacts(contextOf(store, queries, serving)));
}

/** log: null where none is kept. */
function couldNotBeDone(step: string, log: string | null): Problem {
  const again =
    step === 'restoreBackup'
      ? say('services.start-the-program-again-and-see')
      : say('services.nothing-was-changed-try-it-again');
  const where =
    log === null
      ? say('services.if-it-fails-again-what-the')
      : say('services.if-it-fails-again-the-log', { log });
  return {
    where: say('services.this-step'),
    what: say('services.could-not-be-done'),
    fix: `${again} ${where}`,
  };
}
