/** A workshop that is opened for the first time: its units and its currency. */
import { expect, test } from './door.ts';

test.describe('where inches and dollars are usual', () => {
  test.use({ locale: 'en-US' });

  test('a new workshop proposes them, takes what I choose instead, and asks no more', async ({
    page,
    workshop,
  }) => {
    const units = page.getByRole('region', { name: 'Your units and currency' });
    await expect(units.getByLabel('Imperial')).toBeChecked();
    await expect(units.getByLabel('Currency')).toHaveValue('USD');
    await units.getByLabel('Currency').selectOption('CAD');
    await units.getByLabel('Metric').check();
    await expect(units.getByLabel('Metric')).toBeChecked();
    await units.getByRole('button', { name: 'Keep these' }).click();
    await expect(units).toHaveCount(0);
    const again = await workshop.reopen();
    await expect(again.getByRole('heading', { level: 1 })).toBeVisible();
    await expect(again.getByRole('region', { name: 'Your units and currency' })).toHaveCount(0);
    await again.getByRole('link', { name: 'Settings' }).click();
    await expect(again.getByLabel('Metric')).toBeChecked();
    await expect(again.getByLabel('Currency', { exact: true })).toHaveValue('CAD');
  });

  test('whoever goes on without a word works in them', async ({ page, workshop }) => {
    await page.getByRole('button', { name: 'Put your first cloth on the shelf' }).click();
    await page.getByRole('button', { name: 'New item' }).click();
    const sheet = page.getByRole('dialog', { name: 'New item' });
    await sheet.getByLabel('Name').fill('Hollin taffeta');
    await sheet.getByLabel('Width', { exact: true }).fill('58');
    await sheet.getByRole('button', { name: 'Add to the stash' }).click();
    await expect(page.getByRole('article', { name: 'Hollin taffeta' }).getByText('58 in')).toBeVisible();
    const again = await workshop.reopen();
    await again.getByRole('link', { name: 'Settings' }).click();
    await expect(again.getByLabel('Imperial')).toBeChecked();
    await expect(again.getByLabel('Currency', { exact: true })).toHaveValue('USD');
  });
});
