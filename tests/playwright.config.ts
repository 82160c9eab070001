/**
 * The maker's day in a real window: the same specs through both doors, on as many workers as there are cores; each
 * worker has a browser and a program with its hosts, and each spec a page, a host and a file of its own.
 */
import { availableParallelism } from 'node:os';
import { defineConfig } from '@playwright/test';
import { findBrowserForTests, quietFlags, rootFlags } from '../main/launch/browser.mjs';
import type { DoorOptions } from './app/door.ts';
import { whyClosed } from './app/closed-doors.ts';

// Set by npm test; a run of Playwright by hand finds its browser itself.
const program = process.env.BOLT_BROWSER ?? findBrowserForTests();
/** A page of a spec is gone before compiling its code a second time, for speed, would pay: half of all work was that. */
const shortLived =
  '--js-flags=--no-opt --no-maglev --liftoff-only --wasm-lazy-compilation --single-threaded-gc';
const whyNoElectron = whyClosed('electron');

export default defineConfig<DoorOptions>({
  testDir: './app',
  outputDir: '../test-results',
  globalSetup: './app/found-lays.ts',
  workers: Math.min(4, availableParallelism()),
  fullyParallel: true,
  retries: 0,
  // Against what hangs alone: speed is measured in benches, and a busy machine fails no spec.
  timeout: 600_000,
  expect: { timeout: 90_000 },
  forbidOnly: true,
  reporter: [['dot'], ['./playwright-counts.ts', { leftOut: { door: 'electron', reason: whyNoElectron } }]],
  use: {
    launchOptions: {
      args: [...quietFlags, ...rootFlags(), shortLived, '--renderer-process-limit=1'],
      ...(program === '' ? {} : { executablePath: program }),
    },
    screenshot: 'only-on-failure',
    locale: 'en-IE',
  },
  projects: [
    { name: 'loopback', use: { door: 'loopback' } },
    // A door that is closed here costs nothing: its specs are counted as skipped, and not begun.
    { name: 'electron', use: { door: 'electron' }, ...(whyNoElectron === '' ? {} : { testIgnore: '**' }) },
  ],
});
