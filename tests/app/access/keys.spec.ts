/** A maker without a mouse: every room is reached, and what it is for is done, by the keys alone. */
import type { Locator, Page } from '@playwright/test';
import { expect, test } from '../door.ts';
import { stopLaying } from '../laying.ts';

/** More presses than any room has stops. */
const maxStops = 150;

/**
 * Presses Tab until the focus is there, once it can be: what is off until its figures stand, the keys pass by. What it
 * looks for is found again only once it was drawn anew.
 */
async function tabTo(target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  const { keyboard } = target.page();
  await expect(target).toBeEnabled();
  let sought = await target.elementHandle();
  for (let stop = 0; stop < maxStops; stop++) {
    const where = await sought?.evaluate((element) =>
      element === document.activeElement ? 'there' : element.isConnected ? 'elsewhere' : 'gone',
    );
    if (where === 'there' && (await target.evaluate((element) => element === document.activeElement))) return;
    if (where === 'elsewhere') await keyboard.press(key);
    else sought = await target.elementHandle();
  }
  throw new Error(`the keys do not come to ${target}`);
}

async function press(target: Locator, key = 'Enter'): Promise<void> {
  await tabTo(target);
  await target.page().keyboard.press(key);
}

async function type(field: Locator, text: string): Promise<void> {
  await tabTo(field);
  await field.page().keyboard.press('ControlOrMeta+a');
  await field.page().keyboard.type(text);
}

/** By the search for everything, whose focus then is in the room. */
async function goTo(page: Page, name: string, heading = name): Promise<void> {
  await page.keyboard.press('ControlOrMeta+k');
  await expect(page.getByRole('combobox', { name: 'Find' })).toBeFocused();
  await page.keyboard.type(name);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: heading, level: 1 })).toBeVisible();
  await expect(page.getByRole('main')).toBeFocused();
}

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('main').getByRole('button', { name }).first();

test('the rooms of the workshop are reached and used by the keys alone', async ({ page }) => {
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  // From the top of the window: past the rail, into the room.
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'To the room' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('main')).toBeFocused();
  await press(page.getByRole('button', { name: 'Open the demo workshop' }));
  await expect(page.getByRole('heading', { name: 'Cover', level: 1 })).toBeVisible();

  await goTo(page, 'Stash');
  await press(button(page, 'New item'));
  const dialog = page.getByRole('dialog');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowLeft');
  await type(dialog.getByLabel('Name'), 'Hollin taffeta');
  await type(dialog.getByLabel('Width', { exact: true }), '145 cm');
  await page.keyboard.press('Enter');
  await expect(dialog).toHaveCount(0);
  await expect(page.getByRole('article', { name: 'Hollin taffeta' })).toBeVisible();
  await tabTo(page.getByRole('listbox', { name: 'Items in the stash' }));
  await page.keyboard.press('ArrowDown');
  await expect(page.getByRole('article', { name: 'Hollin taffeta' })).toHaveCount(0);

  await goTo(page, 'Season');
  await press(button(page, 'Fenwalk coat later'));
  await expect(page.getByRole('row').nth(1)).toContainText('Fenwalk coat in slate');

  await goTo(page, 'Suppliers');
  await press(button(page, 'Add a supplier'));
  await type(dialog.getByLabel('Name'), 'Otterbourne Mill');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('row', { name: /Otterbourne Mill/ })).toBeVisible();

  await goTo(page, 'Account');
  const saving = page.waitForEvent('download');
  await press(button(page, 'Save as CSV'));
  expect((await saving).suggestedFilename()).toMatch(/\.csv$/);

  await goTo(page, 'Settings');
  await tabTo(page.getByLabel('Metric'));
  await page.keyboard.press('ArrowRight');
  await expect(page.getByLabel('Imperial')).toBeChecked();
  await page.keyboard.press('ArrowLeft');
  await expect(page.getByLabel('Metric')).toBeChecked();

  await goTo(page, 'Coats');
  await press(button(page, 'New coat'));
  await type(dialog.getByLabel('Name'), 'Reedling');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Reedling', level: 1 })).toBeVisible();

  await goTo(page, 'Draft a coat');
  await type(page.getByLabel('Name of the coat'), 'Harrow coat');
  await tabTo(button(page, 'Make this plan'), 'Shift+Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Harrow coat', level: 1 })).toBeVisible();
});

test('the road of a coat is walked and used by the keys alone', async ({ page }) => {
  await tabTo(page.getByRole('button', { name: 'Open the demo workshop' }));
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Cover', level: 1 })).toBeVisible();
  const done = page.getByRole('status', { name: 'What the last change did' });

  await press(button(page, /^Use Slatewater nylon/));
  await expect(page.getByText('Shell is now Slatewater nylon.')).toBeVisible();
  await press(button(page, 'Undo'));
  await expect(button(page, /^Use Slatewater nylon/)).toBeVisible();

  await goTo(page, 'Plan', 'Fenwalk coat');
  await press(button(page, /^Cuff, drawn to scale/));
  const dialog = page.getByRole('dialog');
  await type(dialog.getByLabel('By'), '1 cm');
  await press(dialog.getByRole('button', { name: 'Lengthen' }));
  await expect(done).toContainText(/^Cuff lengthened by 10 mm/);

  await goTo(page, 'Quilting');
  await type(page.getByLabel('Rise of one face, 2 layers of batting'), '1.1 cm');
  await page.keyboard.press('Enter');
  await expect(page.getByText('One face rises 11 mm over 2 layers of batting, as measured.')).toBeVisible();

  await goTo(page, 'Needs');
  const shell = page
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name: 'shell', exact: true }) });
  await press(shell.locator('summary').filter({ hasText: 'Margin for safety' }));
  await type(shell.getByLabel('Length for the shell'), '60 cm');
  await page.keyboard.press('Enter');
  await expect(page.getByText('A margin of 600 mm for the shell.')).toBeVisible();

  await goTo(page, 'Lay');
  await stopLaying(page);
  await tabTo(page.getByRole('tab', { name: /^Shell/ }));
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('tab', { name: /^Body lining/ })).toHaveAttribute('aria-selected', 'true');
  await tabTo(page.getByRole('img', { name: /^Lay of the body lining/ }));
  await page.keyboard.press('ArrowRight');
  await expect(page.getByText(/, (as drawn|turned \d+°)/).first()).toBeAttached();

  await goTo(page, 'To buy');
  await press(button(page, 'In the shop'));
  await press(page.getByRole('checkbox').first(), 'Space');
  await expect(page.getByRole('checkbox').first()).toBeChecked();

  await goTo(page, 'Cost');
  await tabTo(page.getByRole('tab', { name: 'Material' }));
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('tab', { name: 'Price' })).toHaveAttribute('aria-selected', 'true');

  await goTo(page, 'Finished');
  await press(button(page, /^I have weighed one/));
  await type(page.getByLabel('Weight of one coat'), '1.135 kg');
  await press(button(page, 'Use this'));
  await expect(page.getByText('1.135 kg, as weighed')).toBeVisible();

  await goTo(page, 'Pattern table');
  await type(page.getByLabel('Widths of the cloth'), '150 cm');
  await press(button(page, 'Find the lengths'));
  await expect(page.getByText('not found yet')).toHaveCount(0);

  await goTo(page, 'Cutting');
  await stopLaying(page);
  await press(button(page, 'Book the cutting'));
  await expect(page.getByRole('region', { name: 'Cut so far' })).toContainText('6 coats of size EU 40');
});
