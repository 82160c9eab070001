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
  type BrowserContext,
  type ElectronApplication,
  expect as baseExpect,
  type ExpectMatcherState,
  type Locator,
  type Page,
} from '@playwright/test';
import { rootFlags } from '../../main/launch/browser.mjs';
import { entryPage } from '../../main/launch/browser-window.mjs';
import { electronProgram } from '../../main/launch/electron-runtime.mjs';
import { root } from '../../main/launch/install.mjs';
import { type Door, whyClosed } from './closed-doors.ts';
import { type Host, type SharedHosts, sharedHosts, startHost } from './hosts.ts';
import { layAlone, type LayPace, paceLays } from './lay-clock.ts';

/** What is asked of one thing on the page, which may still be to come. */
const askedOfOne = [
  'toBeVisible',
  'toBeEnabled',
  'toContainText',
  'toHaveAttribute',
  'toHaveText',
  'toHaveValue',
] as const;

/**
 * As Playwright's own. What is still to come is waited for first: each failed look of an expectation describes the
 * whole page for its message, which on a large one takes longer than all else that a spec does.
 */
export const expect = baseExpect.extend(
  Object.fromEntries(
    askedOfOne.map((name) => [
      name,
      async function (this: ExpectMatcherState, locator: Locator, ...words: unknown[]) {
        const { timeout = this.timeout } = Object(words.at(-1)) as { readonly timeout?: number };
        const state = name === 'toBeVisible' ? 'visible' : 'attached';
        const isThere = this.isNot || (await locator.waitFor({ state, timeout }).then(yes, no));
        const asked = baseExpect.configure({ timeout: isThere ? timeout : 1 })(locator);
        const ask = (this.isNot ? asked.not : asked)[name] as (...words: unknown[]) => Promise<void>;
        try {
          await ask(...words);
          return { pass: !this.isNot, message: () => '' };
        } catch (error) {
          return {
            pass: this.isNot,
            message: () => (error instanceof Error ? error.message : String(error)),
          };
        }
      },
    ]),
  ),
) as typeof baseExpect;
const yes = () => true;
const no = () => false;

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

/** The maker of the specs measures in metres and pays in euros, wherever the machine stands. */
const defaultLocale = 'en-IE';

async function newProfile(browser: Browser, locale: string, pace: LayPace): Promise<BrowserContext> {
  // Nothing that moves has to be waited for, or drawn.
  const profile = await browser.newContext({ viewport, reducedMotion: 'reduce', locale });
  if (pace !== 'real') await layAlone(profile);
  return profile;
}

interface SharedWindow {
  /** A page without anything of a spec before. */
  take(): Promise<Page>;
  giveBack(page: Page): Promise<void>;
}

const viewport = { width: 1360, height: 900 };

/** Keeps one window and its page. What a spec left in it is taken away as it is given back. */
function shareWindow(openPage: () => Promise<Page>): SharedWindow {
  let kept: Page | undefined;
  return {
    async take() {
      const page = kept ?? (await openPage());
      kept = undefined;
      return page;
    },
    async giveBack(page) {
      for (const event of [
        'console',
        'pageerror',
        'worker',
        'dialog',
        'download',
        'request',
        'response',
      ] as const) {
        page.removeAllListeners(event);
      }
      // What a page that is left still asked for is no fault of the spec.
      await page.unrouteAll({ behavior: 'ignoreErrors' });
      // Of the same origin but without the program: nothing can write there any more.
      await page.goto(String(new URL('/enter', page.url())));
      await page.evaluate(() => {
        localStorage.clear();
        sessionStorage.clear();
      });
      await page.context().clearCookies();
      await page.emulateMedia({ media: null, reducedMotion: 'reduce' });
      await page.setViewportSize(viewport);
      kept = page;
    },
  };
}

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
