import { join } from 'node:path';
import { root } from '../../main/launch/install.mjs';
import { expect, test } from './door.ts';

test.use({ startsFrom: join(root, 'tests/fixtures/released/0006.sqlite') });

test('a file of an earlier version says what had to be assumed, until it is read', async ({
  page,
  workshop,
}) => {
  const notes = (on: typeof page) => on.getByRole('region', { name: 'This file was brought up to date' });
  await expect(notes(page).getByRole('listitem')).toHaveCount(2);
  await expect(notes(page)).toContainText('so 1219 mm of it was released');
  await notes(page).getByRole('button', { name: 'I have read this' }).click();
  await expect(notes(page)).toHaveCount(0);
  const again = await workshop.reopen();
  await expect(again.getByRole('heading', { name: 'Fen & Tarn' })).toBeVisible();
  await expect(notes(again)).toHaveCount(0);
  await again.getByRole('navigation').getByRole('link', { name: 'Settings' }).click();
  await expect(notes(again).getByRole('listitem')).toHaveCount(2);
});
