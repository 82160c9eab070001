/** What the specs expect of a page: as Playwright's own, without its dearest habit. */
import { expect as baseExpect, type ExpectMatcherState, type Locator } from '@playwright/test';

/** What is asked of one thing on the page, which may still be to come. */
const askedOfOne = [
  'toBeVisible',
  'toBeEnabled',
  'toContainText',
  'toHaveAttribute',
  'toHaveText',
  'toHaveValue',
] as const;

/**
 * As Playwright's own. What is still to come is waited for first: each failed look of an expectation describes the
 * whole page for its message, which on a large one takes longer than all else that a spec does.
 */
export const expect = baseExpect.extend(
  Object.fromEntries(
    askedOfOne.map((name) => [
      name,
      async function (this: ExpectMatcherState, locator: Locator, ...words: unknown[]) {
        const { timeout = this.timeout } = Object(words.at(-1)) as { readonly timeout?: number };
        const state = name === 'toBeVisible' ? 'visible' : 'attached';
        // Of several only the first is waited for: whether there may be several is for the expectation to say.
        const isThere = this.isNot || (await locator.first().waitFor({ state, timeout }).then(yes, no));
        const asked = baseExpect.configure({ timeout: isThere ? timeout : 1 })(locator);
        const ask = (this.isNot ? asked.not : asked)[name] as (...words: unknown[]) => Promise<void>;
        try {
          await ask(...words);
          return { pass: !this.isNot, message: () => '' };
        } catch (error) {
          return {
            pass: this.isNot,
            message: () => (error instanceof Error ? error.message : String(error)),
          };
        }
      },
    ]),
  ),
) as typeof baseExpect;
const yes = () => true;
const no = () => false;
