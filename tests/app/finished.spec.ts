import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';

async function openFinished(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page).toHaveURL(/\/cover$/);
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: /^Finished/ })
    .click();
  await expect(page.getByRole('heading', { name: 'Finished', level: 1 })).toBeVisible();
}

function figure(page: Page, title: string) {
  return page.getByText(title, { exact: true }).locator('..');
}

test('a coat is weighed, and the maker’s own weight stands in place of the estimate until it is taken back', async ({
  page,
}) => {
  await openFinished(page);
  const weight = figure(page, 'One coat weighs');
  const estimated = /[\d.]+ kg/.exec((await weight.textContent()) ?? '')?.[0] ?? 'no weight';
  const rows = page.getByRole('region', { name: 'Weight by slot' }).getByRole('row');
  const cells = await rows.getByRole('cell', { name: / g$/ }).allTextContents();
  const grams = cells.map((text) => Number.parseFloat(text)).slice(0, -1);
  // The slots add up to the coat.
  expect(grams.reduce((sum, each) => sum + each, 0) / 1000).toBeCloseTo(Number.parseFloat(estimated), 2);

  await weight.getByRole('button', { name: 'I have weighed one' }).click();
  await weight.getByLabel('Weight of one coat').fill('a lot');
  await weight.getByRole('button', { name: 'Use this' }).click();
  await expect(weight.getByRole('alert').first()).toBeVisible();
  await weight.getByLabel('Weight of one coat').fill('1.135 kg');
  await weight.getByRole('button', { name: 'Use this' }).click();
  await expect(weight).toContainText('1.135 kg, as weighed');
  await expect(weight).toContainText(`Computed: ${estimated}`);
});

test('what is measured is taken back to the computed figure', async ({ page }) => {
  await openFinished(page);
  const warmth = figure(page, 'How warm it is');
  await expect(warmth).toContainText(/[\d.]+ to [\d.]+ clo/);
  await warmth.getByRole('button', { name: 'I have it measured' }).click();
  await warmth.getByLabel('Warmth of one coat').fill('2 tog');
  await warmth.getByRole('button', { name: 'Use this' }).click();
  await expect(warmth).toContainText('1.29 clo, as measured');
  await warmth.getByRole('button', { name: 'Go back to the computed one' }).click();
  await expect(warmth).toContainText('I have it measured');
});

test('the label is there for both markets, with what a share may differ by', async ({ page }) => {
  await openFinished(page);
  const label = page.getByRole('region', { name: 'Fibre label' });
  await expect(label).toContainText('Shell: 100% nylon');
  await expect(label).toContainText('Shell: 100 % polyamide');
  await label.getByText('How the shares came about').click();
  await expect(label).toContainText('Body lining: 100% cotton');
  await expect(label).toContainText('Sleeve lining: 100 % polyester');
  await expect(label.getByRole('row', { name: /Trim, wool/ })).toContainText(/80\.0 %77 % to 83 %/);
  await expect(label).toContainText('Yours to print or not: Trim.');
});

test('a coat for a child is told so, and each caution stands in one place of the road', async ({ page }) => {
  await openFinished(page);
  const care = page.getByRole('region', { name: 'Care' });
  await expect(care.getByRole('row', { name: /^Wash/ })).toContainText('hand washtrim');
  await expect(care.getByRole('row', { name: /^Dry clean/ })).toContainText('do not dry cleanshell, batting');
  await expect(care).toContainText('Hand wash cold (30 °C, 86 °F).');
  await expect(care).toContainText('Dry flat. Do not tumble dry.');
  await expect(care).toContainText('A hot iron melts nylon');
  const selling = page.getByRole('region', { name: 'Before it is sold' });
  await expect(selling).toContainText('If it is for a child: no drawstring');
  await expect(selling).toContainText('The law of the place where it is sold decides');
  await selling.getByLabel('This coat is for a child').check();
  await expect(selling).toContainText('This coat is for a child: no drawstring');
  await expect(page.getByText('Rotary blades:')).toHaveCount(0);
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: /^Lay/ })
    .click();
  await expect(page.getByText('Rotary blades:')).toHaveCount(1);
});
