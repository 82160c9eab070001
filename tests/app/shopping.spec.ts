/** A trip to the shops: the list aisle by aisle, ticked off, and what was bought put on the shelf in one step at its true price. */
import { pathToFileURL } from 'node:url';
import { expect, test } from './door.ts';

test('what is ticked stays ticked, and comes onto the shelf in one step as it was truly bought', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await page.getByRole('link', { name: /^To buy/ }).click();
  await page.getByRole('button', { name: 'In the shop' }).click();
  const list = page.getByRole('region', { name: 'Shopping list' });
  await expect(list.getByRole('button', { name: 'Receive what is ticked' })).toBeDisabled();
  await list.getByRole('button', { name: 'By aisle' }).click();
  const cloths = list.getByRole('region', { name: 'Cloths' });
  await cloths.getByRole('checkbox', { name: /^Peatwater nylon/ }).check();
  await list.getByRole('checkbox', { name: /^Brightpoint 75/ }).check();
  await expect(list.getByRole('status').first()).toContainText('2 of');

  // The ticks are in the workshop's file: the room reads them when it is opened again.
  await page.getByRole('link', { name: /^Needs/ }).click();
  await page.getByRole('link', { name: /^To buy/ }).click();
  await page.getByRole('button', { name: 'In the shop' }).click();
  await expect(list.getByRole('checkbox', { name: /^Peatwater nylon/ })).toBeChecked();
  await expect(list.getByRole('checkbox', { checked: true })).toHaveCount(2);

  await list.getByRole('button', { name: 'Receive what is ticked' }).click();
  const sheet = page.getByRole('dialog', { name: 'Receive 2 purchases' });
  const shell = sheet.getByRole('group', { name: 'Peatwater nylon' });
  await expect(shell.getByLabel('Supplier')).toHaveValue('Quillstone Cloth');
  await expect(shell.getByLabel('Width')).toHaveValue(/^14\d(\.\d)? cm$/);
  // The shop had a longer piece, and asked a rounder price.
  await shell.getByLabel('Length').fill('34.2 m');
  await shell.getByLabel('Price').fill('');
  await sheet.getByRole('button', { name: 'Put all on the shelf' }).click();
  await expect(sheet.getByRole('alert')).toContainText('Price of Peatwater nylon is missing');
  await shell.getByLabel('Price').fill('391.35');
  await shell.getByLabel('Dye lot').fill('P-2311');
  await sheet.getByRole('button', { name: 'Put all on the shelf' }).click();
  await expect(sheet).toBeHidden();

  // The shell is covered now, so it is off the list; the rest still stands on it.
  await expect(list.getByRole('checkbox', { name: /^Peatwater nylon/ })).toHaveCount(0);
  await expect(list.getByRole('checkbox').first()).toBeVisible();
  await page.getByRole('link', { name: 'Stash', exact: true }).click();
  await page.getByRole('option', { name: /Peatwater nylon/ }).click();
  await expect(page.getByText('P-2311').first()).toBeVisible();
  await expect(page.getByText(/391\.35/).first()).toBeVisible();
});

test('the list goes to a phone as one page, and its ticks come back by the code and by the file', async ({
  page,
}, testInfo) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await page.getByRole('link', { name: /^To buy/ }).click();
  await page.getByRole('button', { name: 'In the shop' }).click();
  const list = page.getByRole('region', { name: 'Shopping list' });
  await list.getByRole('checkbox', { name: /^Brightpoint 75/ }).check();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    list.getByRole('button', { name: 'Save for a phone' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('fenwalk-coat-to-buy.html');
  const file = testInfo.outputPath('list.html');
  await download.saveAs(file);

  const phone = await page.context().newPage();
  const asked: string[] = [];
  const refused: string[] = [];
  phone.on('request', (request) => asked.push(request.url()));
  phone.on('console', (message) => message.type() === 'error' && refused.push(message.text()));
  await phone.setViewportSize({ width: 390, height: 844 });
  await phone.goto(pathToFileURL(file).href);
  await expect(phone.getByRole('checkbox', { name: /^Brightpoint 75/ })).toBeChecked();
  const total = await phone.getByRole('checkbox').count();
  const box = await phone.getByRole('listitem').first().boundingBox();
  expect(box!.height).toBeGreaterThanOrEqual(48);
  await phone.getByText('Brightpoint 75').click();
  await phone.getByText('Peatwater nylon', { exact: false }).first().click();
  await expect(phone.getByText(`1 of ${total} ticked`)).toBeVisible();
  // The page keeps its ticks: once another page of the phone sees them, they outlive this one.
  await expect
    .poll(async () => {
      const another = await page.context().newPage();
      await another.goto(pathToFileURL(file).href);
      const isTicked = await another.getByRole('checkbox', { name: /^Peatwater nylon/ }).isChecked();
      await another.close();
      return isTicked;
    })
    .toBe(true);
  await phone.reload();
  await expect(phone.getByRole('checkbox', { name: /^Peatwater nylon/ })).toBeChecked();
  await expect(phone.getByRole('checkbox', { name: /^Brightpoint 75/ })).not.toBeChecked();
  const code = (await phone.locator('#code').textContent())!;
  expect(asked.every((url) => url.startsWith('file:'))).toBe(true);
  expect(refused).toEqual([]);
  // Its own rules keep it from reaching out, whoever asks.
  const reached = await phone.evaluate(() =>
    fetch('http://127.0.0.1:9/').then(
      () => 'reached',
      () => 'kept in',
    ),
  );
  expect(reached).toBe('kept in');
  expect(refused.join(' ')).toContain('Content Security Policy');

  await list.getByRole('button', { name: 'Ticks from the phone' }).click();
  const sheet = page.getByRole('dialog', { name: 'Ticks from the phone' });
  await sheet.getByLabel('Code').fill(code.slice(0, -1) + (code.endsWith('0') ? '2' : '0'));
  await sheet.getByRole('button', { name: 'Take the ticks' }).click();
  await expect(sheet.getByText('is mistyped')).toBeVisible();
  await sheet.getByLabel('Code').fill(code.toLowerCase());
  await sheet.getByRole('button', { name: 'Take the ticks' }).click();
  await expect(sheet.getByText(`1 of ${total} lines are ticked.`)).toBeVisible();

  await phone.getByText('Brightpoint 75').click();
  const [ticks] = await Promise.all([
    phone.waitForEvent('download'),
    phone.getByRole('button', { name: 'Save as a file' }).click(),
  ]);
  await sheet.getByLabel('Or the file that the page saved').setInputFiles(await ticks.path());
  await expect(sheet.getByText(`2 of ${total} lines are ticked.`)).toBeVisible();
  await sheet.getByRole('button', { name: 'Close' }).first().click();
  await expect(list.getByRole('checkbox', { name: /^Peatwater nylon/ })).toBeChecked();
  await expect(list.getByRole('checkbox', { name: /^Brightpoint 75/ })).toBeChecked();
  await expect(list.getByRole('checkbox', { checked: true })).toHaveCount(2);
});
