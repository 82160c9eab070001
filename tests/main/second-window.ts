/**
 * Another program that has a workshop open: node second-window.ts DATAFILE. Prints "open", or what was refused, and
 * then stays until it is killed or its input ends.
 */
import { writeSync } from 'node:fs';
import { problemSentence } from '../../shared-core/measure/problem.ts';
import { openServices } from '../../main/services/services.ts';

const dataFile = process.argv[2] ?? '';
const opened = openServices({ dataFile, demoFile: `${dataFile}-demo`, waitMs: 50 });
writeSync(1, opened.ok ? 'open\n' : `${opened.problems.map(problemSentence).join(' / ')}\n`);
if (!opened.ok) process.exit(3);
process.stdin.on('end', () => {
  opened.value.close();
  process.exit(0);
});
process.stdin.resume();
