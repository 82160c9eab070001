/** The workshop's file was hurt from outside: the window says so, and there is a way back. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { expect, type OpenWorkshop, test } from './door.ts';

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

async function backedUp(page: Page): Promise<void> {
  await addThread(page, 'Tarnspun 36');
  await goTo(page, 'Settings');
  const group = page.getByRole('region', { name: 'Backups' });
  await group.getByRole('button', { name: 'Back up now' }).click();
  await expect(group.getByText(/^1 backup, \d+ kB in all\.$/)).toBeVisible();
}

/** Rubbish in the middle of the file: in the pages from the fourth on. */
function spoil({ dataFile }: OpenWorkshop): void {
  const bytes = readFileSync(dataFile);
  bytes.fill(0x5a, 4096 * 12, 4096 * 14);
  writeFileSync(dataFile, bytes);
}

test('a workshop that cannot be opened offers its backups at once, and keeps what was there', async ({
  page,
  workshop,
}) => {
  await backedUp(page);
  await addThread(page, 'Brackenspun 50');
  const again = await workshop.reopen(() => writeFileSync(workshop.dataFile, 'Dear aunt. '.repeat(900)));
  await expect(again.getByRole('heading', { name: 'Your workshop cannot be opened' })).toBeVisible();
  await expect(again.getByRole('alert')).toContainText('is not a database');
  await expect(again.getByRole('alert')).toContainText('end in -wal and -shm');
  await again.getByRole('button', { name: /^Bring back the one from/ }).click();
  await again.getByRole('button', { name: 'Yes, bring it back' }).click();
  await goTo(again, 'Stash');
  await expect(again.getByRole('option')).toHaveCount(1);
  await expect(again.getByRole('alert')).toHaveCount(0);
  await addThread(again, 'Slatespun 40');
  const folder = workshop.dataFile.replace('.sqlite', '-backups');
  const [apart] = readdirSync(folder).filter((name) => name.startsWith('kept-apart-'));
  expect(readFileSync(join(folder, apart!, 'workshop.sqlite'), 'utf8')).toContain('Dear aunt.');
});

test('a damaged workshop says so above every room until that is read', async ({ page, workshop }) => {
  await backedUp(page);
  const again = await workshop.reopen(() => spoil(workshop));
  const notice = again.getByRole('main').getByRole('alert').filter({ hasText: 'is damaged' });
  await expect(notice).toBeVisible();
  await goTo(again, 'Account');
  await expect(notice).toBeVisible();
  await again.getByRole('button', { name: 'I have read this' }).click();
  await expect(notice).toHaveCount(0);
  await goTo(again, 'Settings');
  await expect(notice).toHaveCount(1);
});

test('the log shows where the program failed, without a word of the maker, and is saved as a copy', async ({
  page,
  workshop,
}) => {
  await goTo(page, 'Settings');
  const log = page.getByRole('region', { name: 'Log' });
  await expect(log.getByText('Nothing has failed yet.')).toBeVisible();
  await page.route('**/call', (route) =>
    route.request().postDataJSON().call === 'listSuppliers'
      ? route.fulfill({ json: { ok: true, value: { rows: [{ name: 'Canarywing Cloth' }] } } })
      : route.fallback(),
  );
  await goTo(page, 'Suppliers');
  await expect(page.getByRole('alert')).toContainText('The log under Settings says where in the program.');
  await goTo(page, 'Settings');
  await log.getByRole('button', { name: 'Show' }).click();
  await expect(log.locator('pre')).toContainText(
    /window, suppliers: TypeError\n {4}at .*assets\/index-[\w-]+\.js:\d+:\d+/,
  );
  await expect(log.locator('pre')).not.toContainText('Canarywing');
  expect(await log.locator('pre').textContent()).not.toContain(new URL(page.url()).pathname.slice(1, 12));
  await expect(log.getByText(workshop.dataFile.replace('.sqlite', '-log.txt'))).toBeVisible();
  const saving = page.waitForEvent('download');
  await log.getByRole('button', { name: 'Save a copy' }).click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toMatch(/^bolt-and-baffle-log-\d{4}-\d{2}-\d{2}\.txt$/);
  expect(readFileSync(await saved.path(), 'utf8')).toBe(await log.locator('pre').textContent());
  workshop.consoleErrors.length = 0;
});
