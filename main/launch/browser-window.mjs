/** Shows the loopback host's page in an installed browser, as a window of its own with a profile of its own. */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { offFeatures, quietFlags, rootFlags } from './browser.mjs';

/**
 * The page that lets a browser in: it posts the ticket of the address, so that the ticket stands neither in the
 * browser's arguments, which every person on this machine can read, nor in its history.
 *
 * @param {string} address as the host prints it
 */
export function entryPage(address) {
  const { origin, pathname, searchParams } = new URL(address);
  return `<!doctype html>
<meta charset="utf-8">
<meta name="referrer" content="no-referrer">
<title>Bolt &amp; Baffle</title>
<form method="post" action="${origin}${pathname}">
<input type="hidden" name="ticket" value="${searchParams.get('ticket') ?? ''}">
</form>
<script>document.forms[0].submit()</script>
`;
}

/**
 * @param {string} page file that lets the browser in
 * @param {string} profile
 */
export function windowFlags(page, profile) {
  return [
    `--app=${pathToFileURL(page)}`,
    `--user-data-dir=${profile}`,
    '--window-size=1360,900',
    `--disable-features=${offFeatures.join(',')}`,
    ...quietFlags,
    ...rootFlags(),
  ];
}

/**
 * Opens a window on the address.
 *
 * @param {string} browser
 * @param {string} address as the host prints it
 * @param {(how: string) => void} onGone told how the browser has ended
 * @returns {{ entered: () => void, close: () => void }} entered: the ticket is spent, so its page goes; close: closes
 * the window and removes all that was made for it
 */
export function openBrowserWindow(browser, address, onGone) {
  // The folder is for this person alone, and so is the page in it.
  const profile = mkdtempSync(join(profileParent(browser), 'bolt-and-baffle-'));
  const page = join(profile, 'open.html');
  writeFileSync(page, entryPage(address), { mode: 0o600 });
  const child = spawn(browser, windowFlags(page, profile), { stdio: 'ignore' });
  child.on('error', (error) => onGone(error.message));
  child.on('exit', (code, signal) => onGone(signal ?? `code ${code}`));
  return {
    entered: () => rmSync(page, { force: true }),
    close: () => {
      if (child.exitCode !== null || child.signalCode !== null || child.pid === undefined) {
        return removeProfile(profile);
      }
      child.on('exit', () => removeProfile(profile));
      child.kill();
    },
  };
}

/**
 * Where a browser can read a page of ours. A Chromium that came as a snap sees no temporary folder but its own.
 *
 * @param {string} browser
 */
export function profileParent(browser, home = homedir()) {
  const snapFolder = join(home, 'snap', 'chromium', 'common');
  return basename(browser).startsWith('chromium') && existsSync(snapFolder) ? snapFolder : tmpdir();
}

/** @param {string} profile */
function removeProfile(profile) {
  try {
    rmSync(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });
  } catch {
    // A temporary profile that is still held is the system's to clear.
  }
}
