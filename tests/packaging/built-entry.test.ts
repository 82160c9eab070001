import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, test } from 'vitest';
import { ensureBuilt } from '../../main/launch/build.mjs';
import { ownNode, root } from '../../main/launch/install.mjs';

/** Runs the built entry and says what it asked of Electron. */
const script = (standIn: string, entry: string, home: string) => `
import { registerHooks } from 'node:module';
registerHooks({
  resolve: (name, context, next) =>
    name === 'electron' ? { url: ${JSON.stringify(standIn)}, shortCircuit: true } : next(name, context),
});
const { scene, registered, app } = await import(${JSON.stringify(standIn)});
Object.assign(scene, { appPath: ${JSON.stringify(root)}, home: ${JSON.stringify(home)}, isPackaged: true });
await import(${JSON.stringify(entry)});
while (scene.windows.length + scene.endings.length === 0) await new Promise((next) => setTimeout(next, 20));
const page = await scene.protocols.get('bolt-and-baffle')(new Request('bolt-and-baffle://window/'));
console.log(JSON.stringify({
  did: scene.windows.map(({ did }) => did),
  endings: scene.endings,
  handlers: scene.handlers.size,
  devTools: scene.windows[0]?.options.webPreferences.devTools,
  guards: Object.values(registered).filter(Boolean).length,
  title: /<title>(.*)<\\/title>/.exec(await page.text())?.[1],
}));
app.emit('will-quit');
`;

test('the built entry opens its window on the built page, guarded and without developer tools', () => {
  expect(ensureBuilt()).toBe(true);
  const home = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-entry-'));
  const address = (path: string) => pathToFileURL(join(root, path)).href;
  const code = script(
    address('tests/main/doors/electron-stand-in.ts'),
    address('out/main/electron.js'),
    home,
  );
  const { XDG_DATA_HOME: _, ...env } = process.env;
  const ran = spawnSync(ownNode, ['--input-type=module', '-e', code], {
    encoding: 'utf8',
    env: { ...env, APPDATA: home, HOME: home },
    timeout: 500_000,
  });
  rmSync(home, { recursive: true, force: true });
  expect(ran.stderr).toBe('');
  expect(JSON.parse(ran.stdout)).toMatchObject({
    did: [['load bolt-and-baffle://window/']],
    endings: [],
    devTools: false,
    guards: 4,
    title: 'Bolt &amp; Baffle',
  });
  expect(JSON.parse(ran.stdout).handlers).toBeGreaterThan(30);
});
