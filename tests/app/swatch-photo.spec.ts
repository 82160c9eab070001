import type { Page } from '@playwright/test';
import { expect, test } from './door.ts';

/** A picture as large as a phone's, striped like a tartan, with a clear corner. */
async function picture(page: Page): Promise<Buffer> {
  const address = await page.evaluate(() => {
    const canvas = document.createElement('canvas');
    canvas.width = 2400;
    canvas.height = 1800;
    const context = canvas.getContext('2d')!;
    for (let at = 0; at < 2400; at += 60) {
      context.fillStyle = `hsl(${140 + (at % 240) / 3} 45% ${30 + (at % 180) / 6}%)`;
      context.fillRect(at, 0, 60, 1800);
      context.fillStyle = 'rgb(220 190 120 / 30%)';
      context.fillRect(0, at, 2400, 24);
    }
    context.clearRect(0, 0, 90, 90);
    return canvas.toDataURL('image/png');
  });
  return Buffer.from(address.slice(address.indexOf(',') + 1), 'base64');
}

async function openCloth(page: Page) {
  await page.getByRole('navigation').getByRole('link', { name: 'Stash' }).click();
  await page.getByRole('option').first().click();
  return page.getByRole('region', { name: 'Photo of the swatch' });
}

test('a photo of the swatch is made small, stays with its item, and is taken away', async ({ page }) => {
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page.getByRole('heading', { name: 'Cover', level: 1 })).toBeVisible();
  const swatch = await openCloth(page);
  const chosen = page.waitForEvent('filechooser');
  await swatch.getByRole('button', { name: 'Add a photo of the swatch' }).click();
  const chooser = await chosen;
  await chooser.setFiles({ name: 'list.txt', mimeType: 'text/plain', buffer: Buffer.from('no picture') });
  await expect(swatch.getByRole('alert')).toContainText('list.txt is no picture that can be shown here');

  const buffer = await picture(page);
  await chooser.setFiles({ name: 'swatch.png', mimeType: 'image/png', buffer });
  const shown = swatch.getByRole('img');
  await expect(shown).toBeVisible();
  await expect(swatch.getByRole('alert')).toHaveCount(0);
  const size = () =>
    shown.evaluate((img: HTMLImageElement) => [img.complete, img.naturalWidth, img.naturalHeight]);
  await expect.poll(size).toEqual([true, 640, 480]);

  await page.reload();
  const again = await openCloth(page);
  await expect.poll(size).toEqual([true, 640, 480]);
  await again.getByRole('button', { name: 'Take away' }).click();
  await expect(again.getByRole('button', { name: 'Add a photo of the swatch' })).toBeVisible();
  await expect(again.getByRole('img')).toHaveCount(0);
});
