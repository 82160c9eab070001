import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { afterEach, describe, expect, test } from 'vitest';

const ending = pathToFileURL(fileURLToPath(new URL('../../../main/launch/ending.mjs', import.meta.url)));
/** Tells its number, then stays until it is asked to end. */
const launched = `import { whenAskedToEnd } from '${ending}';
const stay = setInterval(() => {}, 1000);
whenAskedToEnd(() => clearInterval(stay));
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
async function started(before: string, afterwards: string): Promise<void> {
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
  const [line] = await once(createInterface({ input: npm.stdout! }), 'line');
  pid = Number(line);
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
    await started(before, afterwards);
    await new Promise((later) => setTimeout(later, 1500));
    expect(isRunning()).toBe(true);
    npm!.kill('SIGKILL');
    await expect.poll(isRunning).toBe(false);
  });
});
