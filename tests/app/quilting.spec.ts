/** The quilting map: lines that meet at the seams, a piece turned, and a swatch in the place of the geometry. */
import { expect, test } from './door.ts';

test('the lines meet at the sides, and a swatch says how much larger to cut', async ({ page }) => {
  test.setTimeout(240_000);
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  const road = page.getByRole('region', { name: 'The road of this coat' });
  await road.getByRole('link', { name: /^Quilting/ }).click();
  await expect(page.getByRole('heading', { name: 'Quilting', level: 1 })).toBeVisible();

  const side = page.getByRole('row', { name: /^side seam|^side/i }).first();
  await expect(side).toContainText(/meet/);
  await expect(page.getByRole('img', { name: 'Back with its quilting lines' })).toBeVisible();
  const offsets = page.getByRole('list', { name: 'Lines of Back from the hem' }).getByRole('listitem');
  expect(await offsets.count()).toBeGreaterThan(8);
  await expect(offsets.first()).toContainText(/\d mm$/);

  await page.getByRole('button', { name: 'Measured on a swatch' }).click();
  const sheet = page.getByRole('dialog', { name: 'Measured on a swatch' });
  await sheet.getByLabel('Along the grain, before').fill('300 mm');
  await sheet.getByLabel('Along the grain, after').fill('320 mm');
  await sheet.getByLabel('Across the grain, before').fill('12 in');
  await sheet.getByLabel('Across the grain, after').fill('11 7/8 in');
  await sheet.getByRole('button', { name: 'Use these measures' }).click();
  await expect(sheet.getByRole('alert')).toContainText('The swatch along the grain grew in quilting');
  await sheet.getByLabel('Along the grain, after').fill('288 mm');
  await sheet.getByRole('button', { name: 'Use these measures' }).click();
  await expect(sheet).toBeHidden();
  await expect(page.getByText('as your swatch measured it')).toContainText('4.2 %');

  await page.getByLabel('Lines of Back run').selectOption('along the grain');
  await expect(page.getByText('Back is quilted along.')).toBeVisible();
  await expect(page.getByRole('list', { name: 'Lines of Back from the edge' })).toBeVisible();
});
