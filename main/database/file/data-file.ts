/** Where a workshop's data lives on each platform; both doors ask here, so they always open the same file. */
import { posix, win32 } from 'node:path';
import { isAddress, readAddress } from '../postgres/address.ts';

export interface WorkshopFiles {
  /** Folder of the workshop's own files; may not exist yet. */
  readonly folder: string;
  /** The address where the workshop is in a database. */
  readonly dataFile: string;
  /** What this desk keeps of its own is named after it: the file itself, or one that never is for a database. */
  readonly localFile: string;
  /** The demo workshop, kept apart so that it can be thrown away. */
  readonly demoFile: string;
}

/**
 * The files of the workshop.
 *
 * platform: as process.platform. home: absolute. asked: the file named by --data, absolute, or the address of a
 * database, or undefined for the usual place. The demo stands beside the file under the same name with "demo-" in front.
 */
export function workshopFiles(
  platform: string,
  env: Readonly<Record<string, string | undefined>>,
  home: string,
  asked: string | undefined,
): WorkshopFiles {
  const path = platform === 'win32' ? win32 : posix;
  const usual = path.join(userDataFolder(platform, env, home), 'bolt-and-baffle', 'workshop.sqlite');
  const isShared = asked !== undefined && isAddress(asked);
  const localFile = isShared ? path.join(path.dirname(usual), localName(asked)) : (asked ?? usual);
  const folder = path.dirname(localFile);
  const demoFile = path.join(folder, `demo-${path.basename(localFile)}`);
  return { folder, dataFile: isShared ? asked : localFile, localFile, demoFile };
}

/** The file or address named by "--data FILE" or "--data=FILE", undefined where none is named. Throws for --data without one. */
export function askedDataFile(words: readonly string[]): string | undefined {
  const at = words.findIndex((word) => word === '--data' || word.startsWith('--data='));
  if (at === -1) return undefined;
  const file = words[at] === '--data' ? words[at + 1] : words[at]?.slice('--data='.length);
  if (file === undefined || file === '') throw new Error('--data needs a file');
  return file;
}

/** Tells workshops on several hosts apart; any sign may stand in an address. */
function localName(address: string): string {
  const read = readAddress(address);
  const place = read.ok ? `${read.value.host}-${read.value.port}-${read.value.database}` : 'unread';
  return `shared-${place.replace(/[^\p{L}\p{N}.-]+/gu, '-')}.sqlite`;
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
