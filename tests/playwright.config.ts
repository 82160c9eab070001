/** The maker's day in a real window: the same specs through both doors. One worker, since each spec starts a host. */
import { defineConfig } from '@playwright/test';
import { findBrowser, quietFlags, rootFlags } from '../main/launch/browser.mjs';
import type { DoorOptions } from './app/door.ts';

// Set by npm test; a run of Playwright by hand finds its browser itself.
const program = process.env.BOLT_BROWSER ?? findBrowser();

export default defineConfig<DoorOptions>({
  testDir: './app',
  outputDir: '../test-results',
  workers: 1,
  retries: 0,
  // Speed is measured in benches; a busy machine fails no spec.
  timeout: 120_000,
  expect: { timeout: 15_000 },
  forbidOnly: true,
  reporter: [['dot'], ['./playwright-counts.ts']],
  use: {
    launchOptions: {
      args: [...quietFlags, ...rootFlags()],
      ...(program === '' ? {} : { executablePath: program }),
    },
    screenshot: 'only-on-failure',
    viewport: { width: 1360, height: 900 },
  },
  projects: [
    { name: 'loopback', use: { door: 'loopback' } },
    { name: 'electron', use: { door: 'electron' } },
  ],
});
