/** While lays are still looked for, every room that one could buy from says that its figures may yet change. */
import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';
import { stopLaying, whileLaying } from './laying.ts';

async function openDemoCoat(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('heading', { name: 'Cover', level: 1 })).toBeVisible();
  await expect(page.getByRole('list', { name: 'Cover by slot' })).toBeVisible(whileLaying);
}

async function goToStep(page: Page, name: string): Promise<void> {
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: new RegExp(`^${name}`) })
    .click();
  await expect(page.getByRole('heading', { name, level: 1 })).toBeVisible();
}

const shorter = /(another|up to) \d+( to \d+)? %/;

test('a list from lays stopped soon says by how much it usually still gets shorter, until they are looked for longer', async ({
  page,
}) => {
  // A busy machine takes its time for all the lays of six coats.
  test.setTimeout(300_000);
  await openDemoCoat(page);
  await stopLaying(page);
  const note = page.getByTestId('still-falls');
  await expect(note).toContainText('The lays were looked for shortly');
  await expect(note).toContainText(shorter);
  await goToStep(page, 'Lay');
  await expect(note).toContainText('Looked for shortly: usually');
  await goToStep(page, 'To buy');
  await expect(note).toContainText('This list may still get shorter');
  await expect(note).toContainText(shorter);
  await note.getByText('This list may still get shorter').click();
  await expect(note.getByText('measured', { exact: true })).toBeVisible();
  await goToStep(page, 'Lay');
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(note).toContainText('Still improving: usually');
  await expect(note).toHaveCount(0, { timeout: 180_000 });
  await goToStep(page, 'To buy');
  await expect(page.getByText('In all', { exact: true })).toBeVisible();
  await expect(note).toHaveCount(0);
});
