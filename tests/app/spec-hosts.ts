/**
 * The hosts of one run of specs, one after another in one program, so that not every spec waits for a start of Node:
 * the same services and the same door as main/doors/loopback-host.ts, which stays the one that is tried where a spec
 * opens its workshop again. Reads a line {"open": FILE} or {"close": FILE} and answers each with a line, the address or
 * ''. Ends with its input.
 */
import { homedir } from 'node:os';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { chosenAddress } from '../../main/database/chosen-address.ts';
import { workshopFiles } from '../../main/database/file/data-file.ts';
import { startLoopback } from '../../main/doors/loopback.ts';
import { openServicesAt } from '../../main/services/calls/services.ts';

const rendererDir = fileURLToPath(new URL('../../out/renderer', import.meta.url));
const closing = new Map<string, () => Promise<void>>();

for await (const line of createInterface({ input: process.stdin })) {
  const order = JSON.parse(line) as { readonly open?: string; readonly close?: string };
  console.log(order.open === undefined ? await close(order.close ?? '') : await open(order.open));
}
for (const file of closing.keys()) await close(file);

async function open(file: string): Promise<string> {
  const { folder, ...files } = workshopFiles(process.platform, process.env, homedir(), file);
  const opened = await openServicesAt({ ...files, chosen: chosenAddress(folder, null) });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const services = opened.value;
  const door = await startLoopback({ services, rendererDir });
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
