import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { ownNode, root } from '../../main/launch/install.mjs';
import { expect, test } from './door.ts';

async function goTo(page: Page, room: string): Promise<void> {
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: room }).click();
}

async function addThread(page: Page, name: string): Promise<void> {
  await goTo(page, 'Stash');
  await page.getByRole('button', { name: 'New item' }).click();
  const sheet = page.getByRole('dialog', { name: 'New item' });
  await sheet.getByText('Thread', { exact: true }).click();
  await sheet.getByLabel('Name').fill(name);
  await sheet.getByRole('button', { name: 'Add to the stash' }).click();
  await expect(sheet).toBeHidden();
}

test('a backup made by hand is brought back after a question, and what stood there is kept', async ({
  page,
  workshop,
}) => {
  await addThread(page, 'Tarnspun 36');
  await goTo(page, 'Settings');
  const group = page.getByRole('region', { name: 'Backups' });
  await expect(group.getByText('There is none yet.')).toBeVisible();
  await group.getByRole('button', { name: 'Back up now' }).click();
  await expect(group.getByRole('status')).toHaveText('Backed up.');
  await expect(group.getByRole('row', { name: /made by hand/ })).toContainText(/\d+ kB/);

  await page.getByLabel('Workshop name').fill('Late name');
  await expect(page.getByRole('status').getByText('Saved')).toBeVisible();
  await addThread(page, 'Brackenspun 50');
  await goTo(page, 'Settings');
  await group.getByRole('button', { name: /^Bring back the one from/ }).click();
  await expect(group.getByText('What is here now is kept as a backup first.')).toBeVisible();
  await group.getByRole('button', { name: 'Yes, bring it back' }).click();
  await expect(group.getByRole('status')).toContainText('The workshop is as it was on');
  await expect(group.getByRole('row', { name: /before another was brought back/ })).toBeVisible();
  await expect(page.getByLabel('Workshop name')).toHaveValue('');
  await goTo(page, 'Stash');
  await expect(page.getByRole('option')).toHaveCount(1);
  await expect(page.getByRole('option', { name: /Tarnspun 36/ })).toBeVisible();

  // The start after a change makes one by itself.
  const again = await workshop.reopen();
  await goTo(again, 'Settings');
  await expect(
    again.getByRole('region', { name: 'Backups' }).getByRole('row', { name: /at the start/ }),
  ).toHaveCount(1);
});

test('the demo workshop has no backups', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByText('This is the demo workshop.')).toBeVisible();
  await goTo(page, 'Settings');
  await expect(page.getByRole('heading', { name: 'Data file' })).toBeVisible();
  await expect(page.getByRole('region', { name: 'Backups' })).toHaveCount(0);
});

test('a second start on the open file ends with a sentence, and the first goes on', async ({
  page,
  workshop,
}) => {
  await addThread(page, 'Tarnspun 36');
  const second = spawn(ownNode, [join(root, 'main/doors/loopback-host.ts'), '--data', workshop.dataFile]);
  let told = '';
  second.stderr.on('data', (bytes) => {
    told += String(bytes);
  });
  const [code] = await once(second, 'close');
  expect(code).toBe(3);
  expect(told).toContain('is open already in another window of this program');
  await addThread(page, 'Brackenspun 50');
  await expect(page.getByRole('option')).toHaveCount(2);
});
