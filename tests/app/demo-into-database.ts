/** Carries the demo's stash and coat into a database as if they were a maker's own: FOLDER for its files, ADDRESS. */
import { join } from 'node:path';
import { moveWorkshop } from '../../main/database/move.ts';
import { openServices } from '../../main/services/calls/services.ts';

const [folder = '', to = ''] = process.argv.slice(2);
const demoFile = join(folder, 'demo.sqlite');
const opened = openServices({ dataFile: join(folder, 'own.sqlite'), demoFile });
if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
await opened.value.answer({ call: 'openDemo', workshop: 'demo', input: {} });
await opened.value.close();
const moved = await moveWorkshop({ from: demoFile, to, now: () => new Date(), waitMs: 5000 });
if (!moved.ok) throw new Error(JSON.stringify(moved.problems));
