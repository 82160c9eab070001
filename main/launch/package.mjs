/**
 * Makes what one installs, for the system that it runs on:
 *   npm run package [-- words for electron-builder, such as --linux AppImage --x64]
 * Installs and builds first, lays the app out in out/app, and leaves the packages in out/packages.
 */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { ensureBuilt } from './build.mjs';
import { ensureInstalled, ownNode, root } from './install.mjs';
import { stageApp } from './staging.mjs';

ensureInstalled('all');
if (!ensureBuilt()) process.exit(1);
stageApp(root, join(root, 'out', 'app'));
const builder = join(root, 'node_modules', 'electron-builder', 'cli.js');
const config = join('resources', 'packaging', 'electron-builder.mjs');
const made = spawnSync(
  ownNode,
  [builder, '--config', config, '--publish', 'never', ...process.argv.slice(2)],
  {
    cwd: root,
    stdio: 'inherit',
  },
);
process.exitCode = made.status ?? 1;
