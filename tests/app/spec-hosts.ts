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
import { type Answering, startLoopback } from '../../main/doors/loopback.ts';
import { openServicesAt } from '../../main/services/calls/services.ts';
import type { CallInput, CallOutput, Workshop } from '../../shared-core/contract/contract.ts';
import { ok } from '../../shared-core/measure/problem.ts';
import { foundLays } from './found-lays.ts';
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
writePaced(pacedDir, 'found');
const demoLays = new Map(foundLays().map(({ jobHash, result }) => [jobHash, result]));
const closing = new Map<string, () => Promise<void>>();

for await (const line of createInterface({ input: process.stdin })) {
  const order = JSON.parse(line) as Order;
  console.log('open' in order ? await open(order.open, order.isFound) : await close(order.close));
}
for (const file of closing.keys()) await close(file);
rmSync(pacedDir, { recursive: true, force: true });

async function open(file: string, isFound: boolean): Promise<string> {
  const { folder, ...files } = workshopFiles(process.platform, process.env, homedir(), file);
  const opened = await openServicesAt({ ...files, chosen: chosenAddress(folder, null) });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const services = opened.value;
  const door = await startLoopback(
    isFound ? { services: withDemoLays(services), rendererDir: pacedDir } : { services, rendererDir },
  );
  closing.set(file, async () => {
    await door.close();
    await services.close();
  });
  return door.newAddress();
}

async function close(file: string): Promise<string> {
  await closing.get(file)?.();
  closing.delete(file);
  return '';
}

/** The demo knows the lays that were found before, though none is in its file yet. */
function withDemoLays(services: Answering): Answering {
  return {
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
