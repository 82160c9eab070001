/**
 * The contract, served: one envelope in, one Result out. The maker's own workshop and the demo are two files that
 * never mix.
 */
import type { z } from 'zod';
import {
  type Backups,
  type CallInput,
  calls,
  envelope,
  type Workshop,
} from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { makeBackup } from '../../database/backups/backup-folder.ts';
import type { OpenWorkshop } from '../../database/file/connection.ts';
import { databaseProblem } from '../../database/failures/failure.ts';
import { FileNotInPlace } from '../../database/file/in-place.ts';
import { appendToFailureLog, failureLogFile, readFailureLog } from '../../database/failures/failure-log.ts';
import { demoHasNone } from '../workshop/backups.ts';
import { servingBeside } from './beside.ts';
import { rebuildDemo } from '../workshop/demo.ts';
import { type OpenDemo, openDemoFile } from '../workshop/demo-file.ts';
import { failureEntry, keepLongStacks, noteEntry, windowFailureEntry } from '../workshop/failure-entry.ts';
import { inputProblems } from './input-problems.ts';
import { sizeProblem } from './input-size.ts';
import { openOwn } from '../workshop/own-workshop.ts';
import { noNewsHere, programFacts, type RunningProgram, unnamedProgram } from '../workshop/program.ts';
import { askForNews } from '../workshop/release-news.ts';
import { releaseSource, type ReleaseSource } from '../workshop/release-source.ts';
import { contextOf, type Serving } from './served.ts';
import { openTurns } from './turns.ts';
import { workshopFacts } from '../workshop/workshop.ts';

const defaultWaitMs = 5000;

export interface ServiceOptions {
  readonly dataFile: string;
  readonly demoFile: string;
  /** The clock; the machine's own where none is given. */
  readonly now?: () => Date;
  /** How long a call waits for another program that holds the file. */
  readonly waitMs?: number;
  /** Told whole of a programmer's mistake, of which the log has only the place; console.error where none is given. */
  readonly log?: (error: unknown) => void;
  /** For a program that only reads, beside an open window or not: see database/file/reading.ts. Calls that change the file are refused. */
  readonly isReadOnly?: boolean;
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
  close(): void;
}

const onlyRead: Problem = {
  where: 'The workshop',
  what: 'is open for reading only',
  fix: 'Open it in the window to change it.',
};

/** Opens the maker's own file, or says why not. The demo's file is opened, or made, when it is first asked for. */
export function openServices(options: ServiceOptions): Result<Services> {
  const now = options.now ?? (() => new Date());
  const tellWhole = options.log ?? ((error: unknown) => console.error(error));
  const isReadOnly = options.isReadOnly ?? false;
  const waitMs = options.waitMs ?? defaultWaitMs;
  const noted: string[] = [];
  const note = (what: string, error?: unknown) =>
    void noted.push(
      error === undefined ? noteEntry(now(), what) : failureEntry({ at: now(), step: what, error }),
    );
  const opened = openOwn({ dataFile: options.dataFile, now, waitMs, isReadOnly, note });
  if (!opened.ok) return opened;
  keepLongStacks();
  const own = opened.value;
  const log = failureLogFile(own.file);
  const program = options.program ?? unnamedProgram;
  const source = options.releaseSource === undefined ? releaseSource : options.releaseSource;
  let demo: OpenDemo | undefined;
  let isClosed = false;
  const turns = openTurns();
  const serve = servingBeside();
  writeNotes();

  /** A program that only reads makes nothing beside the file. */
  function write(entry: string): void {
    if (!isReadOnly) appendToFailureLog(own.file, entry);
  }

  function writeNotes(): void {
    for (const entry of noted.splice(0)) write(entry);
  }

  function noteFailure(step: string, error: unknown): void {
    write(failureEntry({ at: now(), step, error }));
  }

  function openNamed(workshop: Workshop): Result<OpenWorkshop> {
    if (isClosed) return err({ where: 'The workshop', what: 'is closed', fix: 'Start the program again.' });
    if (workshop === 'own') return own.use();
    if (demo) return ok(demo.open);
    const made = openDemoFile(options.demoFile, { now, waitMs });
    if (!made.ok) return made;
    demo = made.value;
    return ok(demo.open);
  }

  function servingOf(workshop: Workshop): Serving {
    return { workshop, now, told: workshop === 'own' ? own.told() : [] };
  }

  async function answer(given: unknown): Promise<Result<unknown>> {
    let file = own.file;
    let step = 'a call';
    try {
      const tooMuch = sizeProblem(given);
      if (tooMuch) return err(tooMuch);
      const read = envelope.safeParse(given, { reportInput: true });
      if (!read.success) return err(...inputProblems(read.error, given));
      const { call, workshop } = read.data;
      step = call;
      if (workshop === 'demo') file = options.demoFile;
      const input = (calls[call].input as z.ZodType).safeParse(read.data.input, { reportInput: true });
      if (!input.success) return err(...inputProblems(input.error, read.data.input));
      if (isReadOnly && workshop === 'own' && calls[call].changes) return err(onlyRead);
      if (call === 'restoreBackup') return await turns.alone(() => restoreBackup(workshop, input.data));
      return await turns.together(() => answerOne(call, workshop, input.data));
    } catch (error) {
      noteFailure(step, error);
      const known = databaseProblem(error, file);
      if (known) return err(await withRescue(known, error));
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
    if (call === 'noteWindowFailure') {
      const { place, kind, stack } = input as CallInput<'noteWindowFailure'>;
      write(windowFailureEntry(now(), place, kind, stack));
      return ok({ file: log });
    }
    const isAboutBackups = call === 'listBackups' || call === 'backUp';
    if (isAboutBackups && workshop === 'demo') return demoHasNone;
    // The list is there for a file that cannot be opened, too.
    if (call === 'listBackups') return ok(own.backups());
    const open = openNamed(workshop);
    if (!open.ok) return open;
    if (call === 'backUp') return backUp(open.value);
    if (call === 'openDemo') return openDemo(open.value, workshop);
    return serve(open.value, call, input, servingOf(workshop));
  }

  /** Holding the connection, here and below, keeps every other call of this program waiting meanwhile. */
  function backUp(open: OpenWorkshop): Promise<Result<Backups>> {
    return open.queries.connection().execute(async () => {
      makeBackup(open.connection, open.file, 'by hand', now());
      return ok({ ...own.backups(), lastProblem: null });
    });
  }

  async function openDemo(open: OpenWorkshop, workshop: Workshop): Promise<Result<unknown>> {
    if (workshop !== 'demo') {
      const fix = 'Open the demo workshop for it.';
      return err({ where: 'The demo', what: 'is a workshop of its own', fix });
    }
    return open.queries.connection().execute(async (queries) => {
      open.checkInPlace();
      rebuildDemo(open.connection, now);
      return workshopFacts(contextOf(open, queries, servingOf(workshop)));
    });
  }

  /** No other call is under way meanwhile. */
  async function restoreBackup(workshop: Workshop, input: unknown): Promise<Result<unknown>> {
    if (workshop === 'demo') return demoHasNone;
    const brought = own.restoreBackup((input as CallInput<'restoreBackup'>).name);
    if (!brought.ok) return brought;
    const open = brought.value;
    return open.queries
      .connection()
      .execute((queries) => workshopFacts(contextOf(open, queries, servingOf(workshop))));
  }

  /** What was kept before the file went is in the program's hands alone, and would go with it. */
  async function withRescue(problem: Problem, error: unknown): Promise<Problem> {
    if (!(error instanceof FileNotInPlace) || problem.where !== own.file) return problem;
    const name = await own.rescue();
    if (name === null) return problem;
    const fix = `This step was not kept. All from before it is in the backup ${name}: close the program, start it again, and bring that one back under Settings.`;
    return { ...problem, fix };
  }

  return ok({
    answer,
    noteFailure,
    close() {
      if (isClosed) return;
      isClosed = true;
      own.close();
      demo?.open.close();
      demo?.claim.release();
    },
  });
}

/** log: null where none is kept. */
function couldNotBeDone(step: string, log: string | null): Problem {
  const again =
    step === 'restoreBackup'
      ? 'Start the program again and see which state the workshop is in; what stood there before is kept.'
      : 'Nothing was changed. Try it again.';
  const where =
    log === null
      ? 'If it fails again, what the program printed says why.'
      : `If it fails again, the log says where in the program: ${log}. Settings shows it and saves a copy to send.`;
  return { where: 'This step', what: 'could not be done', fix: `${again} ${where}` };
}
