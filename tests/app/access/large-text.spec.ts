/** Text at twice its size in a window of 1280 by 800, and a machine that is told to keep still. */
import type { Page } from '@playwright/test';
import { expect, test } from '../door.ts';
import { unreadable } from './clipped-text.ts';
import { enter, germanRooms, leave, openDemo, openings, rooms } from './places.ts';

/** Elements that would move for longer than a millisecond. */
function moving(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const longest = (times: string) =>
      Math.max(
        ...times.split(',').map((time) => Number.parseFloat(time) * (time.trim().endsWith('ms') ? 1 : 1000)),
      );
    return [...document.querySelectorAll('*')].flatMap((element) => {
      const { transitionDuration, animationName, animationDuration, scrollBehavior } =
        getComputedStyle(element);
      const moves =
        longest(transitionDuration) > 1 ||
        (animationName !== 'none' && longest(animationDuration) > 1) ||
        scrollBehavior === 'smooth';
      return moves ? [`${element.tagName} ${element.className}`] : [];
    });
  });
}

test('at twice the size every text can be read whole, and at rest nothing moves', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await openDemo(page);
  await page.evaluate(() => {
    document.documentElement.style.fontSize = '200%';
  });
  const found: string[] = [];
  for (const place of [...rooms, ...openings]) {
    await enter(page, place);
    for (const what of await unreadable(page)) found.push(`${place.name}: ${what}`);
    for (const what of await moving(page)) found.push(`${place.name}: ${what} moves`);
    await leave(page);
  }
  expect(found).toEqual([]);
});

test.describe('in German', () => {
  test.use({ locale: 'de-DE' });

  test('every text of the rooms with the most of it can be read whole, at its own size and at twice that', async ({
    page,
  }) => {
    await page.setViewportSize({ width: 1280, height: 800 });
    await openDemo(page);
    const found: string[] = [];
    for (const size of ['100%', '200%']) {
      await page.evaluate((fontSize) => {
        document.documentElement.style.fontSize = fontSize;
      }, size);
      for (const place of germanRooms) {
        await enter(page, place);
        for (const what of await unreadable(page)) found.push(`${place.name} at ${size}: ${what}`);
      }
    }
    expect(found).toEqual([]);
  });
});

test('text that is clipped, covered or pushed out is seen, and so is what moves', async ({ page }) => {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.emulateMedia({ reducedMotion: 'no-preference' });
  expect((await moving(page)).length).toBeGreaterThan(0);
  await page.getByRole('heading', { level: 1 }).evaluate((heading) => {
    const spoil = (text: string, style: Partial<CSSStyleDeclaration>) => {
      const spoiled = document.createElement('p');
      spoiled.textContent = text;
      Object.assign(spoiled.style, style);
      heading.after(spoiled);
    };
    spoil('pushed out', { width: '5000px' });
    spoil('covering', {});
    spoil('covered', { position: 'relative', top: '36px' });
    spoil('clipped below', { height: '8px', overflow: 'hidden' });
    spoil('clipped at its end', { width: '40px', overflow: 'hidden', whiteSpace: 'nowrap' });
    heading.closest('section')!.style.overflow = 'visible';
  });
  const found = (await unreadable(page)).join(' / ');
  for (const sign of ['clipped at its end', 'clipped below', '"covered" lies over', 'scrolls sideways'])
    expect(found).toContain(sign);
});
