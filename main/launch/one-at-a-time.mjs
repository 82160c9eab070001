/** Two starts in a fresh folder install and build into the same places: the second waits until the first is done. */
import { mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { isAlive } from './ending.mjs';

const lookAgainMs = 100;
/** Nothing that is done under a lock takes as long: by then the number may be that of another program. */
const longestMs = 30 * 60_000;
/** A lock without a number is being written. */
const writingMs = 5_000;

/**
 * Does the work while no other program does any under the same lock, a file that holds the number of the process. The
 * lock of a program that ended without giving it back counts for nothing.
 *
 * @template T
 * @param {string} lock
 * @param {() => void} onWait called once, where another is at work
 * @param {() => T} work
 * @returns {T}
 */
export function oneAtATime(lock, onWait, work) {
  mkdirSync(dirname(lock), { recursive: true });
  for (let tries = 0; !take(lock); tries++) {
    if (isLeft(lock)) rmSync(lock, { force: true });
    else {
      if (tries === 0) onWait();
      // The launchers have nothing else to do.
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, lookAgainMs);
    }
  }
  const giveBack = () => rmSync(lock, { force: true });
  // Work may end the process.
  process.once('exit', giveBack);
  try {
    return work();
  } finally {
    process.off('exit', giveBack);
    giveBack();
  }
}

/** @param {string} lock */
function take(lock) {
  try {
    writeFileSync(lock, String(process.pid), { flag: 'wx' });
    return true;
  } catch (error) {
    if (/** @type {NodeJS.ErrnoException} */ (error).code === 'EEXIST') return false;
    throw error;
  }
}

/** @param {string} lock */
function isLeft(lock) {
  try {
    const ageMs = Date.now() - statSync(lock).mtimeMs;
    const owner = Number(readFileSync(lock, 'utf8'));
    return owner > 0 ? ageMs > longestMs || !isAlive(owner) : ageMs > writingMs;
  } catch {
    // Given back between two looks.
    return false;
  }
}
