/** What goes wrong behind a room: it is said in a sentence, there is a way on, and the other rooms go on working. */
import type { Page } from '@playwright/test';
import { expect, type OpenWorkshop, test } from './door.ts';
import { stopLaying } from './laying.ts';

const rooms = (page: Page) => page.getByRole('navigation', { name: 'Rooms' });

/** Answers one call of the contract in another way until it is given up. */
async function answering(page: Page, name: string, answer: object): Promise<() => Promise<void>> {
  const handler: Parameters<Page['route']>[1] = (route) =>
    route.request().postDataJSON().call === name ? route.fulfill({ json: answer }) : route.fallback();
  await page.route('**/call', handler);
  return () => page.unroute('**/call', handler);
}

const refusal = {
  ok: false,
  problems: [{ where: 'The workshop file', what: 'was busy', fix: 'Wait a moment.' }],
};

/** Errors that the spec brings about, and that the page therefore names in its console. */
function expectErrors(workshop: OpenWorkshop, about: RegExp): void {
  const [...errors] = workshop.consoleErrors;
  workshop.consoleErrors.length = 0;
  expect(errors.length).toBeGreaterThan(0);
  for (const error of errors) expect(error).toMatch(about);
}

test('an address that was cut in the middle of a letter opens its room', async ({ page }) => {
  await page.evaluate(() => (window.location.hash = '#/stash/%E0%A4'));
  await expect(page.getByRole('heading', { name: 'Stash', level: 1 })).toBeVisible();
  await page.reload();
  await expect(rooms(page)).toBeVisible();
  await rooms(page).getByRole('link', { name: 'Coats', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Coats', level: 1 })).toBeVisible();
});

test('a room that cannot be shown says so, is opened again, and leaves the other rooms be', async ({
  page,
  workshop,
}) => {
  const fix = await answering(page, 'listSuppliers', { ok: true, value: { rows: [{}] } });
  await rooms(page).getByRole('link', { name: 'Suppliers' }).click();
  const mishap = page.getByRole('alert');
  await expect(mishap).toContainText('This room cannot be shown');
  await rooms(page).getByRole('link', { name: 'Account' }).click();
  await expect(mishap).toHaveCount(0);
  await expect(page.getByText('Nothing was received yet')).toBeVisible();
  await page.goBack();
  await expect(mishap).toBeVisible();
  await fix();
  await mishap.getByRole('button', { name: 'Open it again' }).click();
  await expect(page.getByRole('heading', { name: 'Suppliers', level: 1 })).toBeVisible();
  await expect(mishap).toHaveCount(0);
  expectErrors(workshop, /TypeError/);
});

test('a workshop that cannot be read, in a room or at the start, is asked for once more', async ({
  page,
}) => {
  await rooms(page).getByRole('link', { name: 'Settings' }).click();
  let fix = await answering(page, 'workshopFacts', refusal);
  await page.getByLabel('Workshop name').fill('Thrush & Bramble');
  const notice = page.getByRole('alert').filter({ hasText: 'The workshop file was busy' });
  await expect(notice).toBeVisible();
  await expect(page.getByLabel('Workshop name')).toHaveValue('Thrush & Bramble');
  await fix();
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(notice).toHaveCount(0);
  await expect(rooms(page)).toContainText('Thrush & Bramble');

  fix = await answering(page, 'workshopFacts', refusal);
  await page.reload();
  await expect(page.getByRole('alert')).toContainText('The workshop file was busy');
  await fix();
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(rooms(page)).toBeVisible();
});

/** Every worker dies of what it is asked, as when memory runs out, until that is mended. */
async function dyingWorkers(page: Page): Promise<() => Promise<void>> {
  const ask = await page.evaluateHandle(() => {
    const { postMessage } = Worker.prototype;
    Worker.prototype.postMessage = function die() {
      this.dispatchEvent(new ErrorEvent('error', { message: 'out of memory' }));
    };
    return postMessage;
  });
  return () =>
    page.evaluate((postMessage) => {
      Worker.prototype.postMessage = postMessage;
    }, ask);
}

test.describe('lays that nobody has looked for yet', () => {
  test.use({ layPace: 'soon' });

  test('a lay that fails is told, and is looked for again', async ({ page }) => {
    let fix = await dyingWorkers(page);
    await page.getByRole('button', { name: 'Open the demo workshop' }).click();
    const alert = page.getByRole('alert');
    await expect(alert).toContainText(
      'The estimate could not be worked out: the lay could not be finished: what looks for it stopped twice (out of memory)',
    );
    // No room goes on waiting for what will not come.
    for (const name of ['Lay', 'Cover', 'To buy', 'Cost', 'Cutting']) {
      await page
        .getByRole('region', { name: 'The road of this coat' })
        .getByRole('link', { name: new RegExp(`^${name}`) })
        .click();
      await expect(page.getByRole('heading', { name, level: 1 })).toBeVisible();
      await expect(page.getByText('Working it out…')).toHaveCount(0);
      await expect(alert).toContainText('The estimate could not be worked out');
    }
    await fix();
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect(page.getByRole('list', { name: 'What is cut' })).toBeVisible();
    await expect(alert).toHaveCount(0);

    // The lays of some coats of the batch are looked for in the room itself.
    await stopLaying(page);
    fix = await dyingWorkers(page);
    const coats = page.getByLabel(/^Coats cut/).first();
    await coats.fill('1');
    await coats.press('Enter');
    await expect(alert).toContainText('What to cut for these coats could not be worked out');
    await fix();
    await page.getByRole('button', { name: 'Try again' }).click();
    await expect(page.getByRole('list', { name: 'What is cut' })).toBeVisible();
    await expect(alert).toHaveCount(0);
  });
});

test('a change of a piece that is refused is told under its own field', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await page
    .getByRole('region', { name: 'The road of this coat' })
    .getByRole('link', { name: /^Quilting/ })
    .click();
  const way = page.getByLabel(/^Lines of .* run$/).first();
  const fix = await answering(page, 'savePlan', refusal);
  await way.selectOption('along the grain');
  await expect(way).toHaveAccessibleDescription(/The workshop file was busy/);
  await fix();
  await way.selectOption('not at all');
  await expect(page.getByLabel(/^Lines of .* run$/).first()).toHaveAccessibleDescription('');
});

test('a coat that is left while it is read lays nothing afterwards', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page).toHaveURL(/\/cover$/);
  await rooms(page).getByRole('link', { name: 'Suppliers' }).click();
  const suppliers = page.getByRole('heading', { name: 'Suppliers', level: 1 });
  await expect(suppliers).toBeVisible();
  // Of this first visit nothing is under way any more, nor remembered.
  await page.reload();
  await expect(suppliers).toBeVisible();

  // The answer comes once the maker has gone on.
  const left = Promise.withResolvers<void>();
  const begunAfterwards: string[] = [];
  await page.route('**/call', async (route) => {
    const { call } = route.request().postDataJSON();
    if (call === 'flowInput') await left.promise;
    if (call === 'readLay') begunAfterwards.push(call);
    await route.continue();
  });
  const asked = page.waitForRequest((request) => request.postDataJSON()?.call === 'flowInput');
  await page.goBack();
  await asked;
  await rooms(page).getByRole('link', { name: 'Account' }).click();
  await expect(page.getByRole('heading', { name: 'Account', level: 1 })).toBeVisible();
  const answered = page.waitForResponse(
    (response) => response.request().postDataJSON()?.call === 'flowInput',
  );
  left.resolve();
  await (await answered).finished();
  // A run asks for kept lays as its first step; a room opened after it is read after it.
  await rooms(page).getByRole('link', { name: 'Stash' }).click();
  await expect(page.getByRole('option').first()).toBeVisible();
  expect(begunAfterwards).toEqual([]);
});
