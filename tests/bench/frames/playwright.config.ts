/** The browser of the bench of frames. */
import { defineConfig } from '@playwright/test';
import { findBrowser, quietFlags, rootFlags } from '../../../main/launch/browser.mjs';
import type { DoorOptions } from '../../app/door.ts';

const program = process.env.BOLT_BROWSER ?? findBrowser();

export default defineConfig<DoorOptions>({
  testDir: '.',
  outputDir: '../../../test-results',
  workers: 1,
  timeout: 600_000,
  expect: { timeout: 300_000 },
  reporter: [['line']],
  use: {
    launchOptions: {
      args: [...quietFlags, ...rootFlags()],
      ...(program === '' ? {} : { executablePath: program }),
    },
  },
});
