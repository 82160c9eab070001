/**
 * Opens the built workshop for a spec through the door of its project, on a data file of its own, and fails the
 * spec for anything that the page's console calls an error. A door that this machine cannot open skips by name.
 *
 *   import { expect, test } from './door.ts';
 *   test('a received length is on the shelf', async ({ page, workshop }) => { ... await workshop.reopen(); ... });
 */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { pathToFileURL } from 'node:url';
import { test as base, type Browser, type ElectronApplication, expect, type Page } from '@playwright/test';
import { hasDisplay, rootFlags } from '../../main/launch/browser.mjs';
import { entryPage } from '../../main/launch/browser-window.mjs';
import { electronProgram } from '../../main/launch/electron-runtime.mjs';
import { ownNode, root } from '../../main/launch/install.mjs';

export { expect } from '@playwright/test';

export interface DoorOptions {
  readonly door: 'loopback' | 'electron';
  /** A file that the workshop begins with, copied; '' begins with none. */
  readonly startsFrom: string;
}

export interface OpenWorkshop {
  readonly dataFile: string;
  /** What the console called an error so far; a spec that provokes one takes it out of here. */
  readonly consoleErrors: string[];
  /** Ends the whole program, starts it again on the same file and gives its new page. meanwhile: done while it is closed. */
  reopen(meanwhile?: () => void): Promise<Page>;
}

interface OpenDoor {
  readonly page: Page;
  close(): Promise<void>;
}

interface Fixtures {
  readonly workshop: OpenWorkshop & { readonly firstPage: Page };
}

interface WorkerFixtures {
  /** Starts the browser at its first use, so that the Electron project needs none. */
  readonly sharedBrowser: () => Promise<Browser>;
}

export const test = base.extend<Fixtures & DoorOptions, WorkerFixtures>({
  door: ['loopback', { option: true }],
  startsFrom: ['', { option: true }],

  sharedBrowser: [
    async ({ playwright, launchOptions }, use) => {
      let browser: Promise<Browser> | undefined;
      await use(() => {
        browser ??= playwright.chromium.launch(launchOptions);
        return browser;
      });
      await (await browser)?.close();
    },
    { scope: 'worker' },
  ],

  workshop: async ({ door, startsFrom, sharedBrowser, playwright, viewport }, use, testInfo) => {
    const reason = whyClosed(door);
    testInfo.skip(reason !== '', reason);
    const folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-spec-'));
    const dataFile = join(folder, 'workshop.sqlite');
    if (startsFrom !== '') copyFileSync(startsFrom, dataFile);
    const consoleErrors: string[] = [];
    const open = async (): Promise<OpenDoor> => {
      const opened =
        door === 'loopback'
          ? await openLoopback(await sharedBrowser(), folder, dataFile, viewport, consoleErrors)
          : await openElectron(playwright._electron, folder, dataFile, consoleErrors);
      return opened;
    };
    let current = await open();
    await use({
      dataFile,
      consoleErrors,
      firstPage: current.page,
      reopen: async (meanwhile) => {
        await current.close();
        meanwhile?.();
        current = await open();
        return current.page;
      },
    });
    await current.close();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    expect(consoleErrors, "errors in the page's console").toEqual([]);
  },

  page: async ({ workshop }, use) => {
    await use(workshop.firstPage);
  },
});

/** Why this machine cannot open the door, or ''. */
function whyClosed(door: DoorOptions['door']): string {
  switch (door) {
    case 'loopback':
      return process.env.BOLT_NO_BROWSER ?? '';
    case 'electron':
      if (electronProgram() === '') return "Electron's runtime is not on this machine";
      return hasDisplay(process.platform, process.env) ? '' : 'there is no display for the Electron window';
    default:
      return door satisfies never;
  }
}

async function openLoopback(
  browser: Browser,
  folder: string,
  dataFile: string,
  viewport: { width: number; height: number } | null,
  consoleErrors: string[],
): Promise<OpenDoor> {
  const host = spawn(ownNode, [join(root, 'main/doors/loopback-host.ts'), '--attached', '--data', dataFile], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const address = await firstLine(host);
  const context = await browser.newContext({ viewport });
  const page = await context.newPage();
  listen(page, consoleErrors);
  // As the start opens its window.
  const entry = join(folder, 'open.html');
  writeFileSync(entry, entryPage(address));
  await page.goto(String(pathToFileURL(entry)));
  await page.waitForURL((url) => url.protocol === 'http:' && url.pathname !== '/enter');
  return {
    page,
    close: async () => {
      await context.close();
      const ended = once(host, 'exit');
      host.stdin?.end();
      const [code] = await ended;
      expect(code, 'exit code of the loopback host').toBe(0);
    },
  };
}

async function openElectron(
  electron: { launch(options: object): Promise<ElectronApplication> },
  folder: string,
  dataFile: string,
  consoleErrors: string[],
): Promise<OpenDoor> {
  const { ELECTRON_RUN_AS_NODE: _, ...env } = process.env;
  const application = await electron.launch({
    executablePath: electronProgram(),
    args: [...rootFlags(), root, '--data', dataFile],
    // The window's own profile belongs to the spec too.
    env: { ...env, XDG_DATA_HOME: folder },
  });
  const page = await application.firstWindow();
  listen(page, consoleErrors);
  return { page, close: () => application.close() };
}

function listen(page: Page, consoleErrors: string[]): void {
  page.on('console', (message) => {
    if (message.type() === 'error') consoleErrors.push(`${message.text()} (${message.location().url})`);
  });
  page.on('pageerror', (error) => consoleErrors.push(error.stack ?? error.message));
}

async function firstLine(host: ChildProcess): Promise<string> {
  if (host.stdout === null) throw new Error('the host was started without its output');
  const lines = createInterface({ input: host.stdout });
  const [line] = await Promise.race([
    once(lines, 'line'),
    once(host, 'exit').then(([code]) => {
      throw new Error(`the loopback host ended with code ${code} before it gave its address`);
    }),
  ]);
  return String(line);
}
