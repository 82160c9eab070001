/** The browser windows of the specs: one that they share, one after another, or one of their own. */
import type { Browser, BrowserContext, Page } from '@playwright/test';
import { layAlone, type LayPace } from './lay-clock.ts';

/** The maker of the specs measures in metres and pays in euros, wherever the machine stands. */
export const defaultLocale = 'en-IE';

export async function newProfile(browser: Browser, locale: string, pace: LayPace): Promise<BrowserContext> {
  // Nothing that moves has to be waited for, or drawn.
  const profile = await browser.newContext({ viewport, reducedMotion: 'reduce', locale });
  if (pace !== 'real') await layAlone(profile);
  return profile;
}

export interface SharedWindow {
  /** A page without anything of a spec before. */
  take(): Promise<Page>;
  giveBack(page: Page): Promise<void>;
}

const viewport = { width: 1360, height: 900 };

/** Keeps one window and its page. What a spec left in it is taken away as it is given back. */
export function shareWindow(openPage: () => Promise<Page>): SharedWindow {
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
      for (const other of page.context().pages()) if (other !== page) await other.close();
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
