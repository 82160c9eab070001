/** A hem bound and an elastic gathered: what they take follows from the edges that they are sewn to. */
import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';

async function openRoom(page: Page, room: string): Promise<void> {
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: new RegExp(`^${room}`) })
    .click();
}

test('a binding round the hem says how many strips it takes and is cut from its cloth', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page).toHaveURL(/\/cover$/);
  await openRoom(page, 'Plan');
  await page.getByRole('button', { name: 'Add a binding or a rib' }).click();
  const sheet = page.getByRole('dialog', { name: 'Add a binding or a rib' });
  await sheet.getByLabel('Cut from').selectOption({ label: 'trim' });
  await sheet.getByLabel('Another edge').selectOption({ label: 'Back: hem' });
  await sheet.getByLabel('Another edge').selectOption({ label: 'Front: hem' });
  await expect(sheet).toContainText(/One band, .* from 2 strips of .* joined on the diagonal\./);
  await sheet.getByLabel('What it is').selectOption({ label: 'Binding on the bias' });
  await expect(sheet).toContainText(/as a spiral from a square of \d+ mm\./);
  await expect(sheet.getByLabel('Name')).toHaveValue('Bias binding');
  await sheet.getByLabel('What it is').selectOption({ label: 'Rib, stretched on' });
  await expect(sheet).toContainText(/80 % of the .* that it is stretched on to\./);
  await sheet.getByLabel('What it is').selectOption({ label: 'Binding on the straight' });
  await sheet.getByLabel('Name').fill('Hem binding');
  await sheet.getByRole('button', { name: 'Add it' }).click();
  await expect(page.getByRole('button', { name: /^Hem binding, drawn to scale/ })).toBeVisible();
  await openRoom(page, 'Needs');
  await expect(page.getByText(/^Hem binding: One band, .* from 2 strips/)).toBeVisible();
});
