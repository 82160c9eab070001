/** A coat drafted from a size and from measures, given room for its padding, and made a plan. */
import { expect, test } from './door.ts';

test('a coat is drafted in a size, given room for its padding, and becomes a plan', async ({
  page,
  workshop,
}) => {
  await page.getByRole('link', { name: 'Coats', exact: true }).click();
  await page.getByRole('button', { name: 'Draft a coat' }).click();
  await expect(page.getByRole('heading', { name: 'Draft a coat', level: 1 })).toBeVisible();
  await expect(page.getByRole('img', { name: 'Back, drawn to scale' })).toBeVisible();

  const padding = page.getByRole('region', { name: 'Padding' });
  await expect(padding).toContainText('By sizes that is 3 up: from 8 to 14.');
  const bust = padding.getByRole('row', { name: /^bust/ });
  await expect(bust).toContainText('a semi-fitted coat');
  await padding.getByLabel('Give it room').selectOption({ label: 'Leave the draft as it is' });
  await expect(bust).toContainText('a fitted jacket');
  await padding.getByLabel('Layers in the body').fill('1');
  await padding.getByLabel('Layers in the body').press('Enter');
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
  await expect(fit).toContainText(
    'Front facing and front lining make up the front: shoulder, hem and area agree.',
  );
  await expect(fit).toContainText('Back neck facing and back lining make up the back');
  await page.getByText('Strip, pleat, cap and allowances').click();
  await page.getByLabel('Ease of the sleeve cap').fill('2.2 cm');
  await expect(fit).toContainText('2.2 cm of ease to work in');
  await page.getByRole('button', { name: 'Make the plan in 2 sizes' }).click();
  await expect(page.getByRole('heading', { name: 'Harrow coat', level: 1 })).toBeVisible();
  await expect(page.getByRole('button', { name: /^Hood side, drawn to scale/ })).toBeVisible();

  const again = await workshop.reopen();
  await again.getByRole('link', { name: 'Coats', exact: true }).click();
  await again.getByRole('link', { name: 'Harrow coat', exact: true }).click();

  // The plan holds both sizes and makes one of them, the other, or a batch of both.
  const sizes = again.getByRole('region', { name: 'Sizes' });
  await expect(sizes.getByRole('row', { name: /^8 at hand/ })).toBeVisible();
  await sizes.getByRole('button', { name: 'Make this instead' }).click();
  await expect(again.getByText('Size 12 is made in place of size 8.')).toBeVisible();
  await expect(sizes.getByRole('row', { name: /^12 at hand/ })).toBeVisible();
  // A change of a piece is made in both, unless the maker says otherwise.
  const note = again.getByRole('status', { name: 'What the last change did' });
  await again.getByRole('button', { name: /^Cuff, drawn to scale/ }).click();
  const cuff = again.getByRole('dialog', { name: 'Cuff', exact: true });
  await cuff.getByLabel('By').fill('1.5 cm');
  await cuff.getByRole('button', { name: 'Lengthen' }).click();
  await expect(note).toContainText(/^Cuff lengthened by 15 mm.*In size 8 as well\./);
  await again.getByRole('button', { name: /^Cuff, drawn to scale/ }).click();
  await cuff.getByLabel('Change every size').uncheck();
  await cuff.getByLabel('By').fill('1.5 cm');
  await cuff.getByRole('button', { name: 'Shorten' }).click();
  await expect(note).toContainText(/^Cuff shortened by 15 mm/);
  await expect(note).not.toContainText('as well');
  await again.getByLabel('Coats in size 8').fill('3');
  await again.getByLabel('Coats in size 8').press('Enter');
  await expect(again.getByRole('link', { name: /^Plan/ })).toContainText('4 ×');
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
  // Shown as it is typed, and told aloud when the field is left.
  await expect(page.getByText('Bust or chest is too small')).toBeVisible();
  const alert = page.getByRole('alert').filter({ hasText: 'Bust or chest is too small' });
  await expect(alert).toHaveCount(0);
  await page.getByLabel('Bust or chest').blur();
  await expect(alert).toContainText('44 cm (17.3 in)');
  await expect(page.getByRole('button', { name: 'Make this plan' })).toBeDisabled();
  await page.getByLabel('Bust or chest').fill('64 cm');
  await expect(fit).toBeVisible();
});
