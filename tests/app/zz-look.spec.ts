import { expect, test } from './door.ts';
test('look', async ({ page }) => {
  test.setTimeout(180_000);
  await page.getByRole('button', { name: 'Open the demo workshop' }).click();
  await expect(page).toHaveURL(/\/cover$/);
  for (const [w, h, scheme] of [[1280, 800, 'light'], [1920, 1080, 'dark']] as const) {
    await page.setViewportSize({ width: w, height: h });
    await page.emulateMedia({ colorScheme: scheme });
    await page.getByRole('region', { name: 'The road of this coat' }).getByRole('link', { name: /^Needs/ }).click();
    await page.waitForTimeout(1500);
    const d = page.locator('summary', { hasText: 'How each seam is sewn' });
    if (w === 1280) await d.click();
    await page.getByRole('heading', { name: 'Sewing', exact: true }).scrollIntoViewIfNeeded();
    await page.screenshot({ path: `/tmp/look-${w}-sewing.png` });
    await page.getByRole('heading', { name: 'needles', exact: true }).scrollIntoViewIfNeeded();
    await page.screenshot({ path: `/tmp/look-${w}-needles.png` });
  }
});
