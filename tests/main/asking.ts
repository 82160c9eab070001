/** Real files in a folder of their own, asked through the services as a door asks. */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openServices, type ServiceOptions, type Services } from '../../main/services/calls/services.ts';
import type { CallInput, CallName, CallOutput, Workshop } from '../../shared-core/contract/contract.ts';
import type { Result, Problem } from '../../shared-core/measure/problem.ts';
import { clothLot, down, fillLot, taffeta } from './asking-inputs.ts';
import { dump } from './dump.ts';

export { clothLot, down, fillLot, taffeta } from './asking-inputs.ts';
export { dump } from './dump.ts';

const leftovers: (() => void)[] = [];

/** Closes and removes what was opened and made since the last time: done after each test, see leave-nothing.ts. */
export function clearLeftovers(): void {
  for (const clear of leftovers.splice(0).reverse()) clear();
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

export function openAsking(options: Partial<ServiceOptions> = {}): Asking {
  const folder = tempFolder();
  const dataFile = options.dataFile ?? join(folder, 'own.sqlite');
  const demoFile = options.demoFile ?? join(folder, 'demo.sqlite');
  const logged: unknown[] = [];
  const opened = openServices({ log: (error) => logged.push(error), ...options, dataFile, demoFile });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const services = opened.value;
  leftovers.push(() => services.close());
  const ask = (call: string, input: unknown, workshop = 'own') => services.answer({ call, workshop, input });
  return {
    services,
    dataFile,
    demoFile,
    logged,
    ask: ask as Asking['ask'],
    async get(call, input, workshop) {
      const outcome = await ask(call, input, workshop);
      if (!outcome.ok) throw new Error(`${call} was refused: ${JSON.stringify(outcome.problems)}`);
      return outcome.value as never;
    },
    async refusal(call, input, workshop) {
      const file = workshop === 'demo' ? demoFile : dataFile;
      const before = dump(file);
      const outcome = await ask(call, input, workshop);
      if (outcome.ok) throw new Error(`${call} was not refused: ${JSON.stringify(outcome.value)}`);
      const after = dump(file);
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
