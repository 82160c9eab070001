/** Leaves Vitest's true counts for the closing line of npm test; a file that does not even load counts as failed. */
import { writeFileSync } from 'node:fs';
import type { Reporter, SerializedError, TestModule } from 'vitest/node';

export default class VitestCounts implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], unhandled: readonly SerializedError[]): void {
    const file = process.env.BOLT_COUNTS;
    if (file === undefined) return;
    let passed = 0;
    let failed = unhandled.length;
    const skipped: { name: string; reason: string }[] = [];
    for (const module of modules) {
      const failedBefore = failed;
      for (const test of module.children.allTests()) {
        const result = test.result();
        if (result.state === 'passed') passed += 1;
        else if (result.state === 'failed') failed += 1;
        else {
          const reason = result.state === 'skipped' ? result.note : 'never finished';
          skipped.push({
            name: `${module.relativeModuleId} > ${test.fullName}`,
            reason: reason ?? 'no reason given',
          });
        }
      }
      for (const suite of module.children.allSuites()) failed += suite.errors().length > 0 ? 1 : 0;
      if (module.errors().length > 0) failed += 1;
      if (module.state() === 'failed' && failed === failedBefore) failed += 1;
    }
    writeFileSync(file, JSON.stringify({ passed, failed, skipped }));
  }
}
