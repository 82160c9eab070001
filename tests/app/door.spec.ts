import { expect, test } from './door.ts';

test('the workshop opens in its own window', async ({ page }) => {
  await expect(page).toHaveTitle('Bolt & Baffle');
});

test('the page can reach nothing but its own door', async ({ page, workshop }) => {
  const reached = await page.evaluate(async () => {
    try {
      await fetch('http://127.0.0.1:9/elsewhere');
      return 'reached';
    } catch (error) {
      return String(error);
    }
  });
  expect(reached).toContain('TypeError');
  const refusals = workshop.consoleErrors.splice(0);
  expect(refusals.join('\n')).toContain('Content Security Policy');
});

test('the window has no way into the machine', async ({ page }) => {
  const found = await page.evaluate(() =>
    ['require', 'process', 'module', 'Buffer', 'global'].filter((name) => name in globalThis),
  );
  expect(found).toEqual([]);
});

test('the workshop opens again on the same file', async ({ page, workshop }) => {
  await expect(page).toHaveTitle('Bolt & Baffle');
  await expect(await workshop.reopen()).toHaveTitle('Bolt & Baffle');
});

test('the address of the window lets no other browser in', async ({ page, door, sharedBrowser }) => {
  test.skip(door !== 'loopback', 'the Electron window has no address');
  await expect(page).toHaveTitle('Bolt & Baffle');
  const other = await (await sharedBrowser()).newPage();
  expect((await other.goto(page.url()))?.status()).toBe(403);
  await other.close();
  await page.reload();
  await expect(page.getByRole('button', { name: 'Open the demo workshop' })).toBeVisible();
});
