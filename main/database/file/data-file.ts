/** Where a workshop's data lives on each platform; both doors ask here, so they always open the same file. */
import { posix, win32 } from 'node:path';

export interface WorkshopFiles {
  /** Folder of the workshop's own files; may not exist yet. */
  readonly folder: string;
  readonly dataFile: string;
  /** The demo workshop, kept apart so that it can be thrown away. */
  readonly demoFile: string;
}

/**
 * The files of the workshop.
 *
 * platform: as process.platform. home: absolute. asked: the file named by --data, absolute, or undefined for
 * the usual place; the demo stands beside it under the same name with "demo-" in front.
 */
export function workshopFiles(
  platform: string,
  env: Readonly<Record<string, string | undefined>>,
  home: string,
  asked: string | undefined,
): WorkshopFiles {
  const path = platform === 'win32' ? win32 : posix;
  const dataFile =
    asked ?? path.join(userDataFolder(platform, env, home), 'bolt-and-baffle', 'workshop.sqlite');
  const folder = path.dirname(dataFile);
  return { folder, dataFile, demoFile: path.join(folder, `demo-${path.basename(dataFile)}`) };
}

/** The file named by "--data FILE" or "--data=FILE", undefined where none is named. Throws for --data without a file. */
export function askedDataFile(words: readonly string[]): string | undefined {
  const at = words.findIndex((word) => word === '--data' || word.startsWith('--data='));
  if (at === -1) return undefined;
  const file = words[at] === '--data' ? words[at + 1] : words[at]?.slice('--data='.length);
  if (file === undefined || file === '') throw new Error('--data needs a file');
  return file;
}

function userDataFolder(
  platform: string,
  env: Readonly<Record<string, string | undefined>>,
  home: string,
): string {
  switch (platform) {
    case 'win32':
      return env.APPDATA || win32.join(home, 'AppData', 'Roaming');
    case 'darwin':
      return posix.join(home, 'Library', 'Application Support');
    default:
      return env.XDG_DATA_HOME?.startsWith('/') ? env.XDG_DATA_HOME : posix.join(home, '.local', 'share');
  }
}
