/** A launcher must not outlive the one who started it, nor its own child outlive it. */

/**
 * Calls end when the process is asked to stop by a signal, or when the npm that started it is gone: the shell
 * between the two passes no signals on.
 *
 * @param {(signal: 'SIGINT' | 'SIGTERM' | 'SIGHUP') => void} end may be called more than once
 * @returns {{ asked: boolean }} asked becomes true at the first call
 */
export function whenAskedToEnd(end) {
  const stop = { asked: false };
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.on(signal, () => {
      stop.asked = true;
      end(signal);
    });
  }
  if (process.env.npm_lifecycle_event !== undefined) {
    const parent = process.ppid;
    const watch = setInterval(() => {
      if (process.ppid === parent && isAlive(parent)) return;
      clearInterval(watch);
      stop.asked = true;
      end('SIGTERM');
    }, 500);
    watch.unref();
  }
  return stop;
}

/** @param {number} pid */
function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM';
  }
}
