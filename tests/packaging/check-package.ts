/**
 * What would be installed, as far as it can be known without Electron's runtime:
 *   npm run -s package:check -- [--json]
 * Holds the configuration against electron-builder's schema, lists the files for each system, packs the app for Linux
 * with a stand-in for the runtime, and starts the loopback host out of the archive.
 */
import { mkdtempSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Configuration } from 'electron-builder';
import { shippedPackages, stageApp } from '../../main/launch/staging.mjs';
import { ensureBuilt } from '../../main/launch/build.mjs';
import { root } from '../../main/launch/install.mjs';
import { configProblems } from './config-problems.ts';
import { hostAnswers } from './installed-host.ts';
import { filesFor, readPackageConfig, systems } from './package-config.ts';
import { packForLinux } from './packed.ts';

if (!ensureBuilt()) process.exit(1);
// The builder tells on stdout what it does; that belongs to the figures.
process.stdout.write = process.stderr.write.bind(process.stderr);
const app = join(root, 'out', 'app');
stageApp(root, app);
const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const config = await readPackageConfig(root);
const folder = mkdtempSync(join(tmpdir(), 'bolt-and-baffle-package-'));
try {
  const packed = await packForLinux(root, folder, manifest.devDependencies.electron);
  const perSystem = systems.map((system) => {
    const { files, bytes, digest, unpacked } = filesFor(config, system, app);
    return [system, { files: files.length, bytes, digest, unpacked }] as const;
  });
  const linux = filesFor(config, 'linux', app).files;
  const wrong = {
    ...config,
    electronFuses: { ...config.electronFuses, runAsNodes: false },
  } as Configuration;
  const report = {
    version: manifest.version,
    problems: await configProblems(config),
    // What the same judgement says of a fuse that there is not.
    problemsOfWrong: await configProblems(wrong),
    systems: Object.fromEntries(perSystem),
    packedForLinux: {
      files: packed.files.length,
      isAsListed: JSON.stringify(packed.files) === JSON.stringify(linux),
      unpacked: packed.unpacked,
      beside: packed.beside,
      fuses: packed.fuses,
      answers: await hostAnswers(packed.app),
    },
    fuses: config.electronFuses,
    dependencies: manifest.dependencies,
    licences: shippedPackages(root).map((path) => {
      const { name, version, license } = JSON.parse(readFileSync(join(root, path, 'package.json'), 'utf8'));
      return { name, version, licence: license };
    }),
  };
  writeSync(process.stdout.fd, `${JSON.stringify(report, null, 1)}\n`);
  const { isAsListed, answers } = report.packedForLinux;
  const isJudged = report.problems.length === 0 && report.problemsOfWrong.length > 0;
  if (!isJudged || !isAsListed || !answers) process.exitCode = 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
