/**
 * A real loopback host under attack:
 *   npm run -s check:door -- [--json] [--details]
 * Prints how many hostile requests were sent, how many of those without the secret were served, and how many ended
 * in a status of 500 or more. Ends with 0 only if nothing was served that should not be, the host printed nothing,
 * let go of silent connections, and still answered a right call.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { attack, isUnharmed } from './attack.ts';

const { values } = parseArgs({ options: { json: { type: 'boolean' }, details: { type: 'boolean' } } });
const folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-attack-'));
const hostFile = join(import.meta.dirname, '../../../main/doors/loopback-host.ts');
const host = spawn(process.execPath, [hostFile, '--attached', '--data', join(folder, 'workshop.sqlite')], {
  stdio: 'pipe',
});
let printed = '';
host.stderr.setEncoding('utf8').on('data', (text: string) => {
  printed += text;
});
const addresses = createInterface({ input: host.stdout })[Symbol.asyncIterator]();
const first = await nextAddress();
const startedMs = performance.now();
const report = await attack(
  {
    origin: new URL(first).origin,
    newAddress: () => {
      host.stdin.write('\n');
      return nextAddress();
    },
  },
  { every: 1, silentCount: 60, silentMs: 60_000 },
);
const seconds = Math.round(performance.now() - startedMs) / 1_000;
const exited = new Promise<number | null>((done) => host.on('exit', done));
host.stdin.end();
const exitCode = await exited;
rmSync(folder, { recursive: true, force: true });

const { sent, servedWithoutSecret, status5xx } = report;
const counts = { sent, servedWithoutSecret, status5xx };
const said = values.details ? { ...counts, ...report, printed, exitCode, seconds } : counts;
console.log(
  values.json
    ? JSON.stringify(said, null, values.details ? 1 : undefined)
    : `${sent} hostile requests; served without the secret: ${servedWithoutSecret}; status 500 and above: ${status5xx}`,
);
if (!isUnharmed(report) || printed !== '' || exitCode !== 0) {
  console.error('The door did not hold; --json --details says where.');
  process.exitCode = 1;
}

async function nextAddress(): Promise<string> {
  for (let line = await addresses.next(); !line.done; line = await addresses.next()) {
    if (line.value.startsWith('http://')) return line.value;
  }
  throw new Error(`the host ended before it gave an address: ${printed}`);
}
