/** From what a coat costs to what it is sold for, as the maker walks it. */
import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';
import { stopLaying } from './laying.ts';

async function openCost(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('list', { name: 'Cover by slot' })).toBeVisible();
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: /^Cost/ })
    .click();
  await stopLaying(page);
}

/** The first amount of each of these rows: that of one coat. Read at once, as a better lay changes all of them. */
async function coatMinor(page: Page, rows: readonly string[]): Promise<number[]> {
  const texts = await page.getByRole('row').evaluateAll((all) => all.map((row) => row.textContent));
  return rows.map((row) => {
    const text = texts.find((one) => one.startsWith(row)) ?? '';
    return Math.round(Number(/([\d,]+\.\d\d) EUR/.exec(text)?.[1]?.replace(/,/g, '')) * 100);
  });
}

test('a price is made of material, work and overhead, and changes with the rules', async ({ page }) => {
  await openCost(page);
  await page.getByRole('tab', { name: 'Price' }).click();
  await page.getByLabel('Overhead is').selectOption('left out');
  await page.getByLabel('Rate of an hour').fill('19.80');
  await page.getByLabel('Rate of an hour').press('Enter');
  await page.getByLabel('Work on one coat, your estimate').fill('7.5 h');
  await page.getByLabel('Work on one coat, your estimate').press('Enter');
  await expect(page.getByText('The work on one coat is estimated at 7:30 h.')).toBeVisible();
  await expect(page.getByRole('row', { name: /^Work / })).toContainText('148.50 EUR');
  await page.getByLabel('Wholesale by').selectOption('mark-up');
  await page.getByLabel('Wholesale mark-up').fill('60 %');
  await page.getByLabel('Wholesale mark-up').press('Enter');
  await expect(page.getByRole('row', { name: /^Wholesale / })).toContainText('cost × (1 + 60 %)');
  const [materialMinor = 0, costMinor = 0, wholesaleMinor = 0] = await coatMinor(page, [
    'Material',
    'Cost',
    'Wholesale',
  ]);
  expect(materialMinor).toBeGreaterThan(1000);
  expect(costMinor).toBe(materialMinor + 14_850);
  expect(Math.abs(wholesaleMinor - costMinor * 1.6)).toBeLessThanOrEqual(0.5);

  // The rules are the workshop's: they are there in the next window too.
  await page.reload();
  await page.getByRole('tab', { name: 'Price' }).click();
  await expect(page.getByLabel('Rate of an hour')).toHaveValue('19.80');
  await expect(page.getByLabel('Work on one coat, your estimate')).toHaveValue('7:30 h');
  await expect(page.getByLabel('Wholesale mark-up')).toHaveValue('60 %');
});

test('two sizes of a coat stand side by side with their lays', async ({ page }) => {
  const coats = page.getByRole('link', { name: 'Coats', exact: true });
  const begin = async (name: string, size: string, length: string) => {
    await coats.click();
    await page.getByRole('button', { name: 'New coat' }).first().click();
    const form = page.getByRole('dialog', { name: 'New coat' });
    await form.getByLabel('Name').fill(name);
    await form.getByLabel('Size').fill(size);
    await form.getByRole('button', { name: 'Begin the plan' }).click();
    await page.getByRole('button', { name: 'Add a shape' }).first().click();
    const strip = page.getByRole('dialog', { name: 'Add a shape' });
    await strip.getByLabel('Name').fill('Panel');
    await strip.getByLabel('Length').fill(length);
    await strip.getByLabel('Width', { exact: true }).fill('900 mm');
    await strip.getByRole('button', { name: 'Add the strip' }).click();
    await expect(page.getByRole('button', { name: /^Panel, drawn to scale/ })).toBeVisible();
  };
  await begin('Reedling 42', '42', '930 mm');
  await begin('Reedling', '40', '880 mm');
  await page.getByLabel('Another size, from the plan').selectOption({ label: 'Reedling 42, size 42' });
  await page.getByRole('button', { name: 'Add this size' }).click();
  await expect(page.getByText('Size 42 added, one coat.')).toBeVisible();

  await page.getByRole('link', { name: /^Cost/ }).click();
  await page.getByRole('tab', { name: 'Side by side' }).click();
  await page.getByLabel('Size 40').uncheck();
  await page.getByRole('button', { name: 'Work them out' }).click();
  const planned = page.getByRole('row', { name: /^As planned/ });
  const larger = page.getByRole('row', { name: /^Size 42/ });
  await expect(larger).toBeVisible();
  await expect(page.getByRole('row', { name: /^Size 40/ })).toHaveCount(0);
  const laidMm = async (row: typeof planned) =>
    1000 * Number.parseFloat((await row.getByRole('cell').nth(1).textContent()) ?? '');
  // On a width that takes one panel: 880 + 930 against twice 930, cut from shell and from lining.
  expect((await laidMm(larger)) - (await laidMm(planned))).toBeCloseTo(100, -1);
  await larger.getByRole('button', { name: 'Lays of size 42' }).click();
  await expect(page.getByRole('region', { name: 'Lays of size 42' }).getByRole('img').first()).toBeVisible();
});

test.describe('lays that go on until they are stopped', () => {
  test.use({ layPace: 'unending' });

  test('a comparison that is stopped leaves nothing half laid behind', async ({ page }) => {
    await openCost(page);
    await page.getByRole('tab', { name: 'Side by side' }).click();
    await expect(page.getByRole('button', { name: 'Work them out' })).toBeDisabled();
    await page.getByLabel('Another item of the stash').selectOption({ label: 'Slatewater nylon' });
    await page.getByRole('button', { name: 'Add to compare' }).click();
    await page.getByRole('button', { name: 'Work them out' }).click();
    await expect(page.getByText('0 of 2 done; now as planned.')).toBeVisible();
    await page.getByRole('button', { name: 'Stop comparing' }).click();
    await expect(page.getByRole('button', { name: 'Work them out' })).toBeEnabled();
    await expect(page.getByRole('row')).toHaveCount(0);
  });
});

test('what was cut stands beside the estimate from before, and is in the account', async ({ page }) => {
  await openCost(page);
  await page.getByRole('tab', { name: 'As cut' }).click();
  await expect(page.getByText('Nothing was cut for this coat yet.')).toBeVisible();
  await cutOneCoat(page);
  await page.reload();
  await page.getByRole('tab', { name: 'As cut' }).click();
  const shell = page.getByRole('row', { name: /^Shell/ });
  // 3.5 m of the roll, at what its lot cost; the estimate of one coat follows once it is laid.
  await expect(shell.getByRole('cell').nth(2)).toContainText('3.5 m');
  await expect(shell.getByRole('cell').nth(1)).toContainText(/[\d.]+ EUR\s*[\d.]+ m/);
  await expect(page.getByText('A coat, estimated for the same slots').locator('..')).toContainText('EUR');
  const cut = await shell.getByRole('cell').nth(2).textContent();
  await expect(page.getByRole('region', { name: 'Cuttings of this coat' })).toContainText(
    cut?.split(' EUR')[0] ?? 'no amount',
  );
  await page.getByRole('link', { name: 'Account', exact: true }).click();
  await expect(page.getByRole('region', { name: 'Cut into coats' })).toContainText(
    `Fenwalk coat${cut?.split(' EUR')[0]}`,
  );
});

/** Books 3.5 m of the longest roll of the shell for one coat, as a cutting does. */
async function cutOneCoat(page: Page): Promise<void> {
  const planId = decodeURIComponent(/coats\/([^/]+)\//.exec(page.url())?.[1] ?? '');
  const said = await page.evaluate(async (planId) => {
    const ask = async (call: string, input: unknown) => {
      const body = JSON.stringify({ call, workshop: 'demo', input });
      const doors = (
        window as unknown as { boltAndBaffle?: Record<string, (...given: unknown[]) => unknown> }
      ).boltAndBaffle;
      if (doors?.[call]) return doors[call]('demo', input);
      const headers = { 'content-type': 'application/json' };
      return (await fetch('call', { method: 'POST', headers, body })).json();
    };
    const { value } = (await ask('flowInput', { planId })) as {
      value: {
        revision: number;
        plan: { size: string; slots: { id: string; itemId: string }[] };
        shelf: {
          item: { id: string };
          lots: { id: string; lengths: { id: string; onHandMm: number }[] }[];
        }[];
      };
    };
    const itemId = value.plan.slots.find(({ id }) => id === 'shell')?.itemId;
    const lots = value.shelf.find(({ item }) => item.id === itemId)?.lots ?? [];
    const [roll] = lots
      .flatMap((lot) => lot.lengths.map((length) => ({ lotId: lot.id, ...length })))
      .sort((a, b) => b.onHandMm - a.onHandMm);
    const ring = [0, 0, 700, 0, 700, 500, 0, 500];
    return ask('recordCutting', {
      planId,
      basedOn: value.revision,
      coats: [{ size: value.plan.size, coatCount: 1 }],
      note: '',
      releasesRest: false,
      slots: [
        {
          slotId: 'shell',
          met: {
            kind: 'shapes',
            shapes: [
              { pieceId: 'back', size: value.plan.size, name: 'Back', ring, count: 1, mirroredCount: 0 },
            ],
          },
          lines: [
            { lotId: roll?.lotId, lengthId: roll?.id, amount: 3500, pieceAreaMm2: 3_900_000, kept: [] },
          ],
        },
      ],
    });
  }, planId);
  expect(said).toMatchObject({ ok: true });
}
