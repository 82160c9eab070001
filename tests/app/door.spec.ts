import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, test } from './door.ts';

test.use({ asStarted: true });

test('the workshop opens in its own window, which reaches nothing but its own door, and again on the same file', async ({
  page,
  workshop,
}) => {
  await expect(page).toHaveTitle('Bolt & Baffle');

  await test.step('the page can reach nothing but its own door', async () => {
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

  await test.step('the window has no way into the machine', async () => {
    const found = await page.evaluate(() =>
      ['require', 'process', 'module', 'Buffer', 'global'].filter((name) => name in globalThis),
    );
    expect(found).toEqual([]);
  });

  await test.step('the workshop opens again on the same file', async () => {
    await expect(await workshop.reopen()).toHaveTitle('Bolt & Baffle');
  });
});

test('the address of the window is of no use to anybody else', async ({ page, door, sharedBrowser }) => {
  test.skip(door !== 'loopback', 'the Electron window has no address');
  await expect(page).toHaveTitle('Bolt & Baffle');

  await test.step('no ticket stays in the history of the window', async () => {
    const session = await page.context().newCDPSession(page);
    const { entries } = await session.send('Page.getNavigationHistory');
    expect(entries.length).toBeGreaterThan(0);
    expect(entries.map(({ url, title }) => `${url} ${title}`).join('\n')).not.toContain('ticket');
  });

  await test.step('it lets no other browser in', async () => {
    const other = await (await sharedBrowser()).newPage();
    expect((await other.goto(page.url()))?.status()).toBe(403);
    await other.close();
  });

  await test.step('another program of this machine that serves a page is sent nothing of the window', async () => {
    const seen: string[] = [];
    const other = createServer((request, response) => {
      seen.push(JSON.stringify(request.headers));
      response.setHeader('content-type', 'text/html').end('<title>Elsewhere</title>');
    });
    await new Promise<void>((listening) => other.listen(0, '127.0.0.1', listening));
    const address = `http://127.0.0.1:${(other.address() as AddressInfo).port}/call`;
    const elsewhere = await page.context().newPage();
    await elsewhere.goto(address);
    await expect(elsewhere).toHaveTitle('Elsewhere');
    const tried = await elsewhere.evaluate(
      async (call) => {
        const post = { method: 'POST', body: '{}', credentials: 'include', mode: 'no-cors' } as const;
        const answer = await fetch(call, post).catch(String);
        return typeof answer === 'string' ? answer : `${answer.type} ${await answer.text()}`;
      },
      `${page.url().split('#')[0]}call`,
    );
    expect(tried).toMatch(/^TypeError|^opaque $/);
    await elsewhere.close();
    other.close();
    other.closeAllConnections();
    expect(seen.length).toBeGreaterThan(0);
    expect(seen.join('\n')).not.toMatch(/"cookie"/);
    expect(seen.join('\n')).not.toContain(new URL(page.url()).host);
  });

  await test.step('it still lets its own window in', async () => {
    await page.reload();
    await expect(page.getByRole('button', { name: 'Open the demo workshop' })).toBeVisible();
  });
});
