/** What was done in the stash is undone from its foot; and three pictures of what lies there and what coats cost. */
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './door.ts';
import { stopLaying } from './laying.ts';

async function goTo(page: Page, room: string): Promise<void> {
  const rooms = page.getByRole('navigation', { name: 'Rooms' });
  await rooms.getByRole('link', { name: room, exact: true }).click();
}

async function openDemo(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByText('This is the demo workshop.')).toBeVisible();
}

async function openItem(page: Page, name: string): Promise<Locator> {
  await goTo(page, 'Stash');
  await page.getByLabel('Search the stash').fill(name);
  await page.getByRole('option', { name }).click();
  return page.getByRole('article', { name });
}

async function writeOff(page: Page, amount: string): Promise<void> {
  await page.getByRole('button', { name: 'Write off' }).first().click();
  const sheet = page.getByRole('dialog');
  await sheet.getByLabel('Amount').fill(amount);
  await sheet.getByLabel('Reason').fill('damp');
  await sheet.getByRole('button', { name: /Write off/ }).click();
  await expect(sheet).toBeHidden();
}

const lastDone = (page: Page) => page.getByRole('status', { name: 'What was done last' });

const minorOf = (text: string | null) =>
  Math.round(Number(/([\d,]+\.\d\d)/.exec(text ?? '')?.[1]?.replace(/,/g, '')) * 100);

test('what was written off by mistake is undone from the foot of the stash, by a press or by Ctrl Z', async ({
  page,
}) => {
  await openDemo(page);
  const item = await openItem(page, 'Downdrift duck');
  const onHand = item.locator('p', { hasText: 'on hand' }).first();
  const before = (await onHand.textContent()) ?? '';
  await expect(lastDone(page)).toHaveText('');

  await writeOff(page, '70 g');
  await expect(lastDone(page)).toContainText('Wrote off 70 g of Downdrift duck');
  await expect(onHand).not.toHaveText(before);
  await lastDone(page).getByRole('button', { name: 'Undo' }).click();
  await expect(lastDone(page)).toContainText('Undone: Wrote off 70 g of Downdrift duck.');
  await expect(onHand).toHaveText(before);
  await expect(item.getByRole('listitem').filter({ hasText: 'Put back 70 g: undone' })).toBeVisible();

  // In a field the keys are the field's; elsewhere they are the room's.
  await writeOff(page, '30 g');
  const search = page.getByLabel('Search the stash');
  await search.focus();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(lastDone(page)).toContainText('Wrote off 30 g');
  await page.getByRole('listbox', { name: 'Items in the stash' }).focus();
  await page.keyboard.press('ControlOrMeta+z');
  await expect(lastDone(page)).toContainText('Undone: Wrote off 30 g');
  await expect(onHand).toHaveText(before);

  await lastDone(page).getByRole('button', { name: 'Dismiss' }).click();
  await expect(lastDone(page)).toHaveText('');
});

test('a remnant shows which pieces of the coats it could still carry, drawn and in a table', async ({
  page,
}) => {
  await openDemo(page);
  const item = await openItem(page, 'Peatwater nylon');
  await item.getByText('What it could still carry').click();
  const pieces = item.getByRole('list', { name: 'Pieces that fit' }).getByRole('listitem');
  await expect(pieces.first()).toBeVisible();
  const told = Number(
    /^(\d+) of \d+ pieces fit/.exec((await item.getByText(/pieces fit/).textContent()) ?? '')?.[1],
  );
  expect(told).toBeGreaterThan(0);
  await item.getByText('In figures').click();
  const table = item.getByRole('table').filter({ hasText: 'Coat and slot' });
  await expect(table.getByRole('row')).toHaveCount(told + 1);
  expect(await pieces.count()).toBe(Math.min(told, 8));
});

test('what lies on the shelf by age adds up to what the account has on hand', async ({ page }) => {
  await openDemo(page);
  await goTo(page, 'Account');
  const ages = page.getByRole('region', { name: 'On hand by age' });
  await expect(ages.getByRole('img', { name: /by the age of its lots/ })).toBeVisible();
  const sum = page.getByRole('status').filter({ hasText: 'received' });
  await ages.getByText('In figures').click();
  const inAll = ages
    .getByRole('row', { name: /^Together/ })
    .getByRole('cell')
    .last();
  const amounts = ((await sum.textContent()) ?? '').match(/[\d,]+\.\d\d/g) ?? [];
  expect(minorOf(await inAll.textContent())).toBe(minorOf(amounts.at(-1) ?? null));
});

test('one coat of each plan stands side by side, slot by slot, once the season has its lays', async ({
  page,
}) => {
  await openDemo(page);
  await goTo(page, 'Season');
  const bySlot = page.getByRole('region', { name: 'One coat by slot' });
  await expect(bySlot.getByRole('img', { name: /plan by plan and slot by slot/ })).toBeVisible();
  await stopLaying(page);
  await bySlot.getByText('In figures').click();
  const table = bySlot.getByRole('table');
  await expect(table.getByRole('columnheader', { name: /^Fenwalk coat as planned/ })).toBeVisible();
  const column = await table
    .getByRole('row')
    .evaluateAll((rows) => rows.slice(1).map((row) => row.querySelectorAll('td')[1]?.textContent ?? ''));
  const amounts = column.map((text) => minorOf(text) || 0);
  const together = amounts.pop() ?? 0;
  expect(together).toBeGreaterThan(0);
  expect(amounts.reduce((sum, each) => sum + each, 0)).toBe(together);
});
