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

test('the code of a shelf label, scanned like typing with Enter at its end, opens its item', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await page.getByRole('link', { name: 'Stash' }).click();
  await page.getByText('Peatwater nylon', { exact: true }).first().click();
  await expect(page.getByRole('heading', { name: /Peatwater nylon/ })).toBeVisible();
  const itemId = new URL(page.url()).hash.split('/').at(-1);
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page
      .getByRole('button', { name: 'Shelf labels' })
      .click()
      .then(() => page.getByRole('checkbox', { name: /Peatwater nylon/ }).isChecked())
      .then(() => page.getByRole('button', { name: 'Save PDF' }).click()),
  ]);
  expect(download.suggestedFilename()).toMatch(/shelf-labels\.pdf$/);
  await expect(page.getByText(/^Saved: \d labels?\.$/)).toBeVisible();
  await page.keyboard.press('Escape');
  await page.getByRole('link', { name: 'Suppliers' }).click();
  await page.keyboard.press('Control+k');
  const box = page.getByRole('combobox', { name: 'Find' });
  await expect(box).toBeFocused();
  await page.keyboard.insertText(`boltbaffle:item/${itemId}`);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: /Peatwater nylon/ })).toBeVisible();
  await page.keyboard.press('Control+k');
  await box.fill('boltbaffle:item/nowhere');
  await expect(page.getByText('No item of this workshop has that code')).toBeVisible();
});
