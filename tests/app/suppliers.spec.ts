import { readFile } from 'node:fs/promises';
import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';

async function openDemo(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page).toHaveURL(/\/cover$/);
}

async function openRoom(page: Page, name: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name, exact: true }).click();
  await expect(page.getByRole('heading', { name, level: 1 })).toBeVisible();
}

test('a delivery that becomes dear changes what is bought and where', async ({ page }) => {
  await openDemo(page);
  await openRoom(page, 'Suppliers');
  await page.getByRole('button', { name: 'Edit Tallow Lane Notions' }).click();
  const sheet = page.getByRole('dialog', { name: 'Tallow Lane Notions' });
  await sheet.getByLabel('Delivery').fill('24.50');
  await sheet.getByLabel('Free from').fill('');
  await sheet.getByLabel('Days').fill('9');
  await sheet.getByRole('button', { name: 'Save the supplier' }).click();
  await expect(page.getByRole('row', { name: /Tallow Lane Notions/ })).toContainText('24.50 EUR');

  await page.goBack();
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: /^To buy/ })
    .click();
  const tallow = page.getByRole('region', { name: 'Tallow Lane Notions' });
  await expect(tallow).toContainText('Delivery 24.50 EUR, 9 days on the way');
  await expect(page.getByText('Deliveries', { exact: true })).toBeVisible();
  // Only here are toggles sold; what others sell too is now bought elsewhere or justified by the one delivery.
  await expect(tallow.getByRole('row', { name: /Acorn toggle/ })).toBeVisible();
  await expect(
    page.getByRole('region', { name: 'Why this basket' }).getByRole('listitem').first(),
  ).toContainText(/instead of|where/);
});

test('a price list is looked at, then brought in', async ({ page }) => {
  await openDemo(page);
  await openRoom(page, 'Suppliers');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the offers as CSV' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('offers.csv');
  const saved = await readFile(await download.path(), 'utf8');
  const [heads = ''] = saved.split('\r\n');
  const fresh = [
    heads,
    'Fernlow Trimmings,,Ropewalk spun 40,,spool,,,1000,,,,5.15,2026-11-20,',
    'Oxbow Thread,Thread,Ropewalk spun 40,,spool,,,2000,,,,8.90,2026-11-20,3 = 8.10',
    'Oxbow Thread,,Ropewalk spun 41,,spool,,,2000,,,,8.90,2026-11-20,',
  ];
  await page.getByRole('button', { name: 'Bring in a price list' }).click();
  const sheet = page.getByRole('dialog', { name: 'Bring in a price list' });
  const choose = (lines: readonly string[]) =>
    sheet.getByLabel('Price list').setInputFiles({
      name: 'prices.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(lines.join('\r\n')),
    });
  await choose(fresh);
  await expect(sheet.getByText(/Line 4, column item names "Ropewalk spun 41"/)).toBeVisible();
  await choose(fresh.slice(0, 3));
  await expect(sheet.getByText(/It adds 1, changes 1/)).toBeVisible();
  await sheet.getByRole('button', { name: 'Bring it in' }).click();
  await expect(sheet).toBeHidden();
  await expect(page.getByText('1 offer was added and 1 changed.')).toBeVisible();
  await expect(page.getByRole('row', { name: /Oxbow Thread/ })).toContainText('Not noted');
});

test('a received lot suggests an offer, and a break is noted by hand', async ({ page }) => {
  await openDemo(page);
  await openRoom(page, 'Stash');
  await page.getByRole('option', { name: /Ropewalk spun 27/ }).click();
  const item = page.getByRole('article', { name: 'Ropewalk spun 27' });
  await item.getByRole('button', { name: 'Receive' }).click();
  const sheet = page.getByRole('dialog', { name: 'Receive Ropewalk spun 27' });
  await sheet.getByLabel('Supplier').fill('Fernlow Trimmings');
  await sheet.getByLabel('Price of the lot').fill('7.30');
  await sheet.getByLabel('Amount').fill('1000 m');
  await sheet.getByRole('button', { name: 'Put on the shelf' }).click();
  await expect(sheet).toBeHidden();
  const learned = item.getByRole('region', { name: 'Learned from what was received' });
  await expect(learned).toContainText(/Fernlow Trimmings.*3\.65 EUR instead of 3\.40 EUR/);
  await learned.getByRole('button', { name: 'Bring up to date the offer of Fernlow Trimmings' }).click();
  await expect(item.getByRole('row', { name: /Fernlow Trimmings/ })).toContainText('3.65 EUR');
  await expect(learned.getByText('instead of')).toBeHidden();

  await item.getByRole('button', { name: 'Edit the offer of Fernlow Trimmings' }).click();
  const offer = page.getByRole('dialog', { name: 'Offer for Ropewalk spun 27' });
  await offer.getByRole('button', { name: 'Add a price break' }).click();
  await offer.getByRole('group', { name: 'Price break 1' }).getByLabel('From').fill('6');
  await offer.getByRole('group', { name: 'Price break 1' }).getByLabel('Price then').fill('3.10');
  await offer.getByRole('button', { name: 'Save the offer' }).click();
  await expect(offer).toBeHidden();
  await expect(item.getByRole('row', { name: /Fernlow Trimmings/ })).toContainText('3.10 EUR from 6 spools');
});
