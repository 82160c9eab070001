/** The rules of axe-core (WCAG 2 and good practice) on every room and all that opens in it, in the light and the dark look. */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { Page } from '@playwright/test';
import axe from 'axe-core';
import { root } from '../../../main/launch/install.mjs';
import { expect, test } from '../door.ts';
import { emptyRooms, enter, germanRooms, leave, openDemo, openings, type Place, rooms } from './places.ts';

/** axe-core as the page knows it once it is brought in. */
type WithAxe = { readonly axe?: typeof axe };

/** One sentence for each element that breaks a rule. The dark look differs in its colours alone. */
async function broken(page: Page, name: string): Promise<string[]> {
  // Once for each page, since reading axe-core takes longer than most of its looks.
  const isThere = await page.evaluate(() => (window as WithAxe).axe !== undefined);
  if (!isThere) await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    // What is folded away is looked at too.
    for (const details of document.querySelectorAll('details')) details.open = true;
    // What lies under a sheet was looked at as a room.
    const within = document.querySelector('[role=dialog]') ?? document;
    const rules = { light: undefined, dark: { type: 'rule' as const, values: ['color-contrast'] } };
    const sentences: string[] = [];
    for (const look of ['light', 'dark'] as const) {
      document.documentElement.dataset.theme = look;
      const runOnly = rules[look];
      const { violations } = await (window as WithAxe).axe!.run(within, {
        resultTypes: ['violations'],
        ...(runOnly && { runOnly }),
      });
      for (const { id, nodes } of violations)
        for (const { target, any, all, none } of nodes)
          sentences.push(
            `${look}: ${id} at ${target.join(' ')}: ${[...any, ...all, ...none][0]?.message ?? ''}`,
          );
    }
    return sentences;
  });
  return found.map((sentence) => `${name}, ${sentence}`);
}

async function allBroken(page: Page, places: readonly Place[]): Promise<string[]> {
  const found: string[] = [];
  for (const place of places) {
    await enter(page, place);
    found.push(...(await broken(page, place.name)));
    await leave(page);
  }
  return found;
}

test('no room breaks a rule of access, from the first screen on', async ({ page }) => {
  await expect(page.getByText('Your first answer in three steps')).toBeVisible();
  const first = await broken(page, 'the first screen');
  const empty = await allBroken(page, emptyRooms);
  await page.getByRole('link', { name: 'Bolt & Baffle' }).click();
  await openDemo(page);
  expect([...first, ...empty, ...(await allBroken(page, rooms))]).toEqual([]);
});

test('nothing that opens in a room breaks a rule of access', async ({ page }) => {
  await openDemo(page);
  expect(await allBroken(page, openings)).toEqual([]);
});

test.describe('in German', () => {
  test.use({ locale: 'de-DE' });

  test('the rooms with the most text break no rule of access', async ({ page }) => {
    await openDemo(page);
    await expect(page.locator('html')).toHaveAttribute('lang', 'de');
    expect(await allBroken(page, germanRooms)).toEqual([]);
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
