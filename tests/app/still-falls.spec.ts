/** While lays are still looked for, every room that one could buy from says that its figures may yet change. */
import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';
import { stopLaying } from './laying.ts';

async function openDemoCoat(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('heading', { name: 'Cover', level: 1 })).toBeVisible();
  await expect(page.getByRole('list', { name: 'Cover by slot' })).toBeVisible();
}

async function goToStep(page: Page, name: string): Promise<void> {
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: new RegExp(`^${name}`) })
    .click();
  await expect(page.getByRole('heading', { name, level: 1 })).toBeVisible();
}

const shorter = /(another|up to) \d+( to \d+)? %/;

// Lays go on until they are stopped, so that what is said meanwhile stands as long as it is looked at.
test.use({ layPace: 'unending' });

test('a list from lays stopped soon says by how much it usually still gets shorter, until they are looked for longer', async ({
  page,
  workshop,
}) => {
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
  await stopLaying(page);
  await expect(note).toContainText('Looked for shortly: usually');
  workshop.setLayPace('soon');
  await page.getByRole('button', { name: 'Go on' }).click();
  await expect(note).toHaveCount(0);
  await goToStep(page, 'To buy');
  await expect(page.getByText('In all', { exact: true })).toBeVisible();
  await expect(note).toHaveCount(0);
});
