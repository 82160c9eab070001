/** Parts of packages that nothing here uses, a third of what a start would otherwise take on the disk. */
import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Folders and files below node_modules. A star stands for any name.
 *
 * @param {string} platform as process.platform
 * @param {string} arch as process.arch
 */
export function unusedParts(platform, arch) {
  return [
    // For compiling add-ons to Node.
    'node/node_modules/*/include',
    'node/node_modules/*/share',
    // SQLite's own sources, and its binaries for other systems.
    'better-sqlite3/deps',
    'better-sqlite3/src',
    ...otherSystems(platform, arch).map((system) => `better-sqlite3/prebuilds/${system}.node`),
    // The same library in forms for pages without a build, and its sources.
    '@cantoo/pdf-lib/dist/pdf-lib*',
    '@cantoo/pdf-lib/src',
    '@cantoo/pdf-lib/ts3.4',
    '@cantoo/fontkit/dist/fontkit.umd*',
    '@cantoo/fontkit/dist/browser.cjs*',
    '@cantoo/fontkit/src',
    // Of its own codec it only reads.
    'brotli/build',
    'brotli/enc',
    'qrcode-generator/experiment',
    'qrcode-generator/test',
    '@base-ui/react/docs',
    // Sources, and the same library for browsers of long ago.
    '@tanstack/query-core/src',
    '@tanstack/query-core/build/legacy',
    '@tanstack/react-query/src',
    '@tanstack/react-query/build/legacy',
    '@hookform/resolvers/*/src',
    'zod/src',
  ];
}

/**
 * Removes them where they are. What a link elsewhere also names stays there.
 *
 * @param {string} modules the folder node_modules
 */
export function removeUnusedParts(modules, platform = process.platform, arch = process.arch) {
  for (const pattern of unusedParts(platform, arch)) {
    for (const path of matching(modules, pattern.split('/'))) rmSync(path, { recursive: true, force: true });
  }
  // Maps back to sources that are not there.
  const maps = readdirSync(modules, { recursive: true, encoding: 'utf8' }).filter((file) =>
    /\.[cm]?js\.map$/.test(file),
  );
  for (const file of maps) rmSync(join(modules, file), { force: true });
}

/**
 * @param {string} platform
 * @param {string} arch
 */
function otherSystems(platform, arch) {
  const systems = ['darwin', 'linux', 'linuxmusl', 'win32'].flatMap((system) => [
    `${system}-arm64`,
    `${system}-x64`,
  ]);
  // Which C library a Linux has is for the package to find out.
  return systems.filter((system) => system.replace('musl', '') !== `${platform}-${arch}`);
}

/**
 * @param {string} folder
 * @param {readonly string[]} names
 * @returns {string[]}
 */
function matching(folder, [name = '', ...rest]) {
  if (!existsSync(folder)) return [];
  const [start = '', end] = name.split('*');
  const found =
    end === undefined
      ? [name]
      : readdirSync(folder).filter((entry) => entry.startsWith(start) && entry.endsWith(end));
  const paths = found.map((entry) => join(folder, entry));
  return rest.length === 0
    ? paths.filter((path) => existsSync(path))
    : paths.flatMap((path) => matching(path, rest));
}
