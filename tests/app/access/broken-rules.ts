/** The rules of axe-core (WCAG 2 and good practice) that a page breaks, in the light and the dark look. */
import type { Page } from '@playwright/test';
import axe from 'axe-core';

/** axe-core as the page knows it once it is brought in. */
type WithAxe = { readonly axe?: typeof axe };

/** The looks that are looked at: with all rules, or those of colours alone. */
type Looks = Partial<Record<'light' | 'dark', 'all' | 'colours' | 'all but colours'>>;

/** The dark look differs in its colours alone. */
const bothLooks: Looks = { light: 'all', dark: 'colours' };
/** Another language differs in its words, not in its colours. */
export const otherWords: Looks = { light: 'all but colours' };

/** One sentence for each element that breaks a rule. */
export async function broken(page: Page, name: string, looks: Looks = bothLooks): Promise<string[]> {
  // Once for each page, since reading axe-core takes longer than most of its looks.
  const isThere = await page.evaluate(() => (window as WithAxe).axe !== undefined);
  if (!isThere) await page.evaluate(axe.source);
  const found = await page.evaluate(async (asked) => {
    // What is folded away is looked at too.
    for (const details of document.querySelectorAll('details')) details.open = true;
    // What lies under a sheet was looked at as a room: it is out of the way, since all that is drawn is measured.
    const sheet = document.querySelector('[role=dialog]');
    const room = document.querySelector<HTMLElement>('#root')!;
    if (sheet && !room.contains(sheet)) room.style.display = 'none';
    const colours = 'color-contrast';
    const rules = {
      all: {},
      colours: { runOnly: { type: 'rule' as const, values: [colours] } },
      'all but colours': { rules: { [colours]: { enabled: false } } },
    };
    const sentences: string[] = [];
    for (const look of ['light', 'dark'] as const) {
      const which = asked[look];
      if (which === undefined) continue;
      document.documentElement.dataset.theme = look;
      const { violations } = await (window as WithAxe).axe!.run(sheet ?? document, {
        resultTypes: ['violations'],
        ...rules[which],
      });
      for (const { id, nodes } of violations)
        for (const { target, any, all, none } of nodes)
          sentences.push(
            `${look}: ${id} at ${target.join(' ')}: ${[...any, ...all, ...none][0]?.message ?? ''}`,
          );
    }
    room.style.display = '';
    return sentences;
  }, looks);
  return found.map((sentence) => `${name}, ${sentence}`);
}
