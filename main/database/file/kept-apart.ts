/**
 * What must not be read and must not be lost: a damaged file, or a log that belongs to another file. It is kept under
 * its own name in a folder of its own among the backups, with what belongs to it.
 */
import { copyFileSync, existsSync, mkdirSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { backupFolder } from '../backups/backup-folder.ts';
import { closeToOthers, folderModeBeside, modeBeside } from './private-file.ts';

/** What SQLite may have beside a file while it is open. */
const besides = ['-wal', '-shm', '-journal', '-pages'] as const;

/** Copies the closed file with all that lies beside it, and gives the folder. Throws on failure. */
export function copyApart(file: string, at: Date): string {
  return copied(file, ['', ...besides], at);
}

/** Takes the log away from beside the closed file, and gives the folder in which it now is. Throws on failure. */
export function takeLogApart(file: string, at: Date): string {
  const folder = copied(file, ['-wal', '-pages'], at);
  removeBesides(file);
  return folder;
}

/** Takes away all that belongs to a file which is about to be another. */
export function removeBesides(file: string): void {
  for (const ending of besides) rmSync(file + ending, { force: true });
}

function copied(file: string, endings: readonly string[], at: Date): string {
  const folder = freeFolder(file, at);
  const mode = folderModeBeside(file);
  mkdirSync(folder, { recursive: true, mode });
  try {
    for (const ending of endings) {
      const copy = join(folder, basename(file) + ending);
      if (!existsSync(file + ending)) continue;
      copyFileSync(file + ending, copy);
      closeToOthers(copy, modeBeside(file));
    }
    return folder;
  } catch (error) {
    rmSync(folder, { recursive: true, force: true });
    throw error;
  }
}

function freeFolder(file: string, at: Date): string {
  const stamp = at.toISOString().replaceAll(':', '-').replace(/\..*/, '');
  const stem = join(backupFolder(file), `kept-apart-${stamp}`);
  let folder = stem;
  for (let next = 2; existsSync(folder); next++) folder = `${stem}-${next}`;
  return folder;
}
