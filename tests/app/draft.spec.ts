/** A coat drafted from a size and from measures, given room for its padding, and made a plan. */
import { expect, test } from './door.ts';

test('a coat is drafted in a size, given room for its padding, and becomes a plan', async ({
  page,
  workshop,
}) => {
  test.setTimeout(180_000);
  await page.getByRole('link', { name: 'Coats', exact: true }).click();
  await page.getByRole('button', { name: 'Draft a coat' }).click();
  await expect(page.getByRole('heading', { name: 'Draft a coat', level: 1 })).toBeVisible();
  await expect(page.getByRole('img', { name: 'Back, drawn to scale' })).toBeVisible();

  const padding = page.getByRole('region', { name: 'Padding' });
  await expect(padding).toContainText('By sizes that is 3 up: from 8 to 14.');
  const bust = padding.getByRole('row', { name: /^bust/ });
  await expect(bust).toContainText('a semi-fitted coat');
  await padding.getByLabel('Give it room').selectOption({ label: 'Leave the draft as it is' });
  await expect(bust).toContainText('as close as a jacket');
  await padding.getByLabel('Layers in the body').fill('1');
  await expect(padding).toContainText('By sizes that is 2 up: from 8 to 12.');
  await padding.getByLabel('Give it room').selectOption({ label: 'Go up sizes' });
  const fit = page.getByRole('region', { name: 'How it goes together' });
  await expect(fit).toContainText(/All \d+ seams between pieces fit\./);

  await page.getByLabel('At the neck').selectOption({ label: 'Collar and hood' });
  await expect(page.getByRole('img', { name: 'Hood centre, drawn to scale' })).toBeVisible();

  await page.getByRole('button', { name: 'Make this plan' }).click();
  await expect(page.getByRole('alert')).toContainText('Name of the coat is missing');
  await page.getByLabel('Name of the coat').fill('Harrow coat');
  await page.getByText('More sizes of this style').click();
  await page.getByRole('checkbox', { name: '12' }).check();
  await page.getByRole('button', { name: 'Make these 2 plans' }).click();
  await expect(page.getByRole('heading', { name: 'Harrow coat, size 8', level: 1 })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Hood side, drawn to scale/ })).toBeVisible();

  const again = await workshop.reopen();
  await again.getByRole('link', { name: 'Coats', exact: true }).click();
  await expect(again.getByRole('link', { name: 'Harrow coat, size 8', exact: true })).toBeVisible();
  await expect(again.getByRole('link', { name: 'Harrow coat, size 12' })).toBeVisible();
});

test('measures in either system draw the coat anew, and what cannot be drafted says why', async ({
  page,
}) => {
  await page.getByRole('link', { name: 'Coats', exact: true }).click();
  await page.getByRole('button', { name: 'Draft a coat' }).click();
  await page.getByLabel('Drafted for').selectOption({ label: 'A child' });
  const fit = page.getByRole('region', { name: 'How it goes together' });
  await expect(fit).toContainText('The armhole is');
  const before = await fit.textContent();
  await page.getByLabel('Bust or chest').fill('25 3/4 in');
  await expect(page.getByLabel('Size table')).toHaveValue('');
  await expect.poll(() => fit.textContent()).not.toBe(before);

  await page.getByLabel('Bust or chest').fill('9 cm');
  const alert = page.getByRole('alert').filter({ hasText: 'Bust or chest is too small' });
  await expect(alert).toContainText('44 cm (17.3 in)');
  await expect(page.getByRole('button', { name: 'Make this plan' })).toBeDisabled();
  await page.getByLabel('Bust or chest').fill('64 cm');
  await expect(fit).toBeVisible();
});
