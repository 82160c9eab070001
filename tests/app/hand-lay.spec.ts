/** The cutting table: a lay by hand beside the one that was found. */
import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';
import { stopLaying } from './laying.ts';

async function openTable(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('list', { name: 'Cover by slot' })).toBeVisible();
  await stopLaying(page);
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: /^Lay/ })
    .click();
  await page.getByRole('button', { name: 'Lay by hand' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'Every piece can be cut' })).toBeVisible();
}

const inTheWay = /lies? where (it|they) cannot be cut/;

test('I drag a piece onto another, see that it cannot be cut there, and take it back', async ({ page }) => {
  await openTable(page);
  const pieces = page.locator('[data-hand-piece]');
  const from = (await pieces.nth(0).boundingBox())!;
  const to = (await pieces.nth(1).boundingBox())!;
  await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
  await page.mouse.down();
  await page.mouse.move(to.x + to.width / 2, to.y + to.height / 2, { steps: 8 });
  await expect(page.getByText(inTheWay)).toBeVisible();
  await page.mouse.up();
  await expect(page.getByText(inTheWay)).toBeVisible();
  await expect(page.getByRole('button', { name: 'Use this lay' })).toBeDisabled();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('Every piece can be cut where it lies.')).toBeVisible();
  await page.getByRole('button', { name: 'Redo' }).click();
  await expect(page.getByText(inTheWay)).toBeVisible();
});

test('with the keys alone I choose a piece, move, turn, pin and slide it, and the table tells where it lies', async ({
  page,
}) => {
  await openTable(page);
  await page.getByRole('application').focus();
  await page.keyboard.press('PageDown');
  const piece = page.getByTestId('hand-piece');
  await expect(piece).toBeVisible();
  const start = piece.getByLabel('From the start');
  const before = await start.inputValue();
  await page.keyboard.press('Shift+ArrowRight');
  await expect(start).not.toHaveValue(before);
  await page.keyboard.press('Control+z');
  await expect(start).toHaveValue(before);
  await page.keyboard.press('r');
  await page.keyboard.press('Control+z');
  await page.keyboard.press('p');
  await expect(page.locator('[data-hand-piece][data-pinned]')).toHaveCount(1);
  await page.keyboard.press('Shift+ArrowRight');
  await expect(start).toHaveValue(before);
  await page.getByText('All places in a table').click();
  await expect(page.getByRole('row', { name: /pinned/ })).toHaveCount(1);
});

test('I pin two pieces, the search lays the rest around them, and I use that lay; it stays mine until I give it back', async ({
  page,
}) => {
  await openTable(page);
  await page.getByRole('application').focus();
  for (const key of ['PageDown', 'p', 'PageDown', 'p']) await page.keyboard.press(key);
  const pinned = page.locator('[data-hand-piece][data-pinned]');
  await expect(pinned).toHaveCount(2);
  await page.getByRole('button', { name: 'Lay the rest around 2 pinned' }).click();
  await expect(page.getByRole('button', { name: 'Stop laying' })).toHaveCount(0);
  await expect(pinned).toHaveCount(2);
  await page.getByRole('button', { name: 'Use this lay' }).click();
  await expect(page.getByTestId('lay-words')).toContainText('laid by hand');
  await stopLaying(page);
  await page.getByRole('button', { name: 'Back to the found lay' }).click();
  await expect(page.getByTestId('lay-words')).not.toContainText('laid by hand');
});
