/** Fields that are a change of the plan by themselves: what cannot be read saves nothing, and says so. */
import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';

async function newCoat(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Coats', exact: true }).click();
  await page.getByRole('button', { name: 'New coat' }).first().click();
  const form = page.getByRole('dialog', { name: 'New coat' });
  await form.getByLabel('Name').fill('Larkfield vest');
  await form.getByRole('button', { name: 'Begin the plan' }).click();
  await expect(page.getByRole('heading', { name: 'Larkfield vest', level: 1 })).toBeVisible();
}

test('a length that cannot be read is not saved, stays as it was typed, and is mended or given up', async ({
  page,
}) => {
  await newCoat(page);
  const apart = page.getByLabel('Quilting lines apart');
  const coats = page.getByLabel('Coats', { exact: true });
  const note = page.getByRole('status', { name: 'What the last change did' });
  await expect(apart).toHaveValue('76.2 mm');

  await apart.selectText();
  await apart.pressSequentially('12 inn');
  // Said once the field is left, not while it is typed.
  await expect(apart).toHaveValue('12 inn');
  await expect(apart).toHaveAccessibleDescription('');
  await coats.focus();
  await expect(page.getByRole('alert')).toContainText('12 inn');
  // While it is being mended it is shown, and told aloud no more until the field is left again.
  await apart.press('End');
  await apart.press('x');
  await expect(apart).toHaveAccessibleDescription(/12 innx/);
  await expect(page.getByRole('alert')).toHaveCount(0);
  await apart.press('Backspace');
  await coats.focus();
  await expect(page.getByRole('alert')).toContainText('12 inn');
  await expect(apart).toHaveValue('12 inn');
  // A change made after it is the only one that is saved.
  await coats.fill('3');
  await coats.press('Enter');
  await expect(note).toContainText('3 coats');
  await expect(apart).toHaveValue('12 inn');
  await expect(apart).toHaveAccessibleDescription(/12 inn/);
  await note.getByRole('button', { name: 'Undo' }).click();
  await expect(note.getByRole('button', { name: 'Undo' })).toHaveCount(0);
  await expect(coats).toHaveValue('1');

  await apart.press('Escape');
  await expect(apart).toHaveValue('76.2 mm');
  await expect(apart).toHaveAccessibleDescription('');

  await apart.selectText();
  await apart.pressSequentially('2 inn');
  await apart.press('Backspace');
  await apart.press('Enter');
  await expect(note).toContainText('Quilting lines are now 50.8 mm apart.');

  // An emptied field that must hold a number saves nothing either.
  await coats.fill('');
  await apart.focus();
  await expect(coats).toHaveAccessibleDescription('Coats is missing.');
  await coats.press('Escape');
  await expect(coats).toHaveValue('1');

  await page.reload();
  await expect(apart).toHaveValue('50.8 mm');
  await expect(coats).toHaveValue('1');
});

async function addPanel(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Add a shape' }).first().click();
  const shape = page.getByRole('dialog', { name: 'Add a shape' });
  await shape.getByLabel('Shape').selectOption('Rectangle');
  await shape.getByLabel('Name').fill('Panel');
  await shape.getByLabel('Length').fill('72 cm');
  await shape.getByLabel('Width').fill('50 cm');
  await shape.getByLabel('How many for one coat').fill('1');
  await shape.getByRole('button', { name: 'Add the rectangle' }).click();
  await expect(shape).toBeHidden();
}

test('Escape gives up what was typed in a sheet, and only then closes the sheet', async ({ page }) => {
  await newCoat(page);
  await addPanel(page);
  await page.getByRole('button', { name: /^Panel, drawn to scale/ }).click();
  const sheet = page.getByRole('dialog', { name: 'Panel', exact: true });
  const foot = sheet.getByLabel('Allowance at foot');
  const stood = await foot.inputValue();
  await foot.selectText();
  await foot.pressSequentially('9 mmm');
  await foot.press('Escape');
  await expect(foot).toHaveValue(stood);
  await expect(sheet).toBeVisible();
  await foot.press('Escape');
  await expect(sheet).toBeHidden();
});

test('a form that was typed in asks before it is thrown away; one that was not closes at once', async ({
  page,
}) => {
  await newCoat(page);
  const open = page.getByRole('button', { name: 'Add a shape' }).first();
  const form = page.getByRole('dialog', { name: 'Add a shape' });
  const question = page.getByRole('alertdialog', { name: 'Throw away what you typed?' });
  await open.click();
  await form.getByLabel('Name').press('Escape');
  await expect(form).toBeHidden();

  await open.click();
  const name = form.getByLabel('Name');
  await name.fill('Storm flap');
  await name.press('Escape');
  await expect(question.getByRole('button', { name: 'Go on typing' })).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(question).toBeHidden();
  await expect(name).toHaveValue('Storm flap');
  await expect(name).toBeFocused();
  // Beside the form, a click changes nothing.
  await page.mouse.click(8, 8);
  await expect(name).toHaveValue('Storm flap');
  await form.getByRole('button', { name: 'Close' }).click();
  await question.getByRole('button', { name: 'Go on typing' }).click();
  await expect(name).toHaveValue('Storm flap');
  await name.press('Escape');
  await question.getByRole('button', { name: 'Throw it away' }).click();
  await expect(question).toBeHidden();
  await expect(form).toBeHidden();
  await open.click();
  await expect(name).toHaveValue('Side strip');
  // Who cancels has said so.
  await name.fill('Storm flap');
  await form.getByRole('button', { name: 'Cancel' }).click();
  await expect(form).toBeHidden();
});

test('a change of a piece that was typed and not made is asked for too, by Escape and by a click outside', async ({
  page,
}) => {
  await newCoat(page);
  await addPanel(page);
  await page.getByRole('button', { name: /^Panel, drawn to scale/ }).click();
  const sheet = page.getByRole('dialog', { name: 'Panel', exact: true });
  const question = page.getByRole('alertdialog', { name: 'Throw away what you typed?' });
  const by = sheet.getByLabel('By', { exact: true });
  await by.fill('4 cm');
  await page.mouse.click(8, 8);
  await question.getByRole('button', { name: 'Go on typing' }).click();
  await expect(by).toHaveValue('4 cm');
  await by.press('Escape');
  await question.getByRole('button', { name: 'Go on typing' }).click();
  // Made, it is saved: nothing is left to ask for.
  await sheet.getByRole('button', { name: 'Lengthen' }).click();
  await expect(sheet).toBeHidden();
  await expect(question).toBeHidden();
  await page.getByRole('button', { name: /^Panel, drawn to scale/ }).click();
  await by.focus();
  await by.press('Escape');
  await expect(sheet).toBeHidden();
});
