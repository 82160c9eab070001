/**
 * Runs one TypeScript file of the project under its own Node, installing first what is missing:
 *   node main/launch/run.mjs main/doors/command.ts [arguments]
 * Nothing but the file's own output reaches stdout.
 */
import { spawn } from 'node:child_process';
import { whenAskedToEnd } from './ending.mjs';
import { ensureInstalled, ownNode, root } from './install.mjs';
import { join } from 'node:path';

const [file, ...args] = process.argv.slice(2);
if (file === undefined) throw new Error('run.mjs needs the file to run');
ensureInstalled(file.startsWith('tests/') ? 'all' : 'start');
const child = spawn(ownNode, [join(root, file), ...args], { stdio: 'inherit' });
whenAskedToEnd((signal) => child.kill(signal));
child.on('exit', (code, signal) => {
  process.exitCode = code ?? (signal === 'SIGINT' ? 130 : 1);
});
