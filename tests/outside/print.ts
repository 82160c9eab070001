/**
 * Prints the outside checks, those that fail with the reason. `--json` for scripts: how many are of class A, how many
 * of them touch the main job, and the failing ones. Ends with 1 if a row fails without a reason, or has one and holds.
 */
import { allVerdicts } from './all.ts';
import { summaryOf } from './outside.ts';

const summary = summaryOf(allVerdicts);
if (process.argv.includes('--json')) {
  process.stdout.write(`${JSON.stringify(summary, null, 1)}\n`);
} else {
  for (const { topic, name, expected, got, pass, source, explanation, ...row } of allVerdicts) {
    const published = typeof expected === 'object' ? `${expected.min} to ${expected.max}` : expected;
    const mark = `${pass ? 'ok  ' : 'FAIL'} ${row.class}${row.isMainJob ? '*' : ' '}`;
    process.stdout.write(
      `${mark} ${topic}: ${name}: published ${published}, computed ${got} (${source})${explanation === undefined ? '' : `\n        ${explanation}`}\n`,
    );
  }
  process.stdout.write(
    `${allVerdicts.length} rows, ${summary.classA} of class A, ${summary.mainJob} of them on the main job (*); ${summary.failing.length} fail\n`,
  );
}
const isTold = allVerdicts.every(({ pass, explanation }) => pass === (explanation === undefined));
process.exitCode = isTold ? 0 : 1;
