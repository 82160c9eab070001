/** The quilting map: lines that meet at the seams, a piece turned, and a swatch in the place of the geometry. */
import { expect, test } from './door.ts';

test('the lines meet at the sides, and a swatch says how much larger to cut', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  const road = page.getByRole('region', { name: 'The road of this coat' });
  await road.getByRole('link', { name: /^Quilting/ }).click();
  await expect(page.getByRole('heading', { name: 'Quilting', level: 1 })).toBeVisible();

  const side = page.getByRole('row', { name: /^side seam|^side/i }).first();
  await expect(side).toContainText(/meet/);
  await expect(page.getByRole('img', { name: 'Back with its quilting lines' })).toBeVisible();
  const lines = page.getByRole('table', { name: 'Lines of Back from the hem' }).getByRole('row');
  expect(await lines.count()).toBeGreaterThan(8);
  // The first line stands one spacing above the hem, and so does the second above the first.
  await expect(lines.nth(1)).toHaveText('170 mm71.8 mm70 mm');
  await expect(lines.nth(2)).toHaveText('2140 mm143.5 mm70 mm');
  // The two shoulders slant differently, which no spacing mends.
  await expect(page.getByText('The lines meet at 4 of 5 seams.')).toBeVisible();
  await expect(page.getByRole('row', { name: /^Shoulder: the lines do not meet/ })).toContainText(
    /[1-9][\d.]* mm/,
  );

  // A rise measured with a ruler counts for its layers: arc over chord of 11 mm in 70 mm is 6.5 %.
  const two = page.getByRole('row', { name: /^2 layers of batting/ });
  const one = page.getByRole('row', { name: /^1 layer of batting/ });
  await expect(two).toContainText(/Back and Front/);
  await expect(two).toContainText(/2.5 %\s*estimated, 1 % to 5 %\s*2.5 %\s*estimated, 1 % to 5 %/);
  const rise = two.getByLabel('Rise of one face, 2 layers of batting');
  await rise.fill('1.1 cm');
  await rise.press('Enter');
  await expect(page.getByText('One face rises 11 mm over 2 layers of batting, as measured.')).toBeVisible();
  await expect(two).toContainText(/6.5 %\s*estimated, 1 % to 7 %\s*2.5 %/);
  await expect(one).toContainText(/estimated: 5.5 mm/);
  await rise.fill('60 mm');
  await rise.press('Enter');
  await expect(page.getByRole('alert')).toContainText('Rise of the quilting is 60 mm');
  await rise.press('Escape');

  // Lines of its own on one piece: they meet every second one beside them, and the seam says so.
  const own = page.getByLabel('Lines of Back apart');
  await own.fill('2 mm');
  await own.press('Enter');
  await expect(page.getByText('Distance of the lines of Back is too small')).toBeVisible();
  await own.fill('3.5 cm');
  await own.press('Enter');
  await expect(page.getByText('Lines of Back are now 35 mm apart.')).toBeVisible();
  await expect(lines.nth(2)).toHaveText(/^270 mm87.2 mm35 mm$/);
  await expect(side).toContainText('the lines of Back are nearer to each other');
  await expect(side).toContainText(/\d+ lines have no partner/);
  await own.fill('');
  await own.press('Enter');
  await expect(page.getByText('Lines of Back are 70 mm apart, as in the whole coat.')).toBeVisible();
  // The room is drawn anew below the message, with the 6.5 % of the rise that was measured.
  await expect(lines.nth(2)).toHaveText('2140 mm149 mm70 mm');

  await page.getByRole('button', { name: 'Measure a swatch, 2 layers of batting' }).click();
  const sheet = page.getByRole('dialog', { name: 'A swatch of 2 layers of batting' });
  await expect(sheet.getByLabel('Lines apart')).toHaveValue('70 mm');
  await sheet.getByLabel('Over the lines, before').fill('300 mm');
  await sheet.getByLabel('Over the lines, after').fill('320 mm');
  await sheet.getByLabel('Along the lines, before').fill('12 in');
  await sheet.getByLabel('Along the lines, after').fill('11 7/8 in');
  await sheet.getByLabel('Thickness').fill('14 mm');
  await sheet.getByRole('button', { name: 'Use these measures' }).click();
  await expect(sheet.getByRole('alert')).toContainText('The swatch over its lines grew in quilting');
  await sheet.getByLabel('Over the lines, after').fill('288 mm');
  await sheet.getByRole('button', { name: 'Use these measures' }).click();
  await expect(sheet).toBeHidden();
  await expect(two).toContainText(/4.2 %\s*as measured\s*1.1 %\s*as measured/);
  await expect(rise).toHaveValue('7 mm');
  await expect(one).toContainText(/estimated, 1 % to 5 %/);
  await two.getByRole('button', { name: 'Forget the swatch, 2 layers of batting' }).click();
  await expect(two).toContainText(/2.5 %\s*estimated/);

  await page.getByLabel('Lines of Back run').selectOption('along the grain');
  await expect(page.getByText('Back is quilted along.')).toBeVisible();
  await expect(page.getByRole('table', { name: 'Lines of Back from the edge' })).toBeVisible();

  // A piece that loses its lines can be given them again.
  await page.getByLabel('Lines of Back run').selectOption('not at all');
  await expect(page.getByRole('img', { name: 'Back with its quilting lines' })).toBeHidden();
  const plain = page.getByRole('region', { name: 'Pieces without lines' });
  await plain.getByLabel('Lines of Back run', { exact: true }).selectOption('across the grain');
  await expect(page.getByRole('img', { name: 'Back with its quilting lines' })).toBeVisible();
});
