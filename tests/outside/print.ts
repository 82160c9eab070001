/** Prints every outside check: name, source, expected, got, tolerance, pass. `--json` for scripts. Ends with 1 if one fails. */
import { outsideModules } from './all.ts';
import { runOutsideChecks } from './outside.ts';

const verdicts = outsideModules.flatMap(({ name, rows }) =>
  runOutsideChecks(rows).map((verdict) => ({ topic: name, ...verdict })),
);
if (process.argv.includes('--json')) {
  process.stdout.write(`${JSON.stringify(verdicts, null, 1)}\n`);
} else {
  for (const { topic, name, expected, got, pass, source } of verdicts) {
    process.stdout.write(
      `${pass ? 'ok  ' : 'FAIL'} ${topic}: ${name}: expected ${expected}, got ${got} (${source})\n`,
    );
  }
  process.stdout.write(`${verdicts.filter((verdict) => verdict.pass).length} of ${verdicts.length} hold\n`);
}
process.exitCode = verdicts.every((verdict) => verdict.pass) ? 0 : 1;
