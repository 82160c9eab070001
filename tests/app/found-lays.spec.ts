/** The specs' own means: the demo's lays that were found before all specs are those that the window asks for. */
import { expect, test } from './door.ts';

test('of the demo’s coat nothing is looked for, and of a changed one it is', async ({ page }) => {
  const looking: string[] = [];
  page.on('worker', (worker) => looking.push(worker.url()));
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('list', { name: 'Cover by slot' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Stop here' })).toHaveCount(0);
  const layWorkers = () => looking.filter((url) => url.includes('/lay-worker-'));
  expect(layWorkers()).toEqual([]);
  await page.getByRole('button', { name: /^Use Slatewater nylon/ }).click();
  await expect(page.getByText('Shell is now Slatewater nylon.')).toBeVisible();
  await expect.poll(() => layWorkers().length).toBeGreaterThan(0);
});
