import type { Locator, Page } from '@playwright/test';
import { expect, test } from './door.ts';
import { stopLaying } from './laying.ts';

async function goToStep(page: Page, name: string): Promise<void> {
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: new RegExp(`^${name}`) })
    .click();
  await expect(page.getByRole('heading', { name, level: 1 })).toBeVisible();
}

async function onHand(page: Page, name: string): Promise<string> {
  await page.getByRole('navigation').getByRole('link', { name: 'Stash' }).click();
  await page.getByRole('option', { name: new RegExp(name) }).click();
  const item = page.getByRole('article', { name, exact: true });
  await expect(item).toBeVisible();
  return (
    (await item
      .getByText(/on hand/)
      .first()
      .textContent()) ?? ''
  );
}

function slot(page: Page, list: string, name: string): Locator {
  return page.getByRole('list', { name: list }).getByRole('listitem', { name, exact: true });
}

test('a coat sets its cloth aside, is cut by true amounts, and the cutting is taken back', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(slot(page, 'Cover by slot', 'Shell')).toBeVisible();
  await stopLaying(page);
  const aside = page.getByRole('region', { name: 'Set aside' });
  await expect(aside).toContainText('Nothing is set aside for this coat');
  await aside.getByRole('button', { name: 'Set aside what it takes' }).click();
  await expect(aside).toContainText('What the cover takes is set aside for this coat.');

  const coat = new URL(page.url()).hash.replace(/cover.*/, 'cutting');
  const before = await onHand(page, 'Peatwater nylon');
  expect(before).toMatch(/of it set aside for Fenwalk coat, [\d.]+ m(m)? free/);
  await page.evaluate((hash) => (window.location.hash = hash), coat);
  await expect(page.getByRole('heading', { name: 'Cutting', level: 1 })).toBeVisible();
  await expect(slot(page, 'What is cut', 'Shell')).toBeVisible();
  await stopLaying(page);

  // The body lining waits for another day; the hood cord is cut from one more than was planned.
  await slot(page, 'What is cut', 'Body lining').getByRole('checkbox', { name: 'Body lining' }).uncheck();
  await slot(page, 'What is cut', 'Sewn label').getByRole('textbox').fill('8');
  await page.getByLabel('Note').fill('a rainy day');
  await page.getByRole('button', { name: 'Book the cutting' }).click();
  const earlier = page.getByRole('region', { name: 'Cut so far' });
  await expect(earlier).toContainText('6 coats of size EU 40');
  await expect(earlier).toContainText('Sewn label: 8 pcs of Woven name label');
  await expect(earlier).not.toContainText('Body lining');
  await expect(slot(page, 'What is cut', 'Sewn label')).toHaveCount(0);

  await goToStep(page, 'Cover');
  await expect(slot(page, 'Cover by slot', 'Sewn label')).toContainText('All of the sewn label is cut.');
  await expect(slot(page, 'Cover by slot', 'Shell')).toContainText(
    /What is left is no longer enough: [\d.]+ m to go, .* left of dye lot P-2207, from which the shell was begun\./,
  );
  expect(await onHand(page, 'Peatwater nylon')).not.toBe(before);

  await page.evaluate((hash) => (window.location.hash = hash), coat);
  await earlier.getByRole('button', { name: 'Take back' }).click();
  await expect(earlier).toContainText('What was cut goes back to its lengths');
  await earlier.getByRole('button', { name: 'Leave it booked' }).click();
  await expect(earlier).not.toContainText('taken back');
  await earlier.getByRole('button', { name: 'Take back' }).click();
  await earlier.getByRole('button', { name: 'Take it all back' }).click();
  await expect(earlier).toContainText('taken back');
  expect(await onHand(page, 'Peatwater nylon')).toBe(before);
});

test.describe('a lay that gets shorter when it is looked for in earnest', () => {
  test.use({ layPace: 'better' });

  test('a rest that goes to the bin stays that rest when a better lay is found, until the better one is taken', async ({
    page,
  }) => {
    // Lays that were looked for in earnest come once the maker has made a change.
    const changed = Promise.withResolvers<void>();
    await page.route('**/call', async (route) => {
      const { call, input } = route.request().postDataJSON();
      if (call === 'keepLay' && input.result.seconds > 1) await changed.promise;
      await route.continue();
    });
    await page.getByRole('button', { name: 'Open the demo workshop' }).click();
    await goToStep(page, 'Cutting');
    const shell = slot(page, 'What is cut', 'Shell');
    await expect(shell).toBeVisible();
    const rests = shell.getByRole('group', { name: 'Back to the shelf' }).first();
    const before = await rests.textContent();
    const first = rests.getByRole('checkbox').first();
    await first.uncheck();
    changed.resolve();

    const better = page.getByRole('status').filter({ hasText: 'A better lay was found' });
    await expect(better).toBeVisible();
    expect(await rests.textContent()).toBe(before);
    await expect(first).not.toBeChecked();
    await better.getByRole('button', { name: 'Take the better lay' }).click();
    await expect(better).toHaveCount(0);
    for (const box of await rests.getByRole('checkbox').all()) await expect(box).toBeChecked();
  });
});
