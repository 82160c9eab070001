/** Two desks at one workshop: each a host of its own, as on a machine of its own, over one PostgreSQL. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { noServer, startServer, type TempServer } from '../main/postgres/temp-server.ts';
import { type Host, type SharedHosts, sharedHosts } from './hosts.ts';
import { paceLays } from './lay-clock.ts';
import { printedBy } from './scripts.ts';

let server: TempServer | null = null;
let folder = '';
let desks: readonly SharedHosts[] = [];

test.beforeAll(async () => {
  server = await startServer();
  folder = mkdtempSync(join(tmpdir(), 'bolt-desks-spec-'));
  // Each host keeps its log and its demo in the folder of its own person.
  process.env.XDG_DATA_HOME = folder;
  desks = [sharedHosts(), sharedHosts()];
});

test.afterAll(async () => {
  for (const desk of desks) await desk.end();
  await server?.end();
  rmSync(folder, { recursive: true, force: true });
});

const hosts: Host[] = [];
test.afterEach(async () => {
  for (const host of hosts.splice(0)) await host.close();
});

/** The address of a desk that is at that workshop until the spec ends. */
async function opened(desk: SharedHosts, address: string): Promise<string> {
  const host = await desk.open(address);
  hosts.push(host);
  return host.address;
}

/** The demo's stash and coat, carried into a database as if they were a maker's own. */
async function workshopInDatabase(at: TempServer): Promise<string> {
  const address = at.address(await at.createDatabase());
  printedBy('tests/app/demo-into-database.ts', folder, address);
  return address;
}

async function showItem(page: Page, name: string) {
  await page.getByRole('navigation').getByRole('link', { name: 'Stash' }).click();
  await page.getByRole('option', { name: new RegExp(name) }).click();
  const item = page.getByRole('article', { name, exact: true });
  await expect(item).toBeVisible();
  return item;
}

async function onHand(item: Locator): Promise<string> {
  return /[\d.]+ m on hand/.exec((await item.textContent()) ?? '')?.[0] ?? '';
}

test('what one desk cuts, the other sees on its shelf', async ({ browser }) => {
  test.skip(server === null, noServer);
  test.skip(test.info().project.name !== 'loopback', 'two desks are two loopback hosts here');
  const address = await workshopInDatabase(server!);
  const pages: Page[] = [];
  for (const desk of desks) {
    const page = await (await browser.newContext({ locale: 'en-IE' })).newPage();
    await paceLays(page, () => 'soon');
    await page.goto(await opened(desk, address));
    pages.push(page);
  }
  const [cutting, looking] = pages as [Page, Page];
  const seen = await showItem(looking, 'Peatwater nylon');
  const before = await onHand(seen);
  expect(before).not.toBe('');

  await cutting.getByRole('navigation').getByRole('link', { name: 'Coats' }).click();
  await cutting
    .getByRole('link', { name: /Fenwalk coat/ })
    .first()
    .click();
  const road = cutting.getByRole('region', { name: 'The road of this coat' });
  await road.getByRole('link', { name: /^Cutting/ }).click();
  await expect(cutting.getByRole('heading', { name: 'Cutting', level: 1 })).toBeVisible();
  const shell = cutting
    .getByRole('list', { name: 'What is cut' })
    .getByRole('listitem', { name: 'Shell', exact: true });
  await expect(shell).toBeVisible();
  const book = cutting.getByRole('button', { name: 'Book the cutting' });
  await expect(book).toBeEnabled();
  await book.click();
  await expect(cutting.getByRole('region', { name: 'Cut so far' })).toContainText('6 coats of size EU 40');

  // Nothing was done at the other desk.
  await expect.poll(() => onHand(seen)).not.toBe(before);
  await expect(seen).toContainText('Fenwalk coat');

  // What is being typed stays, and everything around it follows.
  const search = looking.getByRole('searchbox').first();
  await search.fill('Peatwater');
  await cutting.getByRole('navigation').getByRole('link', { name: 'Settings' }).click();
  await cutting.getByLabel('Workshop name').fill('Two tables');
  await expect(looking.getByRole('navigation')).toContainText('Two tables');
  await expect(search).toHaveValue('Peatwater');
});

test('a desk is told at once that its server is away, and goes on when it is back', async ({ browser }) => {
  test.skip(server === null, noServer);
  test.skip(test.info().project.name !== 'loopback', 'as above');
  const address = server!.address(await server!.createDatabase());
  const page = await (await browser.newContext({ locale: 'en-IE' })).newPage();
  await page.goto(await opened(desks[0]!, address));
  await page.getByRole('navigation').getByRole('link', { name: 'Settings' }).click();
  const name = page.getByLabel('Workshop name');
  await name.fill('Fen workshop');
  await expect(page.getByText('Saved')).toBeVisible();
  await server!.kill();
  await name.fill('Heron workshop');
  await expect(page.getByText('cannot be reached')).toBeVisible();
  await server!.startAgain();
  await name.fill('Tarn workshop');
  await expect(page.getByText('Saved')).toBeVisible();
  await expect(page.getByRole('navigation')).toContainText('Tarn workshop');
});

test('a shared workshop is chosen under Settings, once it was reached', async ({ browser }) => {
  test.skip(server === null, noServer);
  test.skip(test.info().project.name !== 'loopback', 'as above');
  const file = join(folder, 'choosing.sqlite');
  const page = await (await browser.newContext({ locale: 'en-IE' })).newPage();
  await page.goto(await opened(desks[1]!, file));
  await page.getByRole('navigation').getByRole('link', { name: 'Settings' }).click();
  const group = page.getByRole('region', { name: 'Several desks' });
  const address = server!.address(await server!.createDatabase());
  const field = group.getByLabel('Address of the shared workshop');
  const open = group.getByRole('button', { name: 'Open it from the next start' });
  await field.fill(address.replace('Fenwalk', 'Heron'));
  await open.click();
  await expect(group).toContainText('lets nobody in with this name and password');
  await field.fill(address);
  await open.click();
  await expect(group).toContainText('Kept. Close the program and start it again.');
  await expect(group).not.toContainText('Fenwalk');
  await group.getByRole('button', { name: 'Go back to the file from the next start' }).click();
  await expect(group.getByRole('button', { name: /Go back/ })).toHaveCount(0);
});
