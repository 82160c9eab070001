import { readFile } from 'node:fs/promises';
import Papa from 'papaparse';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './door.ts';
import { stopLaying } from './laying.ts';

async function openDemoCoat(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page).toHaveURL(/\/cover$/);
  await expect(page.getByRole('heading', { name: 'Cover', level: 1 })).toBeVisible();
  await expect(slotCard(page, 'Shell')).toBeVisible();
}

function slotCard(page: Page, name: string): Locator {
  return page.getByRole('list', { name: 'Cover by slot' }).getByRole('listitem', { name, exact: true });
}

async function goToStep(page: Page, name: string): Promise<void> {
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: new RegExp(`^${name}`) })
    .click();
  await expect(page.getByRole('heading', { name, level: 1 })).toBeVisible();
}

async function textOf(place: Locator): Promise<string> {
  return (await place.textContent()) ?? '';
}

async function saved(page: Page, button: string): Promise<{ name: string; text: string }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') };
}

test('the shell is short; a roll comes in, and the shell is covered', async ({ page }) => {
  await openDemoCoat(page);
  const shell = slotCard(page, 'Shell');
  await expect(shell).toContainText('Short');
  await expect(shell).toContainText(/The shell is short by [\d.]+ m of 1\.47 m cloth \(Peatwater nylon\)/);
  await expect(shell.getByRole('list', { name: 'What is used' })).toContainText(/Missing: [\d.]+ m/);
  // What asks for something stands before what does not.
  await expect(page.getByRole('list', { name: 'Cover by slot' }).getByRole('listitem').first()).toContainText(
    'Short',
  );

  await shell.getByRole('link', { name: 'Peatwater nylon' }).click();
  await page.getByRole('button', { name: 'Receive' }).click();
  const sheet = page.getByRole('dialog', { name: 'Receive Peatwater nylon' });
  await sheet.getByLabel('Supplier').fill('Quillstone Cloth');
  await sheet.getByLabel('Dye lot').fill('P-2311');
  await sheet.getByLabel('Price of the lot').fill('391.20');
  await sheet.getByLabel('Length', { exact: true }).fill('34.5');
  await sheet.getByRole('button', { name: 'Put on the shelf' }).click();
  await expect(sheet).toBeHidden();

  await page.goBack();
  await expect(shell).toContainText('Covered');
  await expect(shell).toContainText(/m of the 34\.5 m free in dye lot P-2311/);
  await goToStep(page, 'To buy');
  await expect(page.getByRole('row', { name: /Peatwater nylon/ })).toHaveCount(0);
  await expect(page.getByRole('row').first()).toBeVisible();
});

test('the shopping list is saved as CSV and says what the screen says', async ({ page }) => {
  await openDemoCoat(page);
  await goToStep(page, 'To buy');
  // The list holds still once nothing is looked for any more.
  await stopLaying(page);
  const total = /([\d,.]+) EUR/.exec(
    await textOf(page.getByText('In all', { exact: true }).locator('..')),
  )?.[1];

  const { name, text } = await saved(page, 'Save as CSV');
  expect(name).toBe('fenwalk-coat-to-buy.csv');
  const table = Papa.parse<Record<string, string>>(text, { header: true });
  expect(table.errors).toEqual([]);
  const shell = table.data.find((row) => row['for slots'] === 'shell');
  expect(shell?.item).toBe('Peatwater nylon');
  expect(shell?.buy).toMatch(/^[\d.]+ m of 1\.47 m width$/);
  const sumMinor = table.data.reduce((sum, row) => sum + Math.round(Number(row['price (EUR)']) * 100), 0);
  expect((sumMinor / 100).toFixed(2)).toBe(total?.replace(',', ''));
  for (const row of table.data.filter(({ item }) => item !== 'Delivery')) {
    await expect(page.getByRole('row', { name: row.item ?? 'no item' })).toContainText(row.buy ?? 'no units');
  }
});

test.describe('lays that go on until they are stopped', () => {
  test.use({ layPace: 'unending' });

  test('a lay is stopped, keeps what it has found, and can be looked for again', async ({ page }) => {
    await openDemoCoat(page);
    await slotCard(page, 'Shell').getByRole('link', { name: 'See the lay' }).click();
    await expect(page.getByRole('tab', { name: /^Shell/ })).toHaveAttribute('aria-selected', 'true');
    await expect(page.getByRole('button', { name: 'On your stash' })).toHaveAttribute('aria-pressed', 'true');
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await expect(
      page.getByText('Stopped. The figures are those of the best lays found so far.'),
    ).toBeVisible();

    await page.getByRole('tab', { name: /^Body lining/ }).click();
    await page.getByRole('button', { name: 'What the coats need' }).click();
    const drawing = page.getByRole('img', { name: /^Lay of the body lining/ });
    const wordsBefore = await textOf(page.getByTestId('lay-words'));
    expect(wordsBefore).toMatch(
      /^[\d.]+ m of washed cloth, [\d.]+ m unwashed, \d+ % of the cloth used; no lay can be shorter( than [\d.]+ m)?; looked for/,
    );
    // Six coats: the drawing has every piece of the lining, and the keys walk through them.
    expect(await drawing.locator('[data-piece]').count()).toBeGreaterThan(12);
    await drawing.press('ArrowRight');
    await expect(page.getByText(/, (as drawn|turned \d+°)/).first()).toBeAttached();

    await page.getByRole('button', { name: 'Look 10 s longer' }).click();
    const stop = page.getByRole('button', { name: 'Stop', exact: true });
    await expect(stop).toBeVisible();
    await stop.click();
    await expect(page.getByRole('button', { name: 'Look 10 s longer' })).toBeVisible();
    const usedM = (words: string) => Number(/^[\d.]+/.exec(words)?.[0]);
    expect(usedM(await textOf(page.getByTestId('lay-words')))).toBeLessThanOrEqual(usedM(wordsBefore));
  });
});

test.describe('lays by the clock of the machine and on all its cores', () => {
  test.use({ layPace: 'real' });

  test('the drawing of a lay is saved in millimetres', async ({ page }) => {
    await openDemoCoat(page);
    await goToStep(page, 'Lay');
    const { name, text } = await saved(page, 'Save drawing');
    expect(name).toBe('fenwalk-coat-shell-lay.svg');
    expect(text).toMatch(/^<svg [^>]*width="[\d.]+mm" height="[\d.]+mm"/);
    expect(text).toContain('>Hood side</text>');
  });
});

test('a like cloth from the shelf takes the place of the short one, and that can be taken back', async ({
  page,
}) => {
  await openDemoCoat(page);
  const shell = slotCard(page, 'Shell');
  await shell.getByRole('button', { name: /^Use Slatewater nylon/ }).click();
  await expect(page.getByText('Shell is now Slatewater nylon.')).toBeVisible();
  await expect(shell.getByRole('link', { name: 'Slatewater nylon' })).toBeVisible();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(shell.getByRole('link', { name: 'Peatwater nylon' })).toBeVisible();
});

test('the cost says what a coat and the batch cost, slot by slot', async ({ page }) => {
  await openDemoCoat(page);
  await goToStep(page, 'Cost');
  await stopLaying(page);
  const amount = (text: string) =>
    Math.round(Number(/([\d,]+\.\d\d) EUR/.exec(text)?.[1]?.replace(',', '')) * 100);
  const batch = amount(await textOf(page.getByText('The batch of 6 coats').locator('..')));
  const coat = amount(await textOf(page.getByText('One coat', { exact: true }).locator('..')));
  expect(batch).toBeGreaterThan(0);
  expect(Math.abs(coat * 6 - batch)).toBeLessThan(6);
  await expect(page.getByRole('row', { name: /^Shell Peatwater/ })).toContainText('To buy');
});
