/**
 * Another program that has workshops open, for other-program.ts. Each line of its input is an order as JSON, and it
 * prints "done" or what was refused. Ends when its input ends.
 */
import { once } from 'node:events';
import { writeSync } from 'node:fs';
import { createInterface } from 'node:readline';
import { openServices, type Services } from '../../main/services/calls/services.ts';
import { problemSentence } from '../../shared-core/measure/problem.ts';
import { down } from './asking-inputs.ts';

export interface Order {
  /** To save three items of that name, beside the others. */
  readonly order: 'open' | 'save' | 'close';
  readonly file: string;
  readonly name?: string;
}

const services = new Map<string, Services>();

function open({ file }: Order): string {
  const opened = openServices({ dataFile: file, demoFile: `${file}-demo`, waitMs: 50 });
  if (!opened.ok) return opened.problems.map(problemSentence).join(' / ');
  services.set(file, opened.value);
  return 'done';
}

async function save({ file, name }: Order): Promise<string> {
  for (const number of [1, 2, 3]) {
    const input = { ...down, name: `${name} ${number}` };
    const saved = await services.get(file)!.answer({ call: 'saveItem', workshop: 'own', input });
    if (!saved.ok) return saved.problems.map(problemSentence).join(' / ');
  }
  return 'done';
}

async function close({ file }: Pick<Order, 'file'>): Promise<string> {
  await services.get(file)!.close();
  services.delete(file);
  return 'done';
}

const orders = { open, save, close };
const lines = createInterface({ input: process.stdin });
lines.on('line', async (line) => {
  const order: Order = JSON.parse(line);
  writeSync(1, `${await orders[order.order](order)}\n`);
});
await once(lines, 'close');
for (const file of services.keys()) await close({ file });
