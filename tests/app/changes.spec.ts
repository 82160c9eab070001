/** Changes made faster than the workshop answers: each builds on the one before it, and so does undo. */
import { expect, test } from './door.ts';

test('a second change made before the first is read back is kept as well, and both are taken back', async ({
  page,
}) => {
  await page.getByRole('link', { name: 'Coats', exact: true }).click();
  await page.getByRole('button', { name: 'New coat' }).first().click();
  const form = page.getByRole('dialog', { name: 'New coat' });
  await form.getByLabel('Name').fill('Hollin waistcoat');
  await form.getByRole('button', { name: 'Begin the plan' }).click();
  await expect(page.getByRole('heading', { name: 'Hollin waistcoat', level: 1 })).toBeVisible();

  // Answers come late, as from a slow disk: once both changes are made.
  let answers = Promise.withResolvers<void>();
  await page.route('**/call', async (route) => {
    await answers.promise;
    await route.continue();
  });
  await page.getByLabel('Coats', { exact: true }).fill('7');
  await page.getByLabel('Quilting lines apart').fill('55 mm');
  await page.getByLabel('Quilting lines apart').press('Enter');
  answers.resolve();
  const note = page.getByRole('status', { name: 'What the last change did' });
  await expect(note).toContainText('Quilting lines are now 55 mm apart.');
  await expect(page.getByText('was changed meanwhile')).toHaveCount(0);
  await expect(page.getByLabel('Coats', { exact: true })).toHaveValue('7');
  await expect(page.getByLabel('Quilting lines apart')).toHaveValue('55 mm');

  const undo = note.getByRole('button', { name: 'Undo' });
  answers = Promise.withResolvers<void>();
  await undo.click();
  await undo.click();
  answers.resolve();
  await expect(page.getByLabel('Coats', { exact: true })).toHaveValue('1');
  await expect(page.getByLabel('Quilting lines apart')).toHaveValue('76.2 mm');

  await page.unroute('**/call');
  // What is refused stands under its own field.
  await page.getByLabel('Quilting lines apart').fill('2 mm');
  await page.getByLabel('Quilting lines apart').press('Enter');
  await expect(page.getByLabel('Quilting lines apart')).toHaveAccessibleDescription(
    /Distance of the quilting lines is too small/,
  );
  await expect(page.getByLabel('Coats', { exact: true })).toHaveAccessibleDescription('');
  await page.getByLabel('Quilting lines apart').fill('76.2 mm');
  await page.getByLabel('Quilting lines apart').press('Enter');
  await expect(page.getByLabel('Quilting lines apart')).toHaveAccessibleDescription('');

  // Name and size are a change like any other.
  await page.getByRole('button', { name: 'Change name, size or notes' }).click();
  const head = page.getByRole('dialog', { name: 'Name, size and notes' });
  await head.getByLabel('Name').fill('  ');
  await head.getByRole('button', { name: 'Save' }).click();
  await expect(head.getByRole('alert')).toContainText('Name of the plan is missing');
  await head.getByLabel('Name').fill('Hollin gilet');
  await head.getByLabel('Size').fill('M long');
  await head.getByRole('button', { name: 'Save' }).click();
  await expect(page.getByRole('heading', { name: 'Hollin gilet', level: 1 })).toBeVisible();
  await expect(note).toContainText('Hollin waistcoat is now called Hollin gilet. Its size is now M long.');
});
