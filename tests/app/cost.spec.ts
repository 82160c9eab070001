/** From what a coat costs to what it is sold for, as the maker walks it. */
import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';

/** A lay of a batch takes its time on a small machine. */
const whileLaying = { timeout: 60_000 };

async function openCost(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('list', { name: 'Cover by slot' })).toBeVisible(whileLaying);
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: /^Cost/ })
    .click();
  await page.getByRole('button', { name: 'Stop here' }).click();
  await expect(page.getByText('Stopped.')).toBeVisible(whileLaying);
}

/** The first amount of a row: that of one coat. */
async function coatMinor(page: Page, row: string): Promise<number> {
  const text = (await page.getByRole('row', { name: new RegExp(`^${row} `) }).textContent()) ?? '';
  return Math.round(Number(/([\d,]+\.\d\d) EUR/.exec(text)?.[1]?.replace(/,/g, '')) * 100);
}

test('a price is made of material, work and overhead, and changes with the rules', async ({ page }) => {
  test.setTimeout(120_000);
  await openCost(page);
  await page.getByRole('tab', { name: 'Price' }).click();
  await page.getByLabel('Overhead is').selectOption('left out');
  await page.getByLabel('Rate of an hour').fill('19.80');
  await page.getByLabel('Rate of an hour').press('Enter');
  await page.getByLabel('Work on one coat, your estimate').fill('7.5 h');
  await page.getByLabel('Work on one coat, your estimate').press('Enter');
  await expect(page.getByText('The work on one coat is estimated at 7:30 h.')).toBeVisible();
  await expect(page.getByRole('row', { name: /^Work / })).toContainText('148.50 EUR');
  await page.getByLabel('Wholesale by').selectOption('mark-up');
  await page.getByLabel('Wholesale mark-up').fill('60 %');
  await page.getByLabel('Wholesale mark-up').press('Enter');
  await expect(page.getByRole('row', { name: /^Wholesale / })).toContainText('cost × (1 + 60 %)');
  const materialMinor = await coatMinor(page, 'Material');
  const costMinor = await coatMinor(page, 'Cost');
  expect(materialMinor).toBeGreaterThan(1000);
  expect(costMinor).toBe(materialMinor + 14_850);
  expect(Math.abs((await coatMinor(page, 'Wholesale')) - costMinor * 1.6)).toBeLessThanOrEqual(0.5);

  // The rules are the workshop's: they are there in the next window too.
  await page.reload();
  await page.getByRole('tab', { name: 'Price' }).click(whileLaying);
  await expect(page.getByLabel('Rate of an hour')).toHaveValue('19.80');
  await expect(page.getByLabel('Work on one coat, your estimate')).toHaveValue('7:30 h');
  await expect(page.getByLabel('Wholesale mark-up')).toHaveValue('60 %');
});
