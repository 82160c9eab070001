import { readFile } from 'node:fs/promises';
import Papa from 'papaparse';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './door.ts';

async function openNeeds(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page).toHaveURL(/\/cover$/);
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: /^Needs/ })
    .click();
  await expect(need(page, 'sewing thread')).toBeVisible();
}

function need(page: Page, name: string): Locator {
  return page
    .getByRole('listitem')
    .filter({ has: page.getByRole('heading', { name, exact: true, level: 2 }) });
}

const metresIn = async (place: Locator) => Number(/(\d+) m/.exec((await place.textContent()) ?? '')?.[1]);

test('thread is told by stitch, colour and spool, and the maker’s own metres stand in its place', async ({
  page,
}) => {
  await openNeeds(page);
  const thread = need(page, 'sewing thread');
  await thread.getByText('By stitch, needle and bobbin').click();
  await expect(thread.getByRole('row', { name: /301 lockstitch/ })).toBeVisible();
  await expect(thread.getByRole('row', { name: /by hand .*none/ })).toBeVisible();
  const byColour = page.getByRole('region', { name: 'Thread by colour' });
  await expect(byColour.getByRole('row', { name: /Ropewalk spun 40, dark olive/ })).toContainText(
    '1 of 1000 m',
  );

  await thread
    .getByRole('button', { name: 'Put in my own for one coat: sewing thread for one coat' })
    .click();
  await thread.getByLabel('sewing thread for one coat').fill('300 m');
  await thread.getByRole('button', { name: 'Use this' }).click();
  await expect(thread).toContainText('1800 m');
  await expect(thread).toContainText('measured');
  await expect(byColour.getByRole('row', { name: /Ropewalk spun 40/ })).toContainText('1800 m');
  await expect(byColour.getByRole('row', { name: /Ropewalk spun 40/ })).toContainText('2 of 1000 m');
  await thread.getByRole('button', { name: /^Go back to the computed one/ }).click();
  await expect(thread).toContainText(/[89]\d\d m\s*at least/);
});

test('a seam that is sewn otherwise takes other thread', async ({ page }) => {
  await openNeeds(page);
  const thread = need(page, 'sewing thread');
  const before = await metresIn(thread);
  await page.locator('summary', { hasText: 'How each seam is sewn' }).click();
  await page.getByLabel('Stitch of Side').selectOption({ label: '516 safety stitch' });
  await expect(page.getByText('Side: stitch 516.', { exact: true })).toBeVisible();
  await expect.poll(() => metresIn(thread)).toBeGreaterThan(before);
  const sewn = await metresIn(thread);
  await page.getByLabel('Stitch length of Side').fill('1.5 mm');
  await page.getByLabel('Stitch length of Side').press('Enter');
  await expect(page.getByText('Side: stitch 516, 1.5 mm long.')).toBeVisible();
  const lining = page.getByLabel('Raw edges of the lining');
  await expect(lining).toHaveValue('');
  await lining.selectOption({ label: 'overcast 504 three-thread overedge' });
  await expect.poll(() => metresIn(thread)).toBeGreaterThan(sewn + 1000);
  await expect(page.getByRole('region', { name: 'Thread by colour' })).toContainText(
    '5 cones on the machine at once',
  );
  const quilting = need(page, 'quilting thread');
  const plain = await metresIn(quilting);
  await page.getByLabel('Baste quilted pieces with').selectOption({ label: 'quilting thread' });
  await expect.poll(() => metresIn(quilting)).toBeGreaterThan(plain);
});

test('needles follow the seams and the hours, the zip says what to shorten it to', async ({ page }) => {
  await openNeeds(page);
  await expect(need(page, 'needles')).toContainText('NM 75/11, sharp');
  await expect(need(page, 'needles')).toContainText('588 g/m² in all at a seam');
  await expect(need(page, 'front zip')).toContainText(/Sold as 812\.8 mm; shorten to 80\d\.\d mm\./);
  await page.getByLabel('Sewing time of one coat').fill('5 h');
  await page.getByLabel('Sewing time of one coat').press('Enter');
  await expect(need(page, 'needles')).toContainText('30.0 h of sewing');
});

test('a cord is as long as the edges it runs through and its ends', async ({ page }) => {
  await openNeeds(page);
  const cord = need(page, 'hood cord');
  await expect(cord).toContainText('Sold as 1.18 m; cut to 1.17 m.');
  await cord.getByRole('button', { name: /^Change/ }).click();
  const sheet = page.getByRole('dialog', { name: 'What the hood cord runs along' });
  await sheet.getByLabel('Shorter than the edges by').fill('-20 cm');
  await sheet.getByRole('button', { name: 'Use these edges' }).click();
  await expect(sheet).toBeHidden();
  await expect(cord).toContainText('cut to 992.9 mm');
  await expect(cord).toContainText('and 200 mm for the ends');
});

test('a body stuffed with loose fill gets a backing and a list to weigh out by', async ({ page }) => {
  await openNeeds(page);
  await page.getByRole('button', { name: 'Choose stuffed pieces' }).click();
  await page.getByRole('list', { name: 'Stuffed pieces' }).getByLabel('Back', { exact: true }).click();
  await expect(
    page.getByText('Back is stuffed with loose fill in the place of its batting, and cut from backing too'),
  ).toBeVisible();
  const list = page.getByRole('table', { name: 'Filling list' });
  await expect(list.getByRole('row', { name: /^1 70 mm/ })).toContainText('6');
  const total = page.getByText(/to spare, have/);
  const before = Number(/([\d.]+) g go in/.exec((await total.textContent()) ?? '')?.[1]);
  await page.getByLabel('Overfill').fill('1.5 x');
  await page.getByLabel('Overfill').press('Enter');
  await expect
    .poll(async () => Number(/([\d.]+) g go in/.exec((await total.textContent()) ?? '')?.[1]))
    .toBeCloseTo((before * 1.5) / 1.2, 0);

  // How full it is to be is asked for, and what the maker says decides.
  const fill = page.getByRole('region', { name: 'Loose fill' });
  await expect(fill.getByText(/^No loft and no weight of fill is given/)).toBeVisible();
  await page.getByLabel('Loft of the fill').fill('12 mm');
  await page.getByLabel('Loft of the fill').press('Enter');
  await expect(fill.getByText(/fill that lofts to 12 mm shifts in so wide a channel/)).toBeVisible();
  await page.getByLabel('Weight of the fill').fill('110 g/m2');
  await page.getByLabel('Weight of the fill').press('Enter');
  await expect(total).toContainText('110 g/m² over the stuffed pieces');
  await expect(page.getByLabel('Loft of the fill')).toHaveValue('');

  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('region', { name: 'Loose fill' }).getByRole('button', { name: 'Save as CSV' }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('fenwalk-coat-filling-list.csv');
  const rows = Papa.parse<Record<string, string>>(await readFile(await download.path(), 'utf8'), {
    header: true,
  });
  expect(rows.errors).toEqual([]);
  const sum = rows.data.reduce((grams, row) => grams + Number(row['together (g)']), 0);
  expect(sum).toBeCloseTo(Number(/([\d.]+) g go in/.exec((await total.textContent()) ?? '')?.[1]), 0);
});

test('cloth that shrinks is washed first and needed longer', async ({ page }) => {
  await openNeeds(page);
  const wash = page.getByRole('region', { name: 'Wash before cutting' });
  const row = wash.getByRole('row', { name: /Body lining/ });
  await expect(row).toContainText('4.0 %2.0 %4.2 %before cutting');
  const lining = need(page, 'body lining');
  await expect(lining).toContainText(/Washed before cutting: laid on the .* that the wash leaves/);

  await wash.getByRole('link', { name: 'plan' }).click();
  const choice = page.getByRole('checkbox', { name: 'Wash the body lining before cutting' });
  await expect(choice).toBeChecked();
  await choice.click();
  await expect(page.getByText('cut unwashed, its pieces larger', { exact: true })).toBeVisible();
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: /^Needs/ })
    .click();
  await expect(row).toContainText('4.0 %2.0 %4.2 %in the coat');
  await expect(lining).toContainText('Cut unwashed: its pieces are larger by what the first wash takes.');
});
