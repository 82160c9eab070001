/** What would move on a machine that is told to keep still. */
import type { Page } from '@playwright/test';

/** Elements that would move for longer than a millisecond. */
export function moving(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const longest = (times: string) =>
      Math.max(
        ...times.split(',').map((time) => Number.parseFloat(time) * (time.trim().endsWith('ms') ? 1 : 1000)),
      );
    return [...document.querySelectorAll('*')].flatMap((element) => {
      const { transitionDuration, animationName, animationDuration, scrollBehavior } =
        getComputedStyle(element);
      const moves =
        longest(transitionDuration) > 1 ||
        (animationName !== 'none' && longest(animationDuration) > 1) ||
        scrollBehavior === 'smooth';
      return moves ? [`${element.tagName} ${element.className}`] : [];
    });
  });
}
