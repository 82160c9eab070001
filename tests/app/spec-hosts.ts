/**
 * The hosts of one run of specs, one after another in one program, so that not every spec waits for a start of Node:
 * the same services and the same door as main/doors/loopback-host.ts, which stays the one that is tried where a spec
 * opens its workshop again. Reads a line {"open": FILE, "isFound": boolean} or {"close": FILE} and answers each with a
 * line, the address or ''; isFound is for the pace of that name (lay-clock.ts). Ends with its input.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { chosenAddress } from '../../main/database/chosen-address.ts';
import { workshopFiles } from '../../main/database/file/data-file.ts';
import { type Answering, type Loopback, startLoopback } from '../../main/doors/loopback.ts';
import { openServicesAt } from '../../main/services/calls/services.ts';
import type { CallInput, CallOutput, Workshop } from '../../shared-core/contract/contract.ts';
import { err, ok } from '../../shared-core/measure/problem.ts';
import { foundBefore } from './found-lays.ts';
import { writePaced } from './lay-clock.ts';

interface Asked {
  readonly call: string;
  readonly workshop: Workshop;
  readonly input: Partial<CallInput<'readLay'>>;
}

type Order = { readonly open: string; readonly isFound: boolean } | { readonly close: string };

const rendererDir = fileURLToPath(new URL('../../out/renderer', import.meta.url));
/** The window whose lays end soon. */
const pacedDir = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-paced-'));
const found = foundBefore();
writePaced(pacedDir, 'found', found.solved);
const demoLays = new Map(found.lays.map(({ jobHash, result }) => [jobHash, result]));
/** One door for each pace, with one address for all specs of this program: what the browser knows of it, it keeps. */
const doors = new Map<boolean, Promise<SpecDoor>>();
const closing = new Map<string, () => Promise<void>>();

for await (const line of createInterface({ input: process.stdin })) {
  const order = JSON.parse(line) as Order;
  console.log('open' in order ? await open(order.open, order.isFound) : await close(order.close));
}
for (const file of closing.keys()) await close(file);
for (const door of doors.values()) await (await door).loopback.close();
rmSync(pacedDir, { recursive: true, force: true });

async function open(file: string, isFound: boolean): Promise<string> {
  const { folder, ...files } = workshopFiles(process.platform, process.env, homedir(), file);
  const opened = await openServicesAt({ ...files, chosen: chosenAddress(folder, null) });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const services = opened.value;
  const door = await doorAt(isFound);
  const leave = door.enter(isFound ? withDemoLays(services) : services);
  closing.set(file, async () => {
    leave();
    await services.close();
  });
  return door.loopback.newAddress();
}

async function close(file: string): Promise<string> {
  await closing.get(file)?.();
  closing.delete(file);
  return '';
}

interface SpecDoor {
  readonly loopback: Loopback;
  /** From now on the door leads to these services, until the function that it gives is called. */
  enter(services: Answering): () => void;
}

function doorAt(isFound: boolean): Promise<SpecDoor> {
  const door = doors.get(isFound) ?? openDoor(isFound ? pacedDir : rendererDir);
  doors.set(isFound, door);
  return door;
}

async function openDoor(servedDir: string): Promise<SpecDoor> {
  let behind: Answering | undefined;
  let tellChange = (): void => {};
  const loopback = await startLoopback({
    rendererDir: servedDir,
    services: {
      answer: async (envelope) =>
        behind?.answer(envelope) ??
        err({ where: 'The workshop', what: 'is closed', fix: 'Begin another spec.' }),
      onChangeElsewhere: (listener) => {
        tellChange = listener;
        return () => {};
      },
    },
  });
  return {
    loopback,
    enter(services) {
      if (behind !== undefined) throw new Error('a spec has one workshop open at a time');
      behind = services;
      const endTelling = services.onChangeElsewhere?.(() => tellChange());
      return () => {
        endTelling?.();
        behind = undefined;
      };
    },
  };
}

/** The demo knows the lays that were found before, though none is in its file yet. */
function withDemoLays(services: Answering): Answering {
  return {
    onChangeElsewhere: services.onChangeElsewhere,
    async answer(envelope) {
      const { call, workshop, input } = (envelope ?? {}) as Partial<Asked>;
      const found =
        call === 'readLay' && workshop === 'demo' ? demoLays.get(input?.jobHash ?? '') : undefined;
      const answer = await services.answer(envelope);
      const isKept = answer.ok && (answer.value as CallOutput<'readLay'>).result !== null;
      return found && answer.ok && !isKept ? ok({ result: found }) : answer;
    },
  };
}
