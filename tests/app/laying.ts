/** Lays in a spec, and how the maker ends them. */
import { expect, type Page } from '@playwright/test';

/** The best lays so far are taken as they are, where they are still being looked for; figures must stand already. */
export async function stopLaying(page: Page): Promise<void> {
  const stop = page.getByRole('button', { name: 'Stop here' });
  // In one step in the page: the button may go by itself between a look at it and a click.
  await stop.evaluateAll((buttons) => {
    for (const button of buttons) (button as HTMLButtonElement).click();
  });
  await expect(stop).toHaveCount(0);
}
