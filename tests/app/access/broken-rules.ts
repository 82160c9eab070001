/** The rules of axe-core (WCAG 2 and good practice) that a page breaks, in the light and the dark look. */
import type { Page } from '@playwright/test';
import axe from 'axe-core';

/** axe-core as the page knows it once it is brought in. */
type WithAxe = { readonly axe?: typeof axe };

/** One sentence for each element that breaks a rule. The dark look differs in its colours alone. */
export async function broken(page: Page, name: string): Promise<string[]> {
  // Once for each page, since reading axe-core takes longer than most of its looks.
  const isThere = await page.evaluate(() => (window as WithAxe).axe !== undefined);
  if (!isThere) await page.evaluate(axe.source);
  const found = await page.evaluate(async () => {
    // What is folded away is looked at too.
    for (const details of document.querySelectorAll('details')) details.open = true;
    // What lies under a sheet was looked at as a room.
    const within = document.querySelector('[role=dialog]') ?? document;
    const rules = { light: undefined, dark: { type: 'rule' as const, values: ['color-contrast'] } };
    const sentences: string[] = [];
    for (const look of ['light', 'dark'] as const) {
      document.documentElement.dataset.theme = look;
      const runOnly = rules[look];
      const { violations } = await (window as WithAxe).axe!.run(within, {
        resultTypes: ['violations'],
        ...(runOnly && { runOnly }),
      });
      for (const { id, nodes } of violations)
        for (const { target, any, all, none } of nodes)
          sentences.push(
            `${look}: ${id} at ${target.join(' ')}: ${[...any, ...all, ...none][0]?.message ?? ''}`,
          );
    }
    return sentences;
  });
  return found.map((sentence) => `${name}, ${sentence}`);
}
