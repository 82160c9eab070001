/** What a page does to its text: clipped, laid over other text, or pushed out of the window. */
import type { Page } from '@playwright/test';

/**
 * One sentence for each place where text cannot be read whole: an element with text whose overflow is hidden and that
 * has more than it shows; two texts that lie over each other; a page or a sheet that scrolls sideways. What scrolls by
 * itself (a wide table, a drawing) is read by scrolling, and hides nothing.
 */
export function unreadable(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const slackPx = 2;
    const found: string[] = [];
    const name = (element: Element) =>
      `${element.tagName.toLowerCase()}.${element.className} "${(element.textContent ?? '').trim().slice(0, 40)}"`;
    const top = document.querySelector('[role=dialog]') ?? document.querySelector('#root')!;
    const sideways = [
      document.documentElement,
      document.body,
      ...document.querySelectorAll('main, nav, [role=dialog], [role=dialog] > *'),
    ];
    for (const element of sideways)
      if (element.scrollWidth > element.clientWidth + slackPx)
        found.push(
          `${element.tagName.toLowerCase()} scrolls sideways by ${element.scrollWidth - element.clientWidth}`,
        );
    const texts: { element: Element; box: DOMRect }[] = [];
    const walker = document.createTreeWalker(top, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const element = node.parentElement;
      if (!element || (node.textContent ?? '').trim() === '') continue;
      if (!element.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue;
      if (element.closest('.only-read-aloud, svg, option, textarea')) continue;
      const range = document.createRange();
      range.selectNodeContents(node);
      for (const box of range.getClientRects())
        if (box.width > 1 && box.height > 1) texts.push({ element, box });
    }
    const clipped = new Set<Element>();
    const inSight: typeof texts = [];
    for (const text of texts) {
      let isInSight = true;
      for (
        let around: Element | null = text.element;
        around && around !== document.body;
        around = around.parentElement
      ) {
        const { overflowX, overflowY } = getComputedStyle(around);
        if (overflowX === 'visible' && overflowY === 'visible') continue;
        const { box } = text;
        const outer = around.getBoundingClientRect();
        const isOutX = box.right > outer.right + slackPx || box.left < outer.left - slackPx;
        const isOutY = box.bottom > outer.bottom + slackPx || box.top < outer.top - slackPx;
        const scrolls = (way: string) => way === 'auto' || way === 'scroll';
        // What is scrolled out of sight is read by scrolling, and lies over nothing.
        if ((isOutX && scrolls(overflowX)) || (isOutY && scrolls(overflowY))) {
          isInSight = false;
          break;
        }
        if ((isOutX && overflowX !== 'visible') || (isOutY && overflowY !== 'visible')) {
          clipped.add(text.element);
          break;
        }
      }
      if (isInSight) inSight.push(text);
    }
    for (const element of clipped) found.push(`clipped: ${name(element)}`);
    // What stays in its place while the rest is scrolled below it covers it with its own ground.
    const isFixed = (element: Element) => {
      for (let around: Element | null = element; around; around = around.parentElement)
        if (['sticky', 'fixed'].includes(getComputedStyle(around).position)) return true;
      return false;
    };
    const over = new Set<string>();
    // From the top down, so that each text is compared only with those that begin before it ends.
    inSight.sort((a, b) => a.box.top - b.box.top);
    for (const [index, a] of inSight.entries())
      for (let next = index + 1; next < inSight.length; next++) {
        const b = inSight[next]!;
        if (b.box.top >= a.box.bottom) break;
        if (a.element === b.element) continue;
        const acrossPx = Math.min(a.box.right, b.box.right) - Math.max(a.box.left, b.box.left);
        const downPx = Math.min(a.box.bottom, b.box.bottom) - b.box.top;
        // Lines of one text may touch by their leading; letters lie over each other where a third of a line does.
        if (acrossPx <= slackPx || downPx <= Math.min(a.box.height, b.box.height) / 3) continue;
        if (isFixed(a.element) !== isFixed(b.element)) continue;
        over.add(`${name(a.element)} lies over ${name(b.element)}`);
      }
    return [...found, ...over];
  });
}
