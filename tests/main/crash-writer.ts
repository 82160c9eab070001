/**
 * A program that only writes: node crash-writer.ts DATAFILE NAME [COUNT]. It makes an item called NAME and a lot,
 * then books write-offs of 1 one after the other, and prints one line when it begins and one for each entry that
 * was answered with "done". It is there to be killed at any instant.
 */
import { writeSync } from 'node:fs';
import { openServices } from '../../main/services/calls/services.ts';

const [dataFile = '', name = '', count = 'Infinity'] = process.argv.slice(2);
const opened = openServices({ dataFile, demoFile: `${dataFile}-demo` });
if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
const services = opened.value;

async function get(call: string, input: unknown): Promise<Record<string, string>> {
  const outcome = await services.answer({ call, workshop: 'own', input });
  if (!outcome.ok) throw new Error(`${call}: ${JSON.stringify(outcome.problems)}`);
  return outcome.value as Record<string, string>;
}

/** Straight to the reader, so that no acknowledged entry is lost in a buffer. */
function tell(line: string): void {
  writeSync(1, `${line}\n`);
}

const item = { itemId: null, kind: 'fill', name, colour: '', place: '', notes: '', facts: {}, typed: {} };
const { itemId } = await get('saveItem', item);
const lot = {
  receivedOn: '2026-03-27',
  supplier: '',
  dyeLot: '',
  priceMinor: 77,
  amount: 1_000_000,
  lengths: [],
};
const { lotId } = await get('receiveLot', { ...lot, itemId });
tell(`begin ${itemId}`);
for (let n = 1; n <= Number(count); n++) {
  const reason = `${name} ${n}`;
  await get('writeOff', { lotId, lengthId: null, amount: 1, reason });
  tell(`done ${reason}`);
}
services.close();
