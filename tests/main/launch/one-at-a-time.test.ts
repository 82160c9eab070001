/** Two starts at once, in a folder where nothing is installed or built yet. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { oneAtATime } from '../../../main/launch/one-at-a-time.mjs';

let folder: string;
const lock = () => join(folder, 'out', 'preparing.lock');

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-alone-'));
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const module = new URL('../../../main/launch/one-at-a-time.mjs', import.meta.url).href;

/** A program that works under the lock: it writes its name again and again. */
function worker(name: string, end = '') {
  const script = `
    import { appendFileSync } from 'node:fs';
    import { oneAtATime } from ${JSON.stringify(module)};
    oneAtATime(${JSON.stringify(lock())}, () => console.log('waits'), () => {
      for (let line = 0; line < 2000; line++) appendFileSync(${JSON.stringify(join(folder, 'work'))}, '${name}');
      ${end}
    });`;
  return spawn(process.execPath, ['--input-type=module', '--eval', script], { stdio: ['ignore', 'pipe', 2] });
}

test('what two programs do under one lock is done one after the other', async () => {
  await Promise.all(['a', 'b', 'c'].map((name) => once(worker(name), 'close')));
  const turns = readFileSync(join(folder, 'work'), 'utf8').replace(/(.)\1*/g, '$1');
  expect([...turns].sort().join('')).toBe('abc');
  expect(existsSync(lock())).toBe(false);
});

test('who waits is told so once, and goes on when the other gives the lock back', () => {
  let told = 0;
  const done = oneAtATime(
    lock(),
    () => {},
    () => {
      const other = join(folder, 'other.lock');
      writeFileSync(other, String(process.pid));
      return oneAtATime(
        other,
        () => {
          told += 1;
          rmSync(other);
        },
        () => 'done',
      );
    },
  );
  expect([done, told]).toEqual(['done', 1]);
});

test('a program that ends in the middle leaves nothing that others wait for', async () => {
  await once(worker('a', 'process.exit(1);'), 'close');
  expect(existsSync(lock())).toBe(false);
  const killed = worker('b', "process.kill(process.pid, 'SIGKILL');");
  await once(killed, 'close');
  expect(existsSync(lock())).toBe(true);
  const isFree = oneAtATime(
    lock(),
    () => {
      throw new Error('it waits for a program that is gone');
    },
    () => true,
  );
  expect(isFree).toBe(true);
});

test('what goes wrong under the lock is thrown on, and the lock given back', () => {
  const work = () => {
    throw new Error('no connection');
  };
  expect(() => oneAtATime(lock(), () => {}, work)).toThrow('no connection');
  expect(existsSync(lock())).toBe(false);
});
