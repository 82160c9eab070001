/** The money of the stash: prices over time, and an account that adds up. */
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './door.ts';

async function minorOf(place: Locator): Promise<number> {
  const text = (await place.textContent()) ?? '';
  return Math.round(Number(/([\d,]+\.\d\d)/.exec(text)?.[1]?.replace(/,/g, '')) * 100);
}

async function openAccount(page: Page): Promise<void> {
  await page
    .getByRole('navigation', { name: 'Rooms' })
    .getByRole('link', { name: 'Account', exact: true })
    .click();
  await expect(page.getByRole('heading', { name: 'Account', level: 1 })).toBeVisible();
}

test('what is written off leaves the shelf and not the account', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByText('This is the demo workshop.')).toBeVisible();
  await openAccount(page);
  const row = page.getByRole('row', { name: /^Downdrift duck/ });
  const cells = async () =>
    Promise.all([1, 3, 5].map((column) => minorOf(row.getByRole('cell').nth(column))));
  const [received = 0, cut = 0, onHand = 0] = await cells();
  expect(received).toBe(cut + onHand);

  await row.getByRole('link', { name: 'Downdrift duck' }).click();
  await page.getByRole('button', { name: 'Write off' }).first().click();
  const sheet = page.getByRole('dialog');
  await sheet.getByLabel('Amount').fill('70 g');
  await sheet.getByLabel('Reason').fill('damp');
  await sheet.getByRole('button', { name: /Write off/ }).click();
  await expect(sheet).toBeHidden();
  await openAccount(page);
  const writtenOff = await minorOf(row.getByRole('cell').nth(4));
  const [stillReceived, stillCut, left = 0] = await cells();
  expect(writtenOff).toBeGreaterThan(0);
  expect([stillReceived, stillCut]).toEqual([received, cut]);
  expect(left).toBe(onHand - writtenOff);
});

test('the purchases of a cloth are drawn by their day, and told in a table', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('list', { name: 'Cover by slot' })).toBeVisible();
  await page.getByRole('link', { name: /^Cost/ }).click();
  await page.getByRole('tab', { name: 'Over time' }).click();
  const picture = page.getByRole('img', { name: /^Peatwater nylon, price of 1 m/ });
  await expect(picture).toBeVisible();
  const rows = page.getByRole('row').filter({ hasText: 'EUR' });
  expect(await picture.locator('circle').count()).toBe(await rows.count());
  await expect(rows.first()).toContainText('14 Apr 2026');
  await page.getByLabel('Slot').selectOption({ label: 'quilting thread' });
  await expect(page.getByRole('img', { name: /price of 1,000 m/ })).toBeVisible();
});
