/** What leaves the window on paper: the list as PDF says what the screen says, and print shows the list alone. */
import { readFile } from 'node:fs/promises';
import { pdfSheets } from '../core/paper/pdf-text.ts';
import { expect, test } from './door.ts';
import { stopLaying } from './laying.ts';

test('the shopping list is saved as PDF and printed without the room around it', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await page.getByRole('link', { name: /^To buy/ }).click();
  const total = page.getByText('In all', { exact: true }).locator('..');
  await expect(total).toBeVisible();
  await stopLaying(page);
  const [, amount = 'none'] = /([\d,.]+) EUR/.exec((await total.textContent()) ?? '') ?? [];

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as PDF' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('fenwalk-coat-to-buy.pdf');
  const [sheet] = await pdfSheets(new Uint8Array(await readFile(await download.path())));
  // The demo measures in metres: its paper is A4.
  expect([sheet?.width, sheet?.height]).toEqual([595.28, 841.89]);
  const texts = sheet?.texts.map(({ text }) => text) ?? [];
  expect(texts).toContain('Peatwater nylon');
  expect(texts).toContain(`${amount} EUR`);
  expect(texts).toContain('Page 1 of 1');

  const paper = page.locator('[data-paper]');
  await expect(paper).toHaveCount(0);
  await page.evaluate(() => {
    document.documentElement.dataset.theme = 'dark';
    window.dispatchEvent(new Event('beforeprint'));
  });
  await page.emulateMedia({ media: 'print' });
  await expect(paper).toBeVisible();
  await expect(page.getByRole('navigation', { name: 'Rooms' })).toBeHidden();
  await expect(paper).toContainText('Peatwater nylon');
  await expect(paper).toContainText(`${amount} EUR`);
  const colours = await paper.evaluate((element) => [
    getComputedStyle(element).color,
    getComputedStyle(document.body).backgroundColor,
  ]);
  expect(colours).toEqual(['rgb(23, 38, 42)', 'rgb(255, 255, 255)']);
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await expect(paper).toHaveCount(0);
});

test('the cost sheet leaves the window with the figures that the room shows', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await page.getByRole('link', { name: /^Cost/ }).click();
  await expect(page.getByRole('row', { name: /^The batch/ })).toBeVisible();
  await stopLaying(page);
  const batch = (await page.getByRole('row', { name: /^The batch/ }).textContent()) ?? '';
  const [, amount = 'none'] = /([\d,.]+) EUR\s*$/.exec(batch) ?? [];

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as PDF' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('fenwalk-coat-cost.pdf');
  const sheets = await pdfSheets(new Uint8Array(await readFile(await download.path())));
  const texts = sheets.flatMap((sheet) => sheet.texts.map(({ text }) => text));
  expect(texts).toContain('Material of the batch');
  expect(texts).toContain(`${amount} EUR`);
  expect(texts).toContain('Retail');
});

test('the cutting sheet leaves the Lay room and the Cutting room with what lies where', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await page.getByRole('link', { name: /^Lay/ }).click();
  await expect(page.getByTestId('lay-words')).toBeVisible();
  await stopLaying(page);
  const save = async () => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save cutting sheet' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('fenwalk-coat-cutting-sheet.pdf');
    const sheets = await pdfSheets(new Uint8Array(await readFile(await download.path())));
    return { sheets, texts: sheets.flatMap((sheet) => sheet.texts.map(({ text }) => text)) };
  };
  const planned = await save();
  expect([planned.sheets[0]?.width, planned.sheets[0]?.height]).toEqual([841.89, 595.28]);
  expect(planned.texts).toContain('Shell: Peatwater nylon, dark olive');
  expect(planned.texts.some((text) => text.startsWith('To buy.'))).toBe(true);
  expect(planned.texts).toContain('Where the pieces lie');

  await page.getByRole('link', { name: /^Cutting/ }).click();
  await page.getByRole('checkbox', { name: 'Shell', exact: true }).uncheck();
  const cut = await save();
  // What is not there yet, and what is left out, is not cut now.
  expect(cut.texts.some((text) => text.startsWith('To buy.'))).toBe(false);
  expect(cut.texts).not.toContain('Shell: Peatwater nylon, dark olive');
  expect(cut.texts).toContain('Where the pieces lie');
});
