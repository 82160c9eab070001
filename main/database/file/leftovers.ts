/** What a program that died in the middle has left beside a workshop's file. To be asked for under the claim alone. */
import { readdirSync, rmSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import { backupFolder } from '../backups/backup-folder.ts';
import { closeToOthers, folderModeBeside, modeBeside } from './private-file.ts';

/** Takes away the halves and the whole copies that never got their name. What cannot be removed stays. */
export function sweepLeftovers(file: string): void {
  const tempFile = /^\.[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}\.new(-journal|-wal|-shm)?$/;
  const half = /^\.\d+\.part(-journal)?$/;
  sweep(dirname(file), file, tempFile);
  sweep(backupFolder(file), file, half);
}

function sweep(folder: string, file: string, rest: RegExp): void {
  for (const name of namesIn(folder)) {
    if (!name.startsWith(basename(file)) || !rest.test(name.slice(basename(file).length))) continue;
    try {
      rmSync(join(folder, name), { force: true });
    } catch {
      // The next start tries again.
    }
  }
}

/** Takes from the file and its copies what earlier versions left open to every person on this machine. */
export function closeAllToOthers(file: string): void {
  const mode = modeBeside(file);
  closeToOthers(file, mode);
  closeToOthers(backupFolder(file), folderModeBeside(file));
  const before = `${basename(file, extname(file))}-before-`;
  for (const name of namesIn(dirname(file))) {
    if (name.startsWith(before)) closeToOthers(join(dirname(file), name), mode);
  }
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}
