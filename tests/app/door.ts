/**
 * Opens the built workshop for a spec through the door of its project, on a data file of its own, and fails the
 * spec for anything that the page's console calls an error. A door that this machine cannot open skips by name.
 *
 *   import { expect, test } from './door.ts';
 *   test('a received length is on the shelf', async ({ page, workshop }) => { ... await workshop.reopen(); ... });
 */
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import {
  test as base,
  type Browser,
  type ElectronApplication,
  expect as baseExpect,
  type Page,
} from '@playwright/test';
import { rootFlags } from '../../main/launch/browser.mjs';
import { entryPage } from '../../main/launch/browser-window.mjs';
import { electronProgram } from '../../main/launch/electron-runtime.mjs';
import { root } from '../../main/launch/install.mjs';
import { type Door, whyClosed } from './closed-doors.ts';
import { type Host, type SharedHosts, sharedHosts, startHost } from './hosts.ts';
import { type LayPace, paceLays } from './lay-clock.ts';
import { defaultLocale, newProfile, type SharedWindow, shareWindow } from './window.ts';

export { expect } from './expecting.ts';

export interface DoorOptions {
  readonly door: Door;
  /** A file that the workshop begins with, copied; '' begins with none. */
  readonly startsFrom: string;
  /** How long lays take, in a browser; in the Electron window they take their time. */
  readonly layPace: LayPace;
  /** Whether the workshop is opened as the start opens it from the first; otherwise it is when it is opened again. */
  readonly asStarted: boolean;
  /** Whether the spec needs a window that no other had before or has after it. */
  readonly ownWindow: boolean;
}

export interface OpenWorkshop {
  readonly dataFile: string;
  /** What the console called an error so far; a spec that provokes one takes it out of here. */
  readonly consoleErrors: string[];
  /** Ends the whole program, starts it again on the same file and gives its new page. meanwhile: done while it is closed. */
  reopen(meanwhile?: () => void): Promise<Page>;
  /** Sets how long the lays take that are begun on workers yet to come: those before go once they are stopped. */
  setLayPace(pace: LayPace): void;
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
  /** One window for the specs of a worker, one after another: most of the work of a spec was to open one. */
  readonly sharedWindow: SharedWindow;
  readonly hosts: SharedHosts;
}

export const test = base.extend<Fixtures & DoorOptions, WorkerFixtures>({
  door: ['loopback', { option: true }],
  startsFrom: ['', { option: true }],
  layPace: ['found', { option: true }],
  asStarted: [false, { option: true }],
  ownWindow: [false, { option: true }],

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

  sharedWindow: [
    async ({ sharedBrowser }, use) => {
      await use(
        shareWindow(async () => (await newProfile(await sharedBrowser(), defaultLocale, 'found')).newPage()),
      );
    },
    { scope: 'worker' },
  ],

  hosts: [
    async ({ playwright: _ }, use) => {
      const hosts = sharedHosts();
      await use(hosts);
      await hosts.end();
    },
    { scope: 'worker' },
  ],

  workshop: async (
    {
      door,
      startsFrom,
      layPace,
      asStarted,
      locale,
      ownWindow,
      sharedBrowser,
      sharedWindow,
      hosts,
      playwright,
    },
    use,
    testInfo,
  ) => {
    const reason = whyClosed(door);
    testInfo.skip(reason !== '', reason);
    const folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-spec-'));
    const dataFile = join(folder, 'workshop.sqlite');
    if (startsFrom !== '') copyFileSync(startsFrom, dataFile);
    const consoleErrors: string[] = [];
    let pace = layPace;
    const isOwn = ownWindow || layPace === 'real' || (locale !== undefined && locale !== defaultLocale);
    const ownProfile =
      door === 'loopback' && isOwn
        ? await newProfile(await sharedBrowser(), locale ?? defaultLocale, layPace)
        : null;
    const open = async (isStarted: boolean): Promise<OpenDoor> =>
      door === 'loopback'
        ? openLoopback(
            ownProfile
              ? { take: () => ownProfile.newPage(), giveBack: (page) => page.close() }
              : sharedWindow,
            isStarted ? await startHost(dataFile) : await hosts.open(dataFile, layPace === 'found'),
            {
              startFolder: isStarted ? folder : null,
              pace: () => pace,
              isPaced: !isStarted && layPace === 'found',
              consoleErrors,
            },
          )
        : openElectron(playwright._electron, folder, dataFile, {
            locale: locale ?? defaultLocale,
            consoleErrors,
          });
    let current = await open(asStarted);
    await use({
      dataFile,
      consoleErrors,
      firstPage: current.page,
      reopen: async (meanwhile) => {
        await current.close();
        meanwhile?.();
        current = await open(true);
        return current.page;
      },
      setLayPace: (next) => {
        pace = next;
      },
    });
    await current.close();
    await ownProfile?.close();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    baseExpect(consoleErrors, "errors in the page's console").toEqual([]);
  },

  page: async ({ workshop }, use) => {
    await use(workshop.firstPage);
  },
});

async function openLoopback(
  window: SharedWindow,
  host: Host,
  given: {
    /** Where the page is put that the start opens; null where the address is opened as it is told. */
    readonly startFolder: string | null;
    readonly pace: () => LayPace;
    /** Whether the host sees to the pace by itself. */
    readonly isPaced: boolean;
    readonly consoleErrors: string[];
  },
): Promise<OpenDoor> {
  const page = await window.take();
  if (!given.isPaced) await paceLays(page, given.pace);
  listen(page, given.consoleErrors);
  if (given.startFolder === null) await page.goto(host.address);
  else {
    const entry = join(given.startFolder, 'open.html');
    writeFileSync(entry, entryPage(host.address));
    await page.goto(String(pathToFileURL(entry)));
  }
  await page.waitForURL((url) => url.protocol === 'http:' && url.pathname !== '/enter');
  // A press while the typeface comes in would meet what has just moved away.
  await page.evaluate(async () => {
    await document.fonts.load('1rem "Figtree Variable"');
    await document.fonts.ready;
  });
  return {
    page,
    close: async () => {
      await window.giveBack(page);
      await host.close();
    },
  };
}

async function openElectron(
  electron: { launch(options: object): Promise<ElectronApplication> },
  folder: string,
  dataFile: string,
  { locale, consoleErrors }: { readonly locale: string; readonly consoleErrors: string[] },
): Promise<OpenDoor> {
  const { ELECTRON_RUN_AS_NODE: _, ...env } = process.env;
  const application = await electron.launch({
    executablePath: electronProgram(),
    args: [...rootFlags(), root, `--lang=${locale}`, '--data', dataFile],
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
