/** The picture in the README: the demo's shell on the cloth. Drawn at every run; kept when README_PICTURE is set. */
import { copyFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from './door.ts';

// The picture that is kept is of lays that had their time.
test.use({ layPace: process.env.README_PICTURE ? 'real' : 'soon' });

test('the lay of the demo is fit to be shown', async ({ page }, testInfo) => {
  await page.setViewportSize({ width: 1280, height: 800 });
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await page.getByRole('link', { name: /^Lay/ }).click();
  await expect(page.getByText(/of the cloth used/).first()).toBeVisible();
  // The thorough pass: better lays than the first ones.
  await expect(page.getByText('Stop here')).toBeHidden();
  const picture = testInfo.outputPath('lay.png');
  await page.screenshot({ path: picture, animations: 'disabled' });
  if (process.env.README_PICTURE) {
    copyFileSync(picture, fileURLToPath(new URL('../../resources/lay.png', import.meta.url)));
  }
});
