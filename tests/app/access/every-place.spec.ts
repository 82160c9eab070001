/**
 * Every room and all that opens in it, each visited once: its text at twice its size in a window of 1280 by 800, what
 * moves on a machine that is told to keep still, and the rules of axe-core in the light and the dark look.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Page } from '@playwright/test';
import { root } from '../../../main/launch/install.mjs';
import { expect, test } from '../door.ts';
import { broken, otherWords } from './broken-rules.ts';
import { unreadable } from './clipped-text.ts';
import { moving } from './moving.ts';
import {
  emptyRooms,
  enter,
  germanRooms,
  isOfCoat,
  leave,
  openDemo,
  openings,
  type Place,
  rooms,
} from './places.ts';

/** The size of the text once the page has taken it: what is drawn to measure follows a frame later. */
function setTextSize(page: Page, size: '100%' | '200%'): Promise<void> {
  return page.evaluate(async (fontSize) => {
    document.documentElement.style.fontSize = fontSize;
    for (let frame = 0; frame < 2; frame++) await new Promise(requestAnimationFrame);
  }, size);
}

async function hidden(page: Page, name: string, size: string): Promise<string[]> {
  return (await unreadable(page)).map((what) => `${name} at ${size}: ${what}`);
}

/**
 * One sentence for each flaw of these places, each room before what opens in it, so that it is entered once, and an
 * item before its list, which keeps a stock-take open until the room is left. In another language its words are looked
 * at: also at their own size, but not their colours.
 */
async function flaws(
  page: Page,
  places: readonly Place[],
  language: 'first' | 'other' = 'first',
): Promise<readonly string[]> {
  await page.setViewportSize({ width: 1280, height: 800 });
  const found: string[] = [];
  for (const place of places.toSorted((a, b) => b.hash.localeCompare(a.hash))) {
    const { name } = place;
    await setTextSize(page, '200%');
    await enter(page, place);
    found.push(...(await hidden(page, name, '200%')));
    for (const what of await moving(page)) found.push(`${name}: ${what} moves`);
    await setTextSize(page, '100%');
    if (language === 'other') found.push(...(await hidden(page, name, '100%')));
    // Last, since all that is folded is opened for it.
    found.push(...(await broken(page, name, language === 'other' ? otherWords : undefined)));
    await leave(page);
  }
  return found;
}

test('the first screen and the rooms of an empty workshop can be used by everybody', async ({ page }) => {
  await page.getByText('Your first answer in three steps').waitFor();
  expect(await broken(page, 'the first screen')).toEqual([]);
  expect(await flaws(page, emptyRooms)).toEqual([]);
});

const isOfStash = ({ hash }: Place) => hash.startsWith('#/stash');
const isOfPlan = (place: Place) => isOfCoat(place) && place.hash.endsWith('/plan');

/** All places, in parts that take about as long as each other: each falls into one of them. */
const parts = Map.groupBy([...rooms, ...openings], (place) => {
  if (isOfStash(place)) return 'the stash, and all that opens in it';
  if (!isOfCoat(place)) return 'the other rooms of the workshop, and all that opens in them';
  if (isOfPlan(place)) return 'the plan of a coat, and all that opens in it';
  return rooms.includes(place)
    ? 'the other steps of the road'
    : 'all that opens in the other steps of the road';
});

for (const [part, places] of parts)
  test(`${part}: everybody can use it`, async ({ page }) => {
    await openDemo(page);
    expect(await flaws(page, places)).toEqual([]);
  });

test.describe('in German', () => {
  test.use({ locale: 'de-DE' });

  test('the rooms with the most text can be used by everybody, at their own size and at twice that', async ({
    page,
  }) => {
    await openDemo(page);
    await expect(page.locator('html')).toHaveAttribute('lang', 'de');
    expect(await flaws(page, germanRooms, 'other')).toEqual([]);
  });
});

test('no sheet is left out', () => {
  const folder = join(root, 'renderer', 'rooms');
  const withSheets = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.tsx'))
    .filter((file) => /<(?:Form)?Sheet\b/.test(readFileSync(join(folder, file), 'utf8')))
    .map((file) => basename(file, '.tsx'));
  const looked = new Set(openings.map((place) => place.sheet));
  expect(withSheets.length).toBeGreaterThan(10);
  expect(withSheets.filter((name) => !looked.has(name))).toEqual([]);
});

test('a rule that is broken is seen', async ({ page }) => {
  await page.getByRole('heading', { level: 1 }).evaluate((heading) => {
    const pale = document.createElement('p');
    pale.textContent = 'pale';
    Object.assign(pale.style, { color: '#ccd2d0', backgroundColor: '#ffffff' });
    heading.after(document.createElement('button'), pale);
  });
  const found = (await broken(page, 'spoiled')).join(' / ');
  expect(found).toContain('button-name');
  expect(found).toContain('color-contrast');
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
