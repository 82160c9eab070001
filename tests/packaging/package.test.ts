import { type SpawnSyncReturns, spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { builtinModules } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Configuration } from 'electron-builder';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ensureBuilt } from '../../main/launch/build.mjs';
import { ownNode, root } from '../../main/launch/install.mjs';
import { licenceTexts, shippedPackages, stageApp } from '../../main/launch/staging.mjs';
import { startedHost } from './installed-host.ts';
import { allFiles, filesFor, readPackageConfig, systems } from './package-config.ts';

let folder: string;
let app: string;
let config: Configuration;
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));

beforeAll(async () => {
  expect(ensureBuilt()).toBe(true);
  folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-package-'));
  app = join(root, 'out', 'app');
  stageApp(root, app);
  config = await readPackageConfig(root);
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

/** What the built scripts of a folder import by name: a bundle's imports stand on lines of their own. */
function importedNames(scripts: string): string[] {
  const forms = [/^import\s(?:[^"'\n]*\sfrom\s)?"([^".\n][^"\n]*)";$/gm, /= require\("([^".\n][^"\n]*)"\)/g];
  const found = allFiles(scripts).flatMap((file) => {
    const text = readFileSync(join(scripts, file), 'utf8');
    return forms.flatMap((form) => [...text.matchAll(form)].map((match) => match[1]!));
  });
  return [...new Set(found)]
    .filter((name) => !name.startsWith('node:') && !builtinModules.includes(name))
    .sort();
}

describe('what is installed', () => {
  test('asks at run time for exactly what its dependencies name, and for Electron', () => {
    expect(importedNames(join(app, 'out/main'))).toEqual(['better-sqlite3', 'electron']);
    expect(importedNames(join(app, 'out/preload'))).toEqual(['electron']);
    expect(Object.keys(manifest.dependencies)).toEqual(['better-sqlite3']);
  });

  test('holds the built files and that package, and nothing that only making it needs', () => {
    expect(readdirSync(app).sort()).toEqual(['licences.txt', 'node_modules', 'out', 'package.json']);
    expect(readdirSync(join(app, 'node_modules'))).toEqual(['better-sqlite3']);
    const staged = JSON.parse(readFileSync(join(app, 'package.json'), 'utf8'));
    expect(staged.devDependencies ?? staged.scripts ?? staged.workspaces).toBeUndefined();
    expect(existsSync(join(app, staged.main))).toBe(true);
    expect(
      allFiles(app).filter((file) => /\.(ts|tsx|map|c|h|gyp)$|\/(tests?|deps|src)\//.test(file)),
    ).toEqual([]);
  });

  test.for(systems)(
    'has on %s the native module of that system alone, outside the archive',
    (system, { skip }) => {
      const own = { linux: /^linux(musl)?-/, mac: /^darwin-/, win: /^win32-/ }[system];
      const prebuilt = readdirSync(join(root, 'node_modules/better-sqlite3/prebuilds'));
      // A start removes what only other systems need: their packages are made on them.
      skip(!prebuilt.some((name) => own.test(name)), `this install has no native module for ${system}`);
      const { files, unpacked, bytes } = filesFor(config, system, app);
      const native = files.filter((file) => file.endsWith('.node'));
      expect(native.length).toBeGreaterThan(1);
      expect(native.filter((file) => !own.test(file.split('/').at(-1)!))).toEqual([]);
      expect(unpacked).toEqual(native);
      expect(bytes).toBeLessThan(25_000_000);
    },
  );

  test('comes with the licence texts of all that is in it', () => {
    const packages = shippedPackages(root);
    expect(packages).toContain('node_modules/better-sqlite3');
    expect(packages).toContain('node_modules/highs');
    const text = readFileSync(join(app, 'licences.txt'), 'utf8');
    for (const path of packages) {
      const { name, version } = JSON.parse(readFileSync(join(root, path, 'package.json'), 'utf8'));
      expect(text).toContain(`\n${name} ${version} (`);
    }
    // The typeface of PDFs is no package; its licence asks to go with it.
    expect(text).toContain('Noto Sans 2.015 (OFL-1.1)');
    expect(text).toContain('SIL OPEN FONT LICENSE Version 1.1');
    mkdirSync(join(folder, 'node_modules/wool'), { recursive: true });
    writeFileSync(
      join(folder, 'node_modules/wool/package.json'),
      '{ "name": "wool", "version": "1.0.0", "license": "MIT" }',
    );
    expect(() => licenceTexts(folder, ['node_modules/wool'])).toThrow('wool 1.0.0 (MIT) has no licence text');
  });
});

describe('the configuration of the packages', () => {
  test('makes a Windows installer, a macOS image for both processors, and AppImage and deb for Linux', () => {
    const targets = systems.map((system) => [config[system]?.target].flat());
    expect(targets).toEqual([
      [
        { target: 'AppImage', arch: ['x64', 'arm64'] },
        { target: 'deb', arch: ['x64', 'arm64'] },
      ],
      [{ target: 'dmg', arch: ['universal'] }],
      [{ target: 'nsis', arch: ['x64', 'arm64'] }],
    ]);
  });

  test('names pictures and papers that are there', () => {
    const icons = systems.map((system) => join(root, 'resources/icon', String(config[system]?.icon)));
    const papers = [config.mac?.entitlements, config.nsis?.license].map((path) => join(root, String(path)));
    expect([...icons, ...papers].filter((path) => !existsSync(path))).toEqual([]);
  });
});

describe('packed for Linux by electron-builder, with a stand-in for Electron’s runtime', () => {
  // By the check of a package, which prints figures alone, for scripts.
  const check = join(root, 'tests/packaging/check-package.ts');
  let ran: SpawnSyncReturns<string>;
  let report: {
    readonly problemsOfWrong: readonly string[];
    readonly packedForLinux: Record<string, unknown>;
  };
  beforeAll(() => {
    ran = spawnSync(ownNode, [check, '--json'], { encoding: 'utf8', timeout: 500_000 });
    report = JSON.parse(ran.stdout);
  });

  test('nothing is wrong with it, and the check says so', () => {
    expect(report).toMatchObject({ version: manifest.version, problems: [] });
    expect(ran.status).toBe(0);
  });

  test('its configuration is one that electron-builder takes, whose judgement can be no', () => {
    expect(report).toMatchObject({ problems: [] });
    expect(report.problemsOfWrong.join()).toContain('configuration.electronFuses');
  });

  test('the archive holds the files that were listed', () => {
    const { files, isAsListed, unpacked, beside } = report.packedForLinux;
    const listed = filesFor(config, 'linux', app);
    expect([files, isAsListed]).toEqual([listed.files.length, true]);
    expect(unpacked).toEqual(listed.unpacked);
    expect(beside).toEqual(expect.arrayContaining(['LICENSE.txt', 'licences.txt', 'LICENSE.electron.txt']));
  });

  test('the program runs nothing but the sealed archive: no Node of its own, no options, no inspector', () => {
    expect(report.packedForLinux.fuses).toEqual({
      RunAsNode: false,
      EnableCookieEncryption: true,
      EnableNodeOptionsEnvironmentVariable: false,
      EnableNodeCliInspectArguments: false,
      EnableEmbeddedAsarIntegrityValidation: true,
      OnlyLoadAppFromAsar: true,
      LoadBrowserProcessSpecificV8Snapshot: false,
      GrantFileProtocolExtraPrivileges: false,
    });
  });

  test('the workshop opens out of what was installed, with nothing of the project beside it', () => {
    expect(report.packedForLinux.answers).toBe(true);
  });
});

/** How npm says that it could not reach where packages come from. */
const notReached = /ENOTFOUND|ECONNREFUSED|ECONNRESET|ETIMEDOUT|EAI_AGAIN|ENETUNREACH|network|ERR_SOCKET/i;

test('an install without anything for development is enough to open the workshop', async ({ skip }) => {
  const bare = join(folder, 'bare');
  for (const part of ['package.json', 'package-lock.json', '.npmrc', 'tests/package.json'])
    cpSync(join(root, part), join(bare, part));
  for (const part of ['main', 'preload', 'renderer']) {
    cpSync(join(root, 'out', part), join(bare, 'out', part), { recursive: true });
  }
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const installed = spawnSync(npm, ['ci', '--omit=dev', '--no-audit', '--no-fund', '--prefer-offline'], {
    cwd: bare,
    encoding: 'utf8',
    timeout: 500_000,
    shell: process.platform === 'win32',
  });
  const said = `${installed.stderr}${installed.error?.message ?? ''}`;
  skip(installed.status !== 0 && notReached.test(said), 'the registry of packages cannot be reached');
  expect(installed.status, said).toBe(0);
  const there = readdirSync(join(bare, 'node_modules')).filter((name) => !name.startsWith('.'));
  // npm links the checks' own folder, and takes what compiling the package would need.
  expect(there.sort()).toEqual(['better-sqlite3', 'bolt-and-baffle-checks', 'node-addon-api']);
  const { title, facts, exitCode } = await startedHost(bare);
  expect([title, exitCode]).toEqual(['Bolt &amp; Baffle', 0]);
  expect(facts).toMatchObject({ ok: true });
});
