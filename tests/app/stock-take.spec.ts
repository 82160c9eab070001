import { expect, test } from './door.ts';

test('the shelf is counted in one go, and an item is put away and brought back', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('heading', { name: 'Cover', level: 1 })).toBeVisible();
  await page.getByRole('navigation').getByRole('link', { name: 'Stash' }).click();
  await page.getByRole('button', { name: 'Take stock' }).click();
  const count = page.getByRole('region', { name: 'Stock-take' });
  const label = count.getByRole('listitem', { name: 'Woven name label', exact: true });
  const cord = count.getByRole('listitem', { name: 'Springtail cord', exact: true });
  await expect(label).toContainText('39 pcs booked');
  await label.getByRole('textbox').fill('36');
  await expect(label).toContainText('39 pcs booked, 3 pcs less counted');
  await cord.getByRole('textbox').first().fill('9');
  await expect(cord).toContainText('9 pcs booked, as counted');
  await count.getByRole('button', { name: 'Book 1 difference' }).click();
  await expect(count.getByRole('status')).toHaveText('2 counted, 1 corrected.');
  await expect(label).toContainText('36 pcs booked');

  await page.getByRole('button', { name: 'Back to the list' }).click();
  await page.getByRole('searchbox', { name: 'Search the stash' }).fill('woven name');
  await page.getByRole('option', { name: /Woven name label/ }).click();
  const item = page.getByRole('article', { name: 'Woven name label' });
  await expect(item).toContainText('Counted 3 pcs less than was booked: stock-take');
  await item.getByRole('button', { name: 'Put away' }).click();
  await expect(item).toContainText('Put away: it is in no list');
  await expect(page.getByRole('option', { name: /Woven name label/ })).toHaveCount(0);
  await page.getByRole('button', { name: 'Show what is put away' }).click();
  await expect(page.getByText('1 item put away')).toBeVisible();
  await page.getByRole('option', { name: /Woven name label/ }).click();
  await item.getByRole('button', { name: 'Bring back' }).click();
  await expect(item.getByRole('button', { name: 'Put away' })).toBeVisible();
  await page.getByRole('button', { name: 'Show the shelf' }).click();
  await expect(page.getByRole('option', { name: /Woven name label/ })).toBeVisible();
});
