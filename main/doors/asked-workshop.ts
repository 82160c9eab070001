/** Which workshop a start opens: the one that it names, else the one chosen under Settings, else the usual file. */
import { resolve } from 'node:path';
import { chosenAddress } from '../database/chosen-address.ts';
import { workshopFiles, type WorkshopFiles } from '../database/file/data-file.ts';
import { isAddress } from '../database/postgres/address.ts';

export interface AskedWorkshop extends WorkshopFiles {
  /** The usual folder, which is the program's own to make. */
  readonly usualFolder: string;
  /** What this desk keeps lies in the usual folder, rather than beside a file that the maker named. */
  readonly isUsual: boolean;
}

/** asked: the file or address that the start names; undefined where it names none. home: absolute. */
export function askedWorkshop(asked: string | undefined, home: string): AskedWorkshop {
  const { platform, env } = process;
  const { folder: usualFolder } = workshopFiles(platform, env, home, undefined);
  const place = asked ?? chosenAddress(usualFolder, null).address() ?? undefined;
  const isFile = place !== undefined && !isAddress(place);
  const files = workshopFiles(platform, env, home, isFile ? resolve(place) : place);
  return { ...files, usualFolder, isUsual: !isFile };
}
