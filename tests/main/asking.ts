/** Real files in a folder of their own, asked through the services as a door asks. */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openWorkshop } from '../../main/database/file/connection.ts';
import {
  openServices,
  openServicesAt,
  type ServiceOptions,
  type Services,
} from '../../main/services/calls/services.ts';
import type { CallInput, CallName, CallOutput, Workshop } from '../../shared-core/contract/contract.ts';
import type { Result, Problem } from '../../shared-core/measure/problem.ts';
import { clothLot, down, fillLot, taffeta } from './asking-inputs.ts';
import { besideDatabase, besideFile, type Row, type Value } from './beside.ts';
import { dump } from './dump.ts';
import { createDatabase, dropDatabase, everyRow, freshAddress } from './postgres/test-database.ts';

export { clothLot, down, fillLot, taffeta } from './asking-inputs.ts';
export { dump } from './dump.ts';

const leftovers: (() => void | Promise<void>)[] = [];

/** Closes and removes what was opened and made since the last time: done after each test, see leave-nothing.ts. */
export async function clearLeftovers(): Promise<void> {
  for (const clear of leftovers.splice(0).reverse()) await clear();
}

export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'bolt-test-'));
  leftovers.push(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

export interface Asking {
  readonly services: Services;
  readonly dataFile: string;
  readonly demoFile: string;
  /** Programmer's mistakes that the services have told of. */
  readonly logged: readonly unknown[];
  /** Every row of every table as one text. */
  rows(workshop?: Workshop): Promise<string>;
  /** Asks the maker's own workshop past the services: see beside.ts. */
  beside(sql: string, ...values: readonly Value[]): Promise<readonly Row[]>;
  ask<Name extends CallName>(
    call: Name,
    input: CallInput<Name>,
    workshop?: Workshop,
  ): Promise<Result<CallOutput<Name>>>;
  /** The value, or a throw that says what was refused. */
  get<Name extends CallName>(
    call: Name,
    input: CallInput<Name>,
    workshop?: Workshop,
  ): Promise<CallOutput<Name>>;
  /** The problems of a call that must be refused, for inputs of any shape; throws where a row has changed. */
  refusal(call: string, input: unknown, workshop?: Workshop): Promise<readonly Problem[]>;
}

/**
 * A workshop in a file; in the tests that run on a database as well (tests/vitest.config.ts) the second time in a
 * database, if nothing is asked for that only a file has.
 */
export function openAsking(options: Partial<ServiceOptions> = {}): Asking {
  if (process.env.BOLT_TEST_STORE === 'postgres') return openDesk(options);
  const folder = tempFolder();
  const dataFile = options.dataFile ?? freshFile(folder);
  const demoFile = options.demoFile ?? join(folder, 'demo.sqlite');
  const logged: unknown[] = [];
  const opened = openServices({ log: (error) => logged.push(error), ...options, dataFile, demoFile });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const services = opened.value;
  leftovers.push(() => services.close());
  const rows = async (workshop = 'own') => dump(workshop === 'demo' ? demoFile : dataFile);
  const beside: Asking['beside'] = async (sql, ...values) => {
    const file = besideFile(dataFile);
    try {
      return await file.ask(sql, ...values);
    } finally {
      await file.close();
    }
  };
  return { services, dataFile, demoFile, logged, rows, beside, ...askingOf(services, rows) };
}

let emptyWorkshop: Buffer | undefined;

/** A workshop of which nothing is known yet, as the program makes it; made once, since each takes all migrations. */
export function freshFile(folder: string): string {
  emptyWorkshop ??= makeEmptyWorkshop();
  const file = join(folder, 'own.sqlite');
  writeFileSync(file, emptyWorkshop, { mode: 0o600 });
  return file;
}

function makeEmptyWorkshop(): Buffer {
  const folder = mkdtempSync(join(tmpdir(), 'bolt-empty-'));
  try {
    const file = join(folder, 'own.sqlite');
    const made = openWorkshop(file, { now: () => new Date() });
    if (!made.ok) throw new Error(JSON.stringify(made.problems));
    made.value.close();
    return readFileSync(file);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/**
 * A desk at a workshop in a database: at a fresh one where no address is given as the data file. It is opened as it is
 * first asked, so that both kinds of test read the same.
 */
export function openDesk(options: Partial<ServiceOptions> = {}): Asking {
  const folder = tempFolder();
  const demoFile = options.demoFile ?? join(folder, 'demo.sqlite');
  const logged: unknown[] = [];
  const dataFile = options.dataFile ?? freshAddress();
  const isFresh = options.dataFile === undefined;
  if (isFresh) leftovers.push(() => dropDatabase(dataFile));
  const opening = (async () => {
    if (isFresh) await createDatabase(dataFile);
    const local = { localFile: join(folder, 'desk.sqlite'), demoFile };
    const opened = await openServicesAt({
      log: (error) => logged.push(error),
      ...options,
      ...local,
      dataFile,
    });
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
    return opened.value;
  })();
  const close = async () => (await opening).close();
  leftovers.push(close);
  const services: Services = {
    answer: async (envelope) => (await opening).answer(envelope),
    noteFailure: (step, error) => void opening.then((opened) => opened.noteFailure(step, error)),
    onChangeElsewhere(listener) {
      const ending = opening.then((opened) => opened.onChangeElsewhere(listener));
      return () => void ending.then((end) => end());
    },
    close,
  };
  const database = besideDatabase(dataFile);
  leftovers.push(database.close);
  const rows = async (workshop = 'own') => {
    await opening;
    return workshop === 'demo' ? dump(demoFile) : String((await database.ask(everyRow))[0]?.text);
  };
  const beside: Asking['beside'] = async (sql, ...values) => {
    await opening;
    return database.ask(sql, ...values);
  };
  return { services, dataFile, demoFile, logged, rows, beside, ...askingOf(services, rows) };
}

function askingOf(services: Services, rows: Asking['rows']): Pick<Asking, 'ask' | 'get' | 'refusal'> {
  const ask = (call: string, input: unknown, workshop = 'own') => services.answer({ call, workshop, input });
  return {
    ask: ask as Asking['ask'],
    async get(call, input, workshop) {
      const outcome = await ask(call, input, workshop);
      if (!outcome.ok) throw new Error(`${call} was refused: ${JSON.stringify(outcome.problems)}`);
      return outcome.value as never;
    },
    async refusal(call, input, workshop) {
      const before = await rows(workshop);
      const outcome = await ask(call, input, workshop);
      if (outcome.ok) throw new Error(`${call} was not refused: ${JSON.stringify(outcome.value)}`);
      const after = await rows(workshop);
      if (after !== before) throw new Error(`${call} was refused and yet changed the file`);
      return outcome.problems;
    },
  };
}

/** Names in a folder, sorted; without the log that reading a file to compare it leaves beside it. */
export function filesIn(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => !/-(shm|wal)$/.test(name))
    .sort();
}

/** A cloth with the lot above on the shelf. */
export async function receivedCloth(asking: Asking, name: string = taffeta.name) {
  const { itemId } = await asking.get('saveItem', { ...taffeta, name });
  const { lotId } = await asking.get('receiveLot', clothLot(itemId));
  const { shelf } = await asking.get('readItem', { itemId });
  const [cut, remnant] = shelf.lots[0]!.lengths;
  return { itemId, lotId, cutId: cut!.id, remnantId: remnant!.id };
}

export async function receivedFill(asking: Asking, amount: number) {
  const { itemId } = await asking.get('saveItem', down);
  const { lotId } = await asking.get('receiveLot', fillLot(itemId, amount));
  return { itemId, lotId };
}
