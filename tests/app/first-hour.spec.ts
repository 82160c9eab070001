/** From an empty workshop to an answer, with a cloth of one's own and a drafted coat; the steps and the time of each. */
import { readFileSync } from 'node:fs';
import { expect, test } from './door.ts';
import { keystrokeLevel, stopwatchRow } from './keystroke-level.ts';

const told = readFileSync(new URL('../../docs/first-hour.md', import.meta.url), 'utf8');

// The response of the machine that is written down is that of lays by the clock.
test.use({ layPace: process.env.FIRST_HOUR ? 'real' : 'found' });

test('a new maker is led from nothing to an answer, in the steps and the time that are written down', async ({
  page,
}) => {
  const watch = keystrokeLevel();
  const steps = page.getByRole('region', { name: 'Your first answer in three steps' });
  const link = (name: string) => steps.getByRole('link', { name });
  const home = page.getByRole('link', { name: 'Bolt & Baffle' });

  watch.begin('Units and currency');
  await watch.click(page.getByRole('button', { name: 'Keep these' }));

  watch.begin('Put a cloth on the shelf');
  await watch.click(link('Put a cloth on the shelf'));
  await watch.click(page.getByRole('button', { name: 'New item' }));
  const sheet = page.getByRole('dialog', { name: 'New item' });
  await watch.fill(sheet.getByLabel('Name'), 'Hollin taffeta');
  await watch.fill(sheet.getByLabel('Colour'), 'pine');
  await watch.fill(sheet.getByLabel('Width', { exact: true }), '145 cm');
  await watch.fill(sheet.getByLabel('Length', { exact: true }), '12');
  await watch.fill(sheet.getByLabel('Price of the lot'), '138');
  await watch.click(sheet.getByRole('button', { name: 'Add to the stash' }));
  await watch.wait(() => expect(page.getByText('12 m on hand')).toBeVisible());

  watch.begin('Draft a coat');
  await watch.click(home);
  await expect(steps.locator('[aria-current]')).toContainText('Draft a coat');
  await watch.click(link('Draft a coat'));
  await watch.fill(page.getByLabel('Name of the coat'), 'Hollin coat');
  await watch.click(page.getByRole('button', { name: 'Make this plan' }));
  await watch.wait(() => expect(page.getByRole('heading', { name: 'Hollin coat', level: 1 })).toBeVisible());

  watch.begin('See if it is covered');
  await watch.click(home);
  await expect(steps.locator('[aria-current]')).toContainText('See if it is covered');
  await watch.click(link('See if it is covered'));
  const shell = page
    .getByRole('list', { name: 'Cover by slot' })
    .getByRole('listitem', { name: 'Shell', exact: true });
  await watch.click(shell.getByRole('button', { name: /^Use Hollin taffeta/ }));
  await watch.wait(() => expect(shell).toContainText('Covered'));
  await expect(shell).toContainText(/of the 12 m free/);

  // All is taken: the list is gone, and stays away.
  await home.click();
  await expect(page.getByRole('link', { name: /Hollin coat/ })).toBeVisible();
  await expect(steps).toHaveCount(0);

  const rows = watch.steps();
  if (process.env.FIRST_HOUR)
    for (const row of rows) console.log(stopwatchRow(row), `${row.responseSeconds.toFixed(1)} s`);
  for (const row of rows) expect(told).toContain(stopwatchRow(row));
  const keys = rows.reduce((sum, { counts }) => sum + counts.K, 0);
  const seconds = rows.reduce((sum, row) => sum + row.seconds, 0);
  expect(rows.reduce((sum, { actCount }) => sum + actCount, 0)).toBe(16);
  expect(told).toContain(`| In all | 16 | ${keys} | ${Math.round(seconds)} s |`);
});

test('the list of first steps is put away for good', async ({ page, workshop }) => {
  const steps = page.getByRole('region', { name: 'Your first answer in three steps' });
  await steps.getByRole('button', { name: 'Put this list away' }).click();
  await expect(steps).toHaveCount(0);
  const again = await workshop.reopen();
  await expect(again.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(again.getByRole('list', { name: 'What it answers' })).toBeVisible();
  await expect(again.getByText('Put this list away')).toHaveCount(0);
});
