import { readFileSync } from 'node:fs';
import { expect, test } from './door.ts';

const headings =
  'kind,name,place,width (mm),received on (year-month-day),price of the lot (EUR),on hand (in the unit)';
const written = [
  headings,
  'cloth,Nettle canvas,"rack 3, right",54 in,2026-03-27,41.20,5300',
  'thread,Tarnspun 36,drawer 2,,,,',
].join('\r\n');

test('a shelf written in a spreadsheet comes in, goes out, comes back changed; a wrong line changes nothing', async ({
  page,
}) => {
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: 'Stash' }).click();
  await page.getByRole('button', { name: 'Stash from a file' }).click();
  const sheet = page.getByRole('dialog', { name: 'Stash from a file' });
  const choose = (text: string) =>
    sheet
      .getByLabel('Stash file')
      .setInputFiles({ name: 'stash.csv', mimeType: 'text/csv', buffer: Buffer.from(text) });

  await choose(written.replace('cloth,', 'fabric,'));
  await expect(sheet.getByRole('alert')).toContainText('Line 2, column "kind" says "fabric"');
  await sheet.getByRole('button', { name: 'Bring it in' }).click();
  await expect(sheet.getByText(/^A file without problems is not chosen yet/)).toBeVisible();

  await choose(written);
  await expect(sheet.getByText('Would bring 2 new items, 1 new lot.')).toBeVisible();
  await expect(sheet.getByText('Lot of 2026-03-27: 1 length, 5.3 m')).toBeVisible();
  await sheet.getByRole('button', { name: 'Bring it in' }).click();
  await expect(sheet).toBeHidden();
  await expect(page.getByRole('option', { name: /Nettle canvas/ })).toContainText('5.3 m');
  await expect(page.getByRole('option')).toHaveCount(2);

  const saving = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Stash to a file' }).click();
  const saved = readFileSync(await (await saving).path(), 'utf8');
  await page.getByRole('button', { name: 'Stash from a file' }).click();
  await choose(saved);
  await expect(sheet.getByText('2 lines read: nothing would change.')).toBeVisible();
  await choose(saved.replace('rack 3, right', 'rack 9, floor'));
  await expect(sheet.getByText('place: rack 3, right → rack 9, floor')).toBeVisible();
  await sheet.getByRole('button', { name: 'Bring it in' }).click();
  await expect(sheet).toBeHidden();
  await expect(page.getByRole('option', { name: /Nettle canvas/ })).toContainText('rack 9, floor');
});

test('rows copied from a spreadsheet are pasted, read before anything is written, and refused whole', async ({
  page,
}) => {
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: 'Stash' }).click();
  await page.getByRole('button', { name: 'Stash from a file or pasted rows' }).click();
  const sheet = page.getByRole('dialog', { name: 'Stash from a file' });
  // As a spreadsheet puts them on the clipboard: tabs, and commas in a heading and in a name.
  const heads = ['kind', 'name', 'width (mm)', 'received on (year-month-day)', 'price of the lot (EUR)'];
  const rows = [
    [...heads, 'received (in the unit)', 'flaws (mm: along, across, long, wide)'],
    ['cloth', 'Nettle canvas, washed', '1480', '2026-03-27', '61.20', '5300', '2100 40 60 35'],
    ['thread', 'Tarnspun 40', '', '', '', '', ''],
  ];
  const copied = (table: readonly (readonly string[])[]) => table.map((row) => row.join('\t')).join('\r\n');
  const field = sheet.getByLabel('Or rows from a spreadsheet');
  await field.fill(copied(rows.with(2, rows[2]!.with(2, '40 cm'))));
  await expect(sheet.getByRole('alert')).toContainText('Line 3, column "width (mm)" is not a fact of thread');
  await sheet.getByRole('button', { name: 'Bring it in' }).click();
  await expect(sheet.getByText(/no such rows are pasted/)).toBeVisible();

  await field.fill(copied(rows));
  await expect(sheet.getByText('Would bring 2 new items, 1 new lot.')).toBeVisible();
  await sheet.getByRole('button', { name: 'Bring it in' }).click();
  await expect(sheet).toBeHidden();
  await expect(page.getByRole('option', { name: /Nettle canvas, washed/ })).toContainText('5.3 m');
  await expect(page.getByRole('option')).toHaveCount(2);
});

test('of a shelf with 900 items only the rows in sight are in the page, and the last is a key away', async ({
  page,
}) => {
  await page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: 'Stash' }).click();
  await page.getByRole('button', { name: 'Stash from a file' }).click();
  const sheet = page.getByRole('dialog', { name: 'Stash from a file' });
  const lines = Array.from({ length: 900 }, (_, n) => `thread,Tarnspun ${n + 1}`);
  const buffer = Buffer.from(['kind,name', ...lines].join('\n'));
  await sheet.getByLabel('Stash file').setInputFiles({ name: 'many.csv', mimeType: 'text/csv', buffer });
  await expect(sheet.getByText('Would bring 900 new items.')).toBeVisible();
  await expect(sheet.getByText('And 600 more.')).toBeVisible();
  await sheet.getByRole('button', { name: 'Bring it in' }).click();
  await expect(sheet).toBeHidden();
  await expect(page.getByRole('status').getByText('900 items')).toBeVisible();
  await expect(page.getByRole('option', { name: /Tarnspun 1\b/ })).toBeVisible();
  expect(await page.getByRole('option').count()).toBeLessThan(40);
  await page.getByRole('listbox', { name: 'Items in the stash' }).press('End');
  await expect(page.getByRole('option', { name: /Tarnspun 900/ })).toBeVisible();
  expect(await page.getByRole('option').count()).toBeLessThan(40);
});
