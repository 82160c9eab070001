/** Two coats on one stash: who comes first has it, and the order is kept. */
import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';
import { stopLaying } from './laying.ts';

async function openSeason(page: Page): Promise<void> {
  await page
    .getByRole('navigation', { name: 'Rooms' })
    .getByRole('link', { name: 'Season', exact: true })
    .click();
  await expect(page.getByRole('heading', { name: 'Season', level: 1 })).toBeVisible();
}

const planNames = (page: Page) =>
  page
    .getByRole('table')
    .first()
    .getByRole('row')
    .evaluateAll((rows) => rows.slice(1).map((row) => row.querySelector('a')?.textContent));

test('the first coat has the stash, the second what is left, and one list buys for both', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByText('This is the demo workshop.')).toBeVisible();
  await openSeason(page);
  const slate = page.getByRole('row', { name: /^2 Fenwalk coat in slate/ });
  const list = page.getByRole('region', { name: 'One list for the season' });
  await expect(list).toBeVisible();
  await expect(slate).toContainText(/Short in \d+ slots/);
  await stopLaying(page);
  await slate.getByText(/Short in/).click();
  await expect(slate).toContainText(/The batting is short by [\d.]+ m/);
  await expect(list.getByRole('row', { name: /^Brightpoint 75/ })).toContainText(
    'Fenwalk coat: needles; Fenwalk coat in slate: needles',
  );
  await expect(page.getByText('Material of the season').locator('..')).toContainText(/\d EUR/);

  // The other way round the slate coat has the batting to itself.
  await page.getByRole('button', { name: 'Fenwalk coat in slate earlier' }).click();
  await expect(async () =>
    expect(await planNames(page)).toEqual(['Fenwalk coat in slate', 'Fenwalk coat']),
  ).toPass();
  const first = page.getByRole('row', { name: /^1 Fenwalk coat in slate/ });
  await page.getByLabel('Coats of Fenwalk coat in slate').fill('1');
  await page.getByLabel('Coats of Fenwalk coat in slate').press('Enter');
  await expect(list).toBeVisible();
  await expect(first).not.toContainText('batting');
});

test('a plan is put into the season of the own workshop, taken out, and put in again after a start', async ({
  page,
  workshop,
}) => {
  await openSeason(page);
  await expect(page.getByText('No coat planned yet')).toBeVisible();
  await page.getByRole('link', { name: 'Go to your coats' }).click();
  await page.getByRole('button', { name: 'New coat' }).first().click();
  const form = page.getByRole('dialog', { name: 'New coat' });
  await form.getByLabel('Name').fill('Reedling');
  await form.getByRole('button', { name: 'Begin the plan' }).click();
  await expect(page.getByRole('heading', { name: 'Reedling', level: 1 })).toBeVisible();
  await openSeason(page);
  await page.getByLabel('Another plan').selectOption({ label: 'Reedling' });
  await page.getByRole('button', { name: 'Put it in last' }).click();
  await page.getByLabel('Coats of Reedling').fill('3');
  await page.getByLabel('Coats of Reedling').press('Enter');
  await expect(page.getByRole('row', { name: /^1 Reedling/ })).toContainText(/Short in \d slots/);

  const reopened = await workshop.reopen();
  await openSeason(reopened);
  await expect(reopened.getByLabel('Coats of Reedling')).toHaveValue('3');
  await reopened.getByRole('button', { name: 'Take out Reedling' }).click();
  await expect(reopened.getByText('Nothing is in the season yet.')).toBeVisible();
});
