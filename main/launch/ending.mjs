/** A launcher must not outlive the one who started it, nor its own child outlive it. */
import { spawnSync } from 'node:child_process';
import { basename } from 'node:path';

/**
 * Calls end when the process is asked to stop by a signal, or when the npm that started it is gone: the shell
 * between the two passes no signals on, and outlives an npm that was killed.
 *
 * @param {(signal: 'SIGINT' | 'SIGTERM' | 'SIGHUP') => void} end may be called more than once
 * @param {number} watchMs how often it is looked whether npm is there
 * @returns {{ asked: boolean }} asked becomes true at the first call
 */
export function whenAskedToEnd(end, watchMs = 500) {
  const stop = { asked: false };
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.on(signal, () => {
      stop.asked = true;
      end(signal);
    });
  }
  if (process.env.npm_lifecycle_event !== undefined) {
    const parent = process.ppid;
    const watched = [parent, npmBehind(parent)].filter((pid) => pid > 1);
    const watch = setInterval(() => {
      if (process.ppid === parent && watched.every(isAlive)) return;
      clearInterval(watch);
      stop.asked = true;
      end('SIGTERM');
    }, watchMs);
    watch.unref();
  }
  return stop;
}

/**
 * The process that started the shell which is our parent; 0 where the parent is no shell but npm itself, since some
 * shells become the last program that they run, and where the system does not tell.
 *
 * @param {number} parent
 */
function npmBehind(parent) {
  if (process.platform === 'win32') return 0;
  const { stdout } = spawnSync('ps', ['-o', 'ppid=', '-o', 'comm=', '-p', String(parent)], {
    encoding: 'utf8',
  });
  const match = /^\s*(\d+)\s+(.*\S)\s*$/.exec(stdout ?? '');
  if (!match) return 0;
  return /^-?(sh|dash|ash|bash|zsh|ksh|fish)$/.test(basename(match[2] ?? '')) ? Number(match[1]) : 0;
}

/**
 * Whether there is such a process, ours or not.
 *
 * @param {number} pid
 */
export function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM';
  }
}
