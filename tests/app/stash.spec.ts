import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';

async function goTo(page: Page, room: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: room }).click();
}

/** A cloth of the maker's own, typed in inches, on an empty shelf. */
async function addHollinTaffeta(page: Page): Promise<void> {
  await goTo(page, 'Stash');
  await expect(page.getByText('The shelf is empty')).toBeVisible();
  await page.getByRole('button', { name: 'New item' }).click();
  const sheet = page.getByRole('dialog', { name: 'New item' });
  await sheet.getByLabel('Name').fill('Hollin taffeta');
  await sheet.getByLabel('Colour').fill('pine');
  await sheet.getByLabel('Width', { exact: true }).fill('57 1/2 in');
  await sheet.getByText('More about the cloth').click();
  await sheet.getByLabel('Place').fill('rack 4');
  await sheet.getByLabel('Selvage').fill('3/8 in');
  await sheet.getByLabel('Weight').fill('1.7 oz/yd2');
  await sheet.getByRole('button', { name: 'Add to the stash' }).click();
  await expect(sheet).toBeHidden();
}

/** Two rolls of 6.25 m in one lot, for 143.60 in all. */
async function receiveTwoRolls(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Receive' }).click();
  const sheet = page.getByRole('dialog', { name: 'Receive Hollin taffeta' });
  await expect(sheet.getByLabel('Width')).toHaveValue('57 1/2 in');
  await sheet.getByLabel('Received on').fill('2026-03-17');
  await sheet.getByLabel('Supplier').fill('Otterbourne Mill');
  await sheet.getByLabel('Dye lot').fill('HT 417');
  await sheet.getByLabel('Price of the lot').fill('143.60');
  await sheet.getByLabel('Length', { exact: true }).fill('6.25');
  await sheet.getByLabel('How many').fill('2');
  await sheet.getByRole('button', { name: 'Put on the shelf' }).click();
  await expect(sheet).toBeHidden();
}

test('a cloth typed in inches is shown back in inches, and a width that is none changes nothing', async ({
  page,
  workshop,
}) => {
  await addHollinTaffeta(page);
  const item = page.getByRole('article', { name: 'Hollin taffeta' });
  await expect(item.getByText('57 1/2 in')).toBeVisible();
  await expect(item.getByText('3/8 in')).toBeVisible();
  // 57 1/2 in less two selvages of 3/8 in.
  await expect(item.getByText('144.1 cm')).toBeVisible();
  await expect(item.getByText('1.7 oz/yd2')).toBeVisible();

  await page.getByRole('button', { name: 'Edit', exact: true }).click();
  const sheet = page.getByRole('dialog', { name: 'Edit Hollin taffeta' });
  await sheet.getByLabel('Colour').fill('moss');
  await sheet.getByLabel('Width', { exact: true }).fill('-57 1/2 in');
  await sheet.getByLabel('Width', { exact: true }).blur();
  await expect(sheet.getByText('Width is negative.').first()).toBeVisible();
  await sheet.getByRole('button', { name: 'Save' }).click();
  await expect(sheet.getByText('Hollin taffeta was not saved.')).toBeVisible();
  await expect(sheet.getByLabel('Colour')).toHaveValue('moss');
  await sheet.getByRole('button', { name: 'Cancel' }).click();
  await expect(item.getByText('57 1/2 in')).toBeVisible();
  await expect(item.getByText('Cloth · pine · rack 4')).toBeVisible();

  const reopened = await workshop.reopen();
  await goTo(reopened, 'Stash');
  await reopened.getByRole('option', { name: /Hollin taffeta/ }).click();
  await expect(
    reopened.getByRole('article', { name: 'Hollin taffeta' }).getByText('57 1/2 in'),
  ).toBeVisible();
});

test('a new cloth asks for little, and comes with its first roll in one step', async ({ page }) => {
  await goTo(page, 'Stash');
  await page.getByRole('button', { name: 'New item' }).click();
  const sheet = page.getByRole('dialog', { name: 'New item' });
  const more = sheet.getByText('More about the cloth');
  await expect(sheet.getByText(/^place, selvage, weight, fibre, .*, notes$/)).toBeVisible();
  await expect(sheet.getByLabel('Weight')).toBeHidden();
  await sheet.getByLabel('Name').fill('Sedge sateen');
  await sheet.getByLabel('Width', { exact: true }).fill('142 cm');
  await sheet.getByLabel('Length', { exact: true }).fill('8.5');
  await sheet.getByLabel('Supplier').fill('Otterbourne Mill');
  await sheet.getByLabel('Dye lot').fill('SS 9');
  // A weight that no cloth has, shut away: refused, it is in sight again, and nothing has come in.
  await more.click();
  await sheet.getByLabel('Weight').fill('9000 g/m2');
  await more.click();
  await expect(sheet.getByLabel('Weight')).toBeHidden();
  await sheet.getByRole('button', { name: 'Add to the stash' }).click();
  await expect(sheet.getByText('The cloth was not saved.')).toBeVisible();
  await expect(sheet.getByLabel('Weight')).toBeVisible();
  await sheet.getByLabel('Weight').fill('130 g/m2');
  await sheet.getByRole('button', { name: 'Add to the stash' }).click();
  await expect(sheet.getByRole('alert')).toContainText('Price of the lot is missing');
  await sheet.getByLabel('Price of the lot').fill('93.50');
  await sheet.getByRole('button', { name: 'Add to the stash' }).click();
  await expect(sheet).toBeHidden();
  const lot = page.getByRole('article', { name: /^Lot of/ });
  await expect(lot.getByText('Roll, 8.5 m × 142 cm')).toBeVisible();
  await expect(lot.getByText('dye lot SS 9')).toBeVisible();
  await expect(page.getByRole('option', { name: /Sedge sateen/ })).toContainText('93.50 EUR');
  // What is known stands open when it is changed.
  await page.getByRole('article', { name: 'Sedge sateen' }).getByRole('button', { name: 'Edit' }).click();
  await expect(page.getByRole('dialog').getByLabel('Weight')).toHaveValue('130 g/m2');
});

test('whether a cloth runs one way is yes, no or not known, and each is kept', async ({ page }) => {
  const form = page.getByRole('dialog');
  await goTo(page, 'Stash');
  await page.getByRole('button', { name: 'New item' }).click();
  await form.getByLabel('Name').fill('Sedge sateen');
  await form.getByLabel('Width', { exact: true }).fill('140 cm');
  await expect(form.getByLabel('Nap or one-way')).toHaveValue('');
  await form.getByLabel('Nap or one-way').selectOption('no');
  await form.getByText('More about the cloth').click();
  await form.getByLabel('Dry clean').selectOption('dry clean F');
  await form.getByRole('button', { name: 'Add to the stash' }).click();
  await expect(form).toBeHidden();
  await page.getByRole('article', { name: 'Sedge sateen' }).getByRole('button', { name: 'Edit' }).click();
  await expect(form.getByLabel('Nap or one-way')).toHaveValue('no');
  await expect(form.getByLabel('Down-proof')).toHaveValue('');
  await expect(form.getByLabel('Dry clean')).toHaveValue('dry clean F');
});

test('of two rolls more than is there is not written off, but a cut is, and the ledger tells it', async ({
  page,
}) => {
  await addHollinTaffeta(page);
  await receiveTwoRolls(page);
  const item = page.getByRole('article', { name: 'Hollin taffeta' });
  const lot = item.getByRole('article', { name: 'Lot of 17 Mar 2026' });
  await expect(item.getByText('12.5 m on hand')).toBeVisible();
  await expect(lot.getByText('Roll, 6.25 m × 57 1/2 in')).toHaveCount(2);
  await expect(lot.getByText('dye lot HT 417')).toBeVisible();

  await item.getByRole('button', { name: 'Write off' }).click();
  const sheet = page.getByRole('dialog', { name: 'Write off Hollin taffeta' });
  await sheet.getByLabel('Amount').fill('7 m');
  await sheet.getByLabel('Reason').fill('a gift');
  await sheet.getByRole('button', { name: 'Write off' }).click();
  await expect(sheet.getByRole('alert')).toContainText('is more than is free');
  await expect(sheet.getByLabel('Reason')).toHaveValue('a gift');
  await sheet.getByRole('button', { name: 'Cancel' }).click();
  await expect(item.getByText('12.5 m on hand')).toBeVisible();

  await item.getByRole('button', { name: 'Write off' }).click();
  await sheet.getByLabel('Amount').fill('80 cm');
  await sheet.getByLabel('Reason').fill('scorched by the iron');
  await sheet.getByRole('button', { name: 'Write off' }).click();
  await expect(sheet).toBeHidden();

  await expect(item.getByText('11.7 m on hand')).toBeVisible();
  await expect(item.getByText('Wrote off 0.8 m: scorched by the iron')).toBeVisible();
  await expect(item.getByText('Received 6.25 m')).toHaveCount(2);
  const row = page.getByRole('option', { name: /Hollin taffeta/ });
  await expect(row).toContainText('11.7 m');
  // 143.60 for 12.5 m; 11.7 m of it are left: 134.41 to the cent.
  await expect(row).toContainText('134.41 EUR');
});

test('a cloth is found by its dye lot, and a count puts right what is booked, as a row of its own', async ({
  page,
}) => {
  await addHollinTaffeta(page);
  await receiveTwoRolls(page);
  const search = page.getByLabel('Search the stash');
  await search.fill('ht 417');
  await expect(page.getByText('1 of 1 item')).toBeVisible();
  await expect(page.getByRole('option', { name: /Hollin taffeta/ })).toBeVisible();
  await search.fill('ht 418');
  await expect(page.getByText('Nothing in the stash fits that.')).toBeVisible();
  await page.getByRole('button', { name: 'Show everything' }).click();
  await expect(search).toHaveValue('');
  await expect(page.getByRole('option', { name: /Hollin taffeta/ })).toBeVisible();

  await page.getByRole('button', { name: 'Count' }).click();
  const sheet = page.getByRole('dialog', { name: 'Count Hollin taffeta' });
  await sheet.getByLabel('Counted').fill('6.1 m');
  await sheet.getByRole('button', { name: 'Book the count' }).click();
  await expect(sheet).toBeHidden();
  await expect(page.getByText('12.35 m on hand')).toBeVisible();
  await expect(page.getByText('Counted 0.15 m less than was booked: counted on the shelf')).toBeVisible();
});

test('a supplier asks a price by the eighth of a yard; it is noted, changed and taken out', async ({
  page,
}) => {
  await addHollinTaffeta(page);
  await page.getByRole('button', { name: 'Add an offer' }).click();
  const added = page.getByRole('dialog', { name: 'New offer for Hollin taffeta' });
  await added.getByLabel('Supplier').fill('Otterbourne Mill');
  await added.getByLabel('Step').fill('1/8 yd');
  await added.getByLabel('Price', { exact: true }).fill('1.85');
  await added.getByRole('button', { name: 'Save the offer' }).click();
  await expect(added).toBeHidden();
  const row = page.getByRole('row', { name: /Otterbourne Mill/ });
  await expect(row).toContainText('11.4 cm, 146.1 cm wide');
  await expect(row).toContainText('1.85 EUR');

  await row.getByRole('button', { name: 'Edit the offer of Otterbourne Mill' }).click();
  const changed = page.getByRole('dialog', { name: 'Offer for Hollin taffeta' });
  await changed.getByLabel('Price', { exact: true }).fill('2.10');
  await changed.getByRole('button', { name: 'Save the offer' }).click();
  await expect(row).toContainText('2.10 EUR');

  await row.getByRole('button', { name: 'Remove the offer of Otterbourne Mill' }).click();
  await row.getByRole('button', { name: 'Yes, remove the offer of Otterbourne Mill' }).click();
  await expect(row).toBeHidden();
});

test('the demo shelf is walked through by keys, and narrowed to what is a thread', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByText('This is the demo workshop.')).toBeVisible();
  await expect(page).toHaveURL(/\/cover$/);
  await goTo(page, 'Stash');
  await expect(page.getByRole('status').getByText(/^\d+ items$/)).toBeVisible();
  await page.getByRole('button', { name: 'Thread', exact: true }).click();
  await expect(page.getByText(/^3 of \d+ items$/)).toBeVisible();
  await expect(page.getByRole('option')).toHaveCount(3);

  await page.getByLabel('Search the stash').press('ArrowDown');
  const list = page.getByRole('listbox', { name: 'Items in the stash' });
  await list.press('ArrowDown');
  await list.press('ArrowDown');
  await list.press('ArrowDown');
  await list.press('ArrowUp');
  const names = await page.getByRole('option').allInnerTexts();
  await expect(page.getByRole('option', { selected: true })).toHaveText(/Ropewalk spun 27/);
  expect(names.findIndex((name) => name.includes('Ropewalk spun 27'))).toBe(1);
  await expect(page.getByRole('article', { name: 'Ropewalk spun 27' })).toBeVisible();

  await page.getByRole('button', { name: /Sort by name/ }).click();
  await expect(page.getByRole('option').first()).toContainText('Ropewalk spun 40');
});
