/**
 * Another program that has a workshop open: node second-window.ts DATAFILE [NAME]. Saves three items of that name,
 * where one is given, prints "open", or what was refused, and then stays until it is killed or its input ends.
 */
import { writeSync } from 'node:fs';
import { problemSentence } from '../../shared-core/measure/problem.ts';
import { openServices } from '../../main/services/calls/services.ts';
import { down } from './asking-inputs.ts';

const [dataFile = '', name] = process.argv.slice(2);
const opened = openServices({ dataFile, demoFile: `${dataFile}-demo`, waitMs: 50 });
if (opened.ok && name !== undefined) {
  for (const number of [1, 2, 3]) {
    const input = { ...down, name: `${name} ${number}` };
    const saved = await opened.value.answer({ call: 'saveItem', workshop: 'own', input });
    if (!saved.ok) throw new Error(saved.problems.map(problemSentence).join(' / '));
  }
}
writeSync(1, opened.ok ? 'open\n' : `${opened.problems.map(problemSentence).join(' / ')}\n`);
if (!opened.ok) process.exit(3);
process.stdin.on('end', () => {
  opened.value.close();
  process.exit(0);
});
process.stdin.resume();
