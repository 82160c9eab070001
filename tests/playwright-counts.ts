/** Leaves Playwright's true counts and its reasons for skips for the closing line of npm test. */
import { writeFileSync } from 'node:fs';
import type { Reporter, Suite } from '@playwright/test/reporter';

/** A door that this machine cannot open: each spec of the other door is skipped for it, by name. reason '' is none. */
export interface CountsOptions {
  readonly leftOut?: { readonly door: string; readonly reason: string };
}

export default class PlaywrightCounts implements Reporter {
  readonly #options: CountsOptions;
  #suite: Suite | undefined;
  #errorCount = 0;

  constructor(options: CountsOptions) {
    this.#options = options;
  }

  onBegin(_config: unknown, suite: Suite): void {
    this.#suite = suite;
  }

  onError(): void {
    this.#errorCount += 1;
  }

  onEnd(): void {
    const file = process.env.BOLT_COUNTS;
    if (file === undefined) return;
    let passed = 0;
    let failed = this.#errorCount;
    const skipped: { name: string; reason: string }[] = [];
    for (const test of this.#suite?.allTests() ?? []) {
      if (test.outcome() === 'expected') passed += 1;
      else if (test.outcome() === 'skipped') {
        // A test that was never reached (its worker died, the run was stopped) is no skip.
        const wasReached = test.results.length > 0;
        const reason = test.annotations.find(
          (note) => note.type === 'skip' || note.type === 'fixme',
        )?.description;
        if (wasReached) {
          skipped.push({
            name: test.titlePath().filter(Boolean).join(' > '),
            reason: reason ?? 'no reason given',
          });
        } else failed += 1;
      } else failed += 1;
    }
    writeFileSync(file, JSON.stringify({ passed, failed, skipped: [...skipped, ...this.#leftOut()] }));
  }

  #leftOut(): { name: string; reason: string }[] {
    const { door = '', reason = '' } = this.#options.leftOut ?? {};
    if (reason === '') return [];
    return (this.#suite?.allTests() ?? []).map((test) => {
      const [, , ...place] = test.titlePath();
      return { name: [door, ...place].join(' > '), reason };
    });
  }

  printsToStdio(): boolean {
    return false;
  }
}
