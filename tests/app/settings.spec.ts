import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';

async function openSettings(page: Page): Promise<void> {
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: 'Settings' }).click();
  await expect(page.getByRole('heading', { name: 'Settings' })).toBeVisible();
}

test('what is changed is kept at once; a currency that is none is refused with a sentence, and the old one stays', async ({
  page,
  workshop,
}) => {
  await openSettings(page);
  await test.step('the place of the data file is told', async () => {
    await expect(page.getByText(workshop.dataFile)).toBeVisible();
  });
  await page.getByLabel('Workshop name').fill('Thrush & Bramble');
  await expect(page.getByRole('status').getByText('Saved')).toBeVisible();
  await expect(page.getByRole('navigation', { name: 'Rooms' })).toContainText('Thrush & Bramble');
  await page.getByLabel('Imperial').check();
  await page.getByLabel('Currency', { exact: true }).fill('gbp');
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: 'Stash' }).click();

  const reopened = await workshop.reopen();
  await openSettings(reopened);
  await expect(reopened.getByLabel('Workshop name')).toHaveValue('Thrush & Bramble');
  await expect(reopened.getByLabel('Imperial')).toBeChecked();
  const currency = reopened.getByLabel('Currency', { exact: true });
  await expect(currency).toHaveValue('GBP');

  await currency.fill('pounds');
  await expect(reopened.getByRole('alert')).toContainText('is not three capital letters');
  await reopened.reload();
  await expect(currency).toHaveValue('GBP');
});

test('an imperial workshop sees yards where a metric one sees metres', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByText('This is the demo workshop.')).toBeVisible();
  const rooms = page.getByRole('navigation', { name: 'Rooms' });
  await rooms.getByRole('link', { name: 'Stash' }).click();
  const slatewater = page.getByRole('option', { name: /Slatewater/ });
  await page.getByLabel('Search the stash').fill('slatewater');
  await expect(slatewater).toContainText('18.29 m');
  await openSettings(page);
  await page.getByLabel('Imperial').check();
  await expect(page.getByRole('status').getByText('Saved')).toBeVisible();
  await rooms.getByRole('link', { name: 'Stash' }).click();
  await page.getByLabel('Search the stash').fill('slatewater');
  await expect(slatewater).toContainText('20 yd');
});

test('the dark look is chosen once and is still there after a start', async ({ page }) => {
  await openSettings(page);
  await page.getByLabel('Dark').check();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await page.reload();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');
  await expect(page.getByLabel('Dark')).toBeChecked();
  await page.getByLabel('Light').check();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'light');
});

test('a workshop that pays in yen sees no decimals, and in its prices none are taken', async ({ page }) => {
  await openSettings(page);
  await page.getByLabel('Currency', { exact: true }).fill('jpy');
  await expect(page.getByRole('status').getByText('Saved')).toBeVisible();
  const rooms = page.getByRole('navigation', { name: 'Rooms' });
  await rooms.getByRole('link', { name: 'Suppliers' }).click();
  await page.getByRole('button', { name: 'Add a supplier' }).first().click();
  const form = page.getByRole('dialog');
  await form.getByLabel('Name').fill('Tallow Lane');
  const delivery = form.getByLabel('Delivery', { exact: true });
  await delivery.fill('12.50');
  await delivery.blur();
  await expect(form.getByText('Delivery has decimal places, and JPY has none.')).toBeVisible();
  await delivery.fill('1,250');
  await form.getByRole('button', { name: 'Save the supplier' }).click();
  const row = page.getByRole('row', { name: /Tallow Lane/ });
  await expect(row).toContainText('1,250 JPY');
  await row.getByRole('button', { name: 'Edit Tallow Lane' }).click();
  await expect(page.getByRole('dialog').getByLabel('Delivery', { exact: true })).toHaveValue('1,250');
});
