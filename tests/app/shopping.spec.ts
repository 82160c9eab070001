/** A trip to the shops: the list aisle by aisle, ticked off, and what was bought put on the shelf in one step at its true price. */
import { expect, test } from './door.ts';

test('what is ticked stays ticked, and comes onto the shelf in one step as it was truly bought', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await page.getByRole('link', { name: /^To buy/ }).click();
  await page.getByRole('button', { name: 'In the shop' }).click();
  const list = page.getByRole('region', { name: 'Shopping list' });
  await expect(list.getByRole('button', { name: 'Receive what is ticked' })).toBeDisabled();
  await list.getByRole('button', { name: 'By aisle' }).click();
  const cloths = list.getByRole('region', { name: 'Cloths' });
  await cloths.getByRole('checkbox', { name: /^Peatwater nylon/ }).check();
  await list.getByRole('checkbox', { name: /^Brightpoint 75/ }).check();
  await expect(list.getByRole('status')).toContainText('2 of');

  // The ticks are in the workshop's file: the room reads them when it is opened again.
  await page.getByRole('link', { name: /^Needs/ }).click();
  await page.getByRole('link', { name: /^To buy/ }).click();
  await page.getByRole('button', { name: 'In the shop' }).click();
  await expect(list.getByRole('checkbox', { name: /^Peatwater nylon/ })).toBeChecked();
  await expect(list.getByRole('checkbox', { checked: true })).toHaveCount(2);

  await list.getByRole('button', { name: 'Receive what is ticked' }).click();
  const sheet = page.getByRole('dialog', { name: 'Receive 2 purchases' });
  const shell = sheet.getByRole('group', { name: 'Peatwater nylon' });
  await expect(shell.getByLabel('Supplier')).toHaveValue('Quillstone Cloth');
  await expect(shell.getByLabel('Width')).toHaveValue(/^14\d(\.\d)? cm$/);
  // The shop had a longer piece, and asked a rounder price.
  await shell.getByLabel('Length').fill('34.2 m');
  await shell.getByLabel('Price').fill('');
  await sheet.getByRole('button', { name: 'Put all on the shelf' }).click();
  await expect(sheet.getByRole('alert')).toContainText('Price of Peatwater nylon is missing');
  await shell.getByLabel('Price').fill('391.35');
  await shell.getByLabel('Dye lot').fill('P-2311');
  await sheet.getByRole('button', { name: 'Put all on the shelf' }).click();
  await expect(sheet).toBeHidden();

  // The shell is covered now, so it is off the list; the rest still stands on it.
  await expect(list.getByRole('checkbox', { name: /^Peatwater nylon/ })).toHaveCount(0);
  await expect(list.getByRole('checkbox').first()).toBeVisible();
  await page.getByRole('link', { name: 'Stash', exact: true }).click();
  await page.getByRole('option', { name: /Peatwater nylon/ }).click();
  await expect(page.getByText('P-2311').first()).toBeVisible();
  await expect(page.getByText(/391\.35/).first()).toBeVisible();
});
