/** What the packaging is told, and which files follow from it on each system. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, matchesGlob, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Configuration } from 'electron-builder';

export const systems = ['linux', 'mac', 'win'] as const;
export type System = (typeof systems)[number];

export interface FileList {
  readonly files: readonly string[];
  readonly bytes: number;
  /** SHA-256 over names and contents, in the order of the names. */
  readonly digest: string;
  /** Those that lie outside the archive. */
  readonly unpacked: readonly string[];
}

export async function readPackageConfig(root: string): Promise<Configuration> {
  const file = join(root, 'resources/packaging/electron-builder.mjs');
  // The builder writes into what it is given.
  return structuredClone((await import(pathToFileURL(file).href)).default as Configuration);
}

/** The files of the app that go into the package of a system. app: the staged folder. */
export function filesFor(config: Configuration, system: System, app: string): FileList {
  const patterns = [...patternsOf(config.files), ...patternsOf(config[system]?.files)];
  const files = allFiles(app).filter((file) => isTaken(patterns, file));
  const hash = createHash('sha256');
  let bytes = 0;
  for (const file of files) {
    const content = readFileSync(join(app, file));
    bytes += content.length;
    hash.update(`${file}\n${content.length}\n`).update(content);
  }
  const unpacked = files.filter((file) => isTaken(patternsOf(config.asarUnpack), file));
  return { files, bytes, digest: hash.digest('hex'), unpacked };
}

function patternsOf(given: Configuration['files']): string[] {
  return [given ?? []].flat().filter((pattern) => typeof pattern === 'string');
}

/** The last pattern that speaks of a file decides. */
function isTaken(patterns: readonly string[], file: string): boolean {
  return patterns.reduce((isIn, pattern) => {
    const isOut = pattern.startsWith('!');
    return matchesGlob(file, isOut ? pattern.slice(1) : pattern) ? !isOut : isIn;
  }, false);
}

/** With slashes, in the order of their names. */
export function allFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => statSync(join(folder, file)).isFile())
    .map((file) => file.split(sep).join('/'))
    .sort();
}
