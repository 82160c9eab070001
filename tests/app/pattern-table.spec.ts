/** A maker who publishes a pattern asks what each size takes on each width, sees how a figure was got, and takes the table along. */
import { readFile } from 'node:fs/promises';
import Papa from 'papaparse';
import { expect, test } from './door.ts';

test('the table of requirements is found by lays, explained, saved, and stands again when the maker comes back', async ({
  page,
}) => {
  test.setTimeout(300_000);
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await page.getByRole('link', { name: /^Pattern table/ }).click();
  await expect(page.getByRole('heading', { name: 'Pattern table', level: 1 })).toBeVisible();
  await expect(page.getByText('The plan holds one size.')).toBeVisible();
  for (const material of ['Batting', 'Pocketing', 'Trim', 'Sleeve lining'])
    await page.getByRole('checkbox', { name: material }).uncheck();
  await page.getByLabel('Widths of the cloth').fill('wide');
  await expect(page.getByRole('alert')).toContainText('Width of the cloth');
  await page.getByLabel('Widths of the cloth').fill('30 cm; 150 cm');
  await page.getByLabel('Shown in').selectOption('Both');
  await page.getByLabel('Time for the table').selectOption('15 seconds');
  const shell = page.getByRole('region', { name: 'Shell' });
  await expect(shell.getByText('not found yet')).toHaveCount(2);
  await expect(shell.getByText('too narrow')).toHaveCount(2);

  await page.getByRole('button', { name: 'Find the lengths' }).click();
  await expect(page.getByRole('progressbar', { name: 'Lays found' })).toBeVisible();
  await expect(page.getByText('not found yet')).toHaveCount(0, { timeout: 120_000 });
  await expect(page.getByRole('progressbar', { name: 'Lays found' })).toBeHidden({ timeout: 90_000 });
  const row = shell.getByRole('row', { name: /^EU 40/ });
  await expect(row).toContainText(/\d\.\d m(\d+ )?\d(\/\d)? yd/);
  await row.getByRole('button').last().click();
  await expect(shell.getByRole('status')).toContainText(
    /Size EU 40, 150 cm with nap: [\d.]+ m, \d+ % of the cloth used; .*seed 1/,
  );

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save as CSV' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('fenwalk-coat-what-each-size-takes.csv');
  const { data } = Papa.parse<Record<string, string>>(await readFile(await download.path(), 'utf8'), {
    header: true,
  });
  expect(data.map(({ material, size }) => [material, size])).toEqual([
    ['Shell', 'EU 40'],
    ['Body lining', 'EU 40'],
  ]);
  const metres = data[0]?.['150 cm, with nap (m)'] ?? '';
  await expect(row.getByRole('button').last()).toContainText(`${metres} m`);
  expect(data[0]?.['30 cm, with nap (m)']).toBe('too narrow');

  await page.getByRole('link', { name: /^Plan/ }).click();
  await expect(page.getByRole('heading', { name: 'Pattern table', level: 1 })).toBeHidden();
  await page.getByRole('link', { name: /^Pattern table/ }).click();
  await expect(
    shell
      .getByRole('row', { name: /^EU 40/ })
      .getByRole('button')
      .last(),
  ).toContainText(`${metres} m`);
});
