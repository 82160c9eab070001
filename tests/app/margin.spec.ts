import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';

const whileLaying = { timeout: 45_000 };

async function goToStep(page: Page, name: string): Promise<void> {
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: new RegExp(`^${name}`) })
    .click();
  await expect(page.getByRole('heading', { name, level: 1 })).toBeVisible();
}

test('a margin for the shell is put on its length, and the cover says where it is held', async ({ page }) => {
  test.setTimeout(150_000);
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page).toHaveURL(/\/cover$/);
  await goToStep(page, 'Needs');
  const shell = page
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name: 'shell', exact: true }) });
  await shell.getByText('Margin for safety', { exact: true }).click();
  await shell.getByLabel('Length for the shell').fill('60 cm');
  await shell.getByLabel('Length for the shell').press('Enter');
  await expect(page.getByText('A margin of 600 mm for the shell.')).toBeVisible();
  await expect(shell).toContainText(/With a margin of 600 mm: [\d.]+ m, held ready or bought/, whileLaying);
  await goToStep(page, 'Cover');
  const card = page
    .getByRole('list', { name: 'Cover by slot' })
    .getByRole('listitem', { name: 'Shell', exact: true });
  await expect(card).toContainText(/margin/, whileLaying);
});
