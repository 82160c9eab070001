import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface, type Interface } from 'node:readline';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, describe, expect, test } from 'vitest';

const ending = pathToFileURL(fileURLToPath(new URL('../../../main/launch/ending.mjs', import.meta.url)));
/** Tells its number, and when it has looked a dozen times whether npm is there; stays until it is asked to end. */
const launched = `import { whenAskedToEnd } from '${ending}';
const stay = setInterval(() => {}, 1000);
let looks = 0;
const kill = process.kill;
process.kill = (...asked) => {
  if (++looks === 12) console.log('looked');
  return kill.apply(process, asked);
};
whenAskedToEnd(() => clearInterval(stay), 20);
console.log(process.pid);`;

let npm: ChildProcess | undefined;
let pid = 0;

afterEach(() => {
  npm?.kill('SIGKILL');
  try {
    if (pid > 0) process.kill(pid, 'SIGKILL');
  } catch {
    // It has ended, as it should.
  }
});

/** Starts the launched program as npm does: in a shell, which some systems leave between the two. */
async function started(before: string, afterwards: string): Promise<Interface> {
  const command = `${before} "$BOLT_NODE" --input-type=module --eval "$BOLT_PROGRAM"${afterwards}`;
  const shell = `require('node:child_process').spawn('/bin/sh', ['-c', process.env.BOLT_COMMAND], { stdio: 'inherit' });
    setInterval(() => {}, 1000);`;
  npm = spawn(process.execPath, ['--eval', shell], {
    stdio: ['ignore', 'pipe', 'inherit'],
    env: {
      ...process.env,
      npm_lifecycle_event: 'start',
      BOLT_NODE: process.execPath,
      BOLT_PROGRAM: launched,
      BOLT_COMMAND: command,
    },
  });
  const lines = createInterface({ input: npm.stdout! });
  const [line] = await once(lines, 'line');
  pid = Number(line);
  return lines;
}

function isRunning(): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch {
    return false;
  }
}

describe.skipIf(process.platform === 'win32')('what npm started', () => {
  test.each([
    ['behind a shell that stays', '', '; true'],
    ['in place of a shell that gives way to it', 'exec', ''],
  ])('%s ends when npm is killed, and not before', async (_, before, afterwards) => {
    const lines = await started(before, afterwards);
    expect(await once(lines, 'line')).toEqual(['looked']);
    expect(isRunning()).toBe(true);
    npm!.kill('SIGKILL');
    await expect.poll(isRunning).toBe(false);
  });
});
