/** A batch in two sizes: the coat is copied at another size, added to the plan, and laid together with the first. */
import { expect, test } from './door.ts';

test('a second size joins the batch, and everything counts for both', async ({ page }) => {
  await page.getByRole('link', { name: 'Coats', exact: true }).click();
  const begin = async (name: string, size: string, length: string) => {
    await page.getByRole('link', { name: 'Coats', exact: true }).click();
    await page.getByRole('button', { name: 'New coat' }).first().click();
    const form = page.getByRole('dialog', { name: 'New coat' });
    await form.getByLabel('Name').fill(name);
    await form.getByLabel('Size').fill(size);
    await form.getByRole('button', { name: 'Begin the plan' }).click();
    await expect(page.getByRole('heading', { name, level: 1 })).toBeVisible();
    await page.getByRole('button', { name: 'Add a shape' }).first().click();
    const strip = page.getByRole('dialog', { name: 'Add a shape' });
    await strip.getByLabel('Name').fill('Panel');
    await strip.getByLabel('Length').fill(length);
    await strip.getByLabel('Width', { exact: true }).fill('400 mm');
    await strip.getByRole('button', { name: 'Add the strip' }).click();
    await expect(page.getByRole('button', { name: /^Panel, drawn to scale/ })).toBeVisible();
  };
  await begin('Reedling 42', '42', '930 mm');
  await begin('Reedling', '40', '880 mm');

  await page.getByLabel('Another size, from the plan').selectOption({ label: 'Reedling 42, size 42' });
  await page.getByRole('button', { name: 'Add this size' }).click();
  await expect(page.getByText('Size 42 added, one coat.')).toBeVisible();
  await expect(page.getByRole('link', { name: /^Plan/ })).toContainText('2 ×');

  await page.getByLabel('Coats in size 42').fill('3');
  await page.getByLabel('Coats in size 42').press('Enter');
  await expect(page.getByRole('link', { name: /^Plan/ })).toContainText('4 ×');

  await page.getByRole('link', { name: /^Needs/ }).click();
  await expect(page.getByText('8 pieces of 2 shapes')).toBeVisible();
});
