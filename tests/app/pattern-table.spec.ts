/** A maker who publishes a pattern asks what each size takes on each width, sees how a figure was got, and takes the table along. */
import { readFile } from 'node:fs/promises';
import Papa from 'papaparse';
import { expect, test } from './door.ts';

test('the table of requirements is found by lays, explained, saved, and stands again when the maker comes back', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await page.getByRole('link', { name: /^Pattern table/ }).click();
  await expect(page.getByRole('heading', { name: 'Pattern table', level: 1 })).toBeVisible();
  await expect(page.getByText('The plan holds one size.')).toBeVisible();
  for (const material of ['Batting', 'Pocketing', 'Trim', 'Sleeve lining'])
    await page.getByRole('checkbox', { name: material }).uncheck();
  await page.getByLabel('Widths of the cloth').fill('wide');
  await page.getByLabel('Widths of the cloth').blur();
  await expect(page.getByRole('alert')).toContainText('Width of the cloth');
  await page.getByLabel('Widths of the cloth').fill('30 cm; 150 cm');
  await page.getByLabel('Shown in').selectOption('Both');
  await page.getByLabel('Time for the table').selectOption('15 seconds');
  const shell = page.getByRole('region', { name: 'Shell' });
  await expect(shell.getByText('not found yet')).toHaveCount(2);
  await expect(shell.getByText('too narrow')).toHaveCount(2);

  // The first lay found is kept once the maker has seen how many are still to come.
  const seen = Promise.withResolvers<void>();
  await page.route('**/call', async (route) => {
    if (route.request().postDataJSON().call === 'keepLay') await seen.promise;
    await route.continue();
  });
  await page.getByRole('button', { name: 'Find the lengths' }).click();
  await expect(page.getByRole('progressbar', { name: 'Lays found' })).toBeVisible();
  seen.resolve();
  await expect(page.getByText('not found yet')).toHaveCount(0);
  await expect(page.getByRole('progressbar', { name: 'Lays found' })).toBeHidden();
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

test('sizes that were drafted as plans of their own come into one table, and no coat more is made', async ({
  page,
}) => {
  const begin = async (name: string, size: string) => {
    await page.getByRole('link', { name: 'Coats', exact: true }).click();
    await page.getByRole('button', { name: 'New coat' }).first().click();
    const form = page.getByRole('dialog', { name: 'New coat' });
    await form.getByLabel('Name').fill(name);
    await form.getByLabel('Size').fill(size);
    await form.getByRole('button', { name: 'Begin the plan' }).click();
    await expect(page.getByRole('heading', { name, level: 1 })).toBeVisible();
    await page.getByRole('button', { name: 'Add a shape' }).first().click();
    const strip = page.getByRole('dialog', { name: 'Add a shape' });
    await strip.getByLabel('Name').fill('Panel');
    await strip.getByLabel('Length').fill(`${Number(size) * 20} mm`);
    await strip.getByLabel('Width', { exact: true }).fill('400 mm');
    await strip.getByRole('button', { name: 'Add the strip' }).click();
    await expect(page.getByRole('button', { name: /^Panel, drawn to scale/ })).toBeVisible();
  };
  await begin('Wader', '38');
  await begin('Reedling, size 42', '42');
  await begin('Reedling, size 44', '44');
  await begin('Reedling, size 40', '40');
  await page.getByRole('link', { name: /^Pattern table/ }).click();
  await page.getByRole('button', { name: 'Add sizes' }).click();
  const sheet = page.getByRole('dialog', { name: 'Add sizes' });
  await expect(sheet.getByRole('checkbox', { name: /^Size 42/ })).toBeChecked();
  await expect(sheet.getByRole('checkbox', { name: /^Size 44/ })).toBeChecked();
  await expect(sheet.getByRole('checkbox', { name: /^Size 38/ })).not.toBeChecked();
  await sheet.getByRole('button', { name: 'Add to the table' }).click();
  await expect(sheet).toBeHidden();
  await expect(page.getByText('Sizes 40, 42, 44.')).toBeVisible();
  await expect(page.getByRole('link', { name: /^Plan/ })).toContainText('1 ×');

  await page.getByLabel('Widths of the cloth').fill('150 cm');
  await page.getByLabel('Nap').selectOption('With nap');
  await page.getByRole('button', { name: 'Find the lengths' }).click();
  // A panel is cut once: its length is what its size takes.
  for (const [size, length] of [
    ['40', '0.9 m'],
    ['42', '0.9 m'],
    ['44', '1.0 m'],
  ] as const) {
    await expect(page.getByRole('row', { name: new RegExp(`^${size} `) }).first()).toContainText(length);
  }
});
