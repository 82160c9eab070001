/** Hears the Enter key of the terminal that a launcher was started in. */
import { spawnSync } from 'node:child_process';

/**
 * Calls heard for each line that is typed, without keeping the process running. In the background it does not
 * listen: a terminal stops a program that reads there.
 *
 * @param {() => void} heard
 */
export function onEnter(heard) {
  const listen = () => {
    if (isInBackground()) process.stdin.pause();
    else process.stdin.resume();
  };
  process.stdin.on('data', heard).on('error', () => {});
  if ('unref' in process.stdin) process.stdin.unref();
  listen();
  if (process.platform !== 'win32') process.on('SIGCONT', listen);
}

function isInBackground() {
  if (process.platform === 'win32' || !process.stdin.isTTY) return false;
  // The state of a process in a terminal's foreground holds a plus sign (POSIX leaves the letters to the system).
  const { stdout } = spawnSync('ps', ['-o', 'stat=', '-p', String(process.pid)], { encoding: 'utf8' });
  return Boolean(stdout?.trim()) && !stdout.includes('+');
}
