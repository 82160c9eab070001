/**
 * How smooth the cutting table is with four hundred pieces, while a piece is dragged, while the table is moved along and
 * while it is zoomed: the time from frame to frame, which is no shorter than a turn of the screen (16.7 ms), and the
 * work that a frame takes. Build first.
 *   npm run -s bench:frames
 * Prints medians and 95th percentiles in ms. Nothing else should run beside it.
 */
import type { Page } from '@playwright/test';
import { expect, test } from '../../app/door.ts';
import { stopLaying } from '../../app/laying.ts';

const coats = 15;

interface Frames {
  /** From frame to frame, ms. */
  readonly apart: readonly number[];
  /** From the beginning of a frame until it is drawn and the window is free again, ms. */
  readonly work: readonly number[];
}

/** Frames of the page while something is done. */
async function framesWhile(page: Page, act: () => Promise<void>): Promise<Frames> {
  await page.evaluate(() => {
    const watch = window as unknown as { apart: number[]; work: number[]; isWatching: boolean };
    Object.assign(watch, { apart: [], work: [], isWatching: true });
    let last = performance.now();
    let begun = last;
    // A message that is sent in a frame arrives once the frame's layout and drawing are done.
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => watch.work.push(performance.now() - begun);
    const next = (now: number) => {
      watch.apart.push(now - last);
      last = now;
      begun = performance.now();
      port2.postMessage(null);
      if (watch.isWatching) requestAnimationFrame(next);
    };
    requestAnimationFrame(next);
  });
  await act();
  return page.evaluate(() => {
    const watch = window as unknown as { apart: number[]; work: number[]; isWatching: boolean };
    watch.isWatching = false;
    return { apart: watch.apart.slice(1), work: watch.work.slice(1) };
  });
}

function summary({ apart, work }: Frames) {
  const at = (times: readonly number[], share: number) => {
    const sorted = [...times].sort((a, b) => a - b);
    return Number((sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(1));
  };
  return {
    medianMs: at(apart, 0.5),
    p95Ms: at(apart, 0.95),
    workMedianMs: at(work, 0.5),
    workP95Ms: at(work, 0.95),
    frames: apart.length,
  };
}

test('frames of the cutting table', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('list', { name: 'Cover by slot' })).toBeVisible();
  await stopLaying(page);
  const road = page.getByRole('region', { name: 'The road of this coat' });
  await road.getByRole('link', { name: /^Plan/ }).click();
  const layStep = road.getByRole('link', { name: /^Lay/ });
  const before = await layStep.textContent();
  const count = page.getByLabel('Coats', { exact: true }).first();
  await count.fill(String(coats));
  await count.press('Enter');
  await expect(road.getByRole('link', { name: new RegExp(`^Plan ${coats}`) })).toBeVisible();
  // Until then the lays are those of fewer coats.
  await expect(layStep).not.toHaveText(before ?? '');
  await layStep.click();
  await expect(page.getByTestId('lay-words')).toBeVisible();
  await stopLaying(page);
  await page.getByRole('button', { name: 'Lay by hand' }).click();
  const pieces = page.locator('[data-hand-piece]');
  await expect(pieces.first()).toBeVisible();
  await page.getByRole('button', { name: 'Whole table' }).click();
  const pieceCount = await pieces.count();
  const table = (await page.getByRole('application').boundingBox())!;
  const from = (await pieces.nth(40).boundingBox())!;
  const middle = { x: from.x + from.width / 2, y: from.y + from.height / 2 };
  const dragged = await framesWhile(page, async () => {
    await page.mouse.move(middle.x, middle.y);
    await page.mouse.down();
    for (let step = 0; step < 200; step++)
      await page.mouse.move(middle.x + 300 * Math.sin(step / 20), middle.y + 30 * Math.cos(step / 11));
    await page.mouse.up();
  });
  await page.keyboard.press('Control+z');
  const bare = { x: table.x + table.width / 2, y: table.y + table.height - 12 };
  const panned = await framesWhile(page, async () => {
    await page.mouse.move(bare.x, bare.y);
    await page.mouse.down();
    for (let step = 0; step < 150; step++) await page.mouse.move(bare.x + 200 * Math.sin(step / 15), bare.y);
    await page.mouse.up();
  });
  const zoomed = await framesWhile(page, async () => {
    await page.mouse.move(table.x + table.width / 2, table.y + table.height / 2);
    for (let step = 0; step < 100; step++) await page.mouse.wheel(0, step % 40 < 20 ? -40 : 40);
  });
  const found = { pieces: pieceCount, drag: summary(dragged), pan: summary(panned), zoom: summary(zoomed) };
  console.log(`\n${JSON.stringify(found)}`);
});
