/** One search for everything, by a key from anywhere. */
import { expect, test } from './door.ts';

test('Ctrl K, a few letters, Enter: I am where I wanted to be', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('heading', { name: 'Cover', level: 1 })).toBeVisible();
  await page.keyboard.press('Control+k');
  const box = page.getByRole('combobox', { name: 'Find' });
  await expect(box).toBeFocused();
  await box.fill('suppl');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Suppliers', level: 1 })).toBeVisible();
  await page.keyboard.press('Control+k');
  await box.fill('peatwater');
  await expect(page.getByRole('option', { name: 'Peatwater nylon cloth, dark olive' })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /Peatwater nylon/ })).toBeVisible();
  await page.keyboard.press('Control+k');
  await box.fill('xyzzy');
  await expect(page.getByText('Nothing is named “xyzzy”.')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(box).toHaveCount(0);
});
