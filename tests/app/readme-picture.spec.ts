/** The pictures in the README: the demo's main screens. Drawn at every run; kept when README_PICTURE is set. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';

// The pictures that are kept are of lays that had their time.
test.use({ layPace: process.env.README_PICTURE ? 'real' : 'found' });

const folder = fileURLToPath(new URL('../../resources/screens', import.meta.url));
/** All of them are fetched with the README. */
const maxBytes = 150_000;

/** What a picture shows, in the order of the README. */
const screens = [
  {
    name: 'stash',
    go: 'Stash',
    sign: (page: Page) => page.getByRole('article', { name: 'Peatwater nylon' }),
  },
  { name: 'plan', go: /^Plan/, sign: (page: Page) => page.getByRole('button', { name: /^Back, drawn/ }) },
  { name: 'lay', go: /^Lay/, sign: (page: Page) => page.getByText(/of the cloth used/).first() },
  {
    name: 'cover',
    go: /^Cover/,
    sign: (page: Page) => page.getByRole('list', { name: 'Cover by slot' }),
  },
  { name: 'to-buy', go: /^To buy/, sign: (page: Page) => page.getByRole('table').first() },
  { name: 'cost', go: /^Cost/, sign: (page: Page) => page.getByRole('table').first() },
] as const;

/** The page as it stands, as WebP: a third of the bytes of a PNG, at lines as sharp. */
async function pictureOf(page: Page): Promise<Buffer> {
  const png = await page.screenshot({ animations: 'disabled' });
  const base64 = await page.evaluate(async (source) => {
    const bytes = Uint8Array.from(atob(source), (letter) => letter.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes]));
    const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
    canvas.getContext('2d')!.drawImage(bitmap, 0, 0);
    const webp = await canvas.convertToBlob({ type: 'image/webp', quality: 0.92 });
    const url = await new Promise<string>((resolve) => {
      const reader = new FileReader();
      reader.onload = () => resolve(String(reader.result));
      reader.readAsDataURL(webp);
    });
    return url.slice(url.indexOf(',') + 1);
  }, png.toString('base64'));
  return Buffer.from(base64, 'base64');
}

test('the screens of the demo are fit to be shown', async ({ page }) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('heading', { name: 'Cover', level: 1 })).toBeVisible();
  // The thorough pass: better lays than the first ones.
  await expect(page.getByText('Stop here')).toBeHidden();
  const coat = new URL(page.url()).hash;
  for (const { name, go, sign } of screens) {
    if (name === 'stash') {
      await page.getByRole('link', { name: go, exact: true }).click();
      await page.getByRole('option', { name: /^Peatwater nylon/ }).click();
    } else {
      await page.evaluate((hash) => {
        window.location.hash = hash;
      }, coat);
      await page.getByRole('link', { name: go }).click();
    }
    await expect(sign(page)).toBeVisible();
    await expect(page.getByText('Stop here')).toBeHidden();
    const picture = await pictureOf(page);
    expect(picture.subarray(8, 12).toString('latin1')).toBe('WEBP');
    expect(picture.length).toBeLessThan(maxBytes);
    if (process.env.README_PICTURE) {
      mkdirSync(folder, { recursive: true });
      writeFileSync(join(folder, `${name}.webp`), picture);
    }
  }
});
