/**
 * The backups of a workshop's file: whole copies in a folder beside it, each with its number, date and reason in its
 * name. Those made without being asked for give way to newer ones; those that the maker asked for stay.
 */
import {
  chmodSync,
  closeSync,
  mkdirSync,
  openSync,
  readdirSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import type { Backup } from '../../../shared-core/contract/contract.ts';
import { type BackupKind, backupName, isDatabaseName, readBackupName, stemOf } from './backup-name.ts';
import { closeToOthers, folderModeBeside } from '../file/private-file.ts';
import { copyWhole } from './whole-copy.ts';

/** Of each kind that nobody asked for, so many are kept. */
export const keptCount = 10;
const thinned: readonly Backup['kind'][] = ['automatic', 'before bringing back'];

/** file: absolute, here and below. "workshop.sqlite" has its backups in "workshop-backups". */
export function backupFolder(file: string): string {
  return join(dirname(file), `${stemOf(file)}-backups`);
}

/**
 * Newest first by the order in which they were made, whatever the clock said; before them all what the maker has put
 * there. Empty where there is no folder yet.
 */
export function listBackups(file: string): Backup[] {
  return numbered(file).map(({ backup }) => backup);
}

interface Numbered {
  readonly backup: Backup;
  readonly number: number;
}

function numbered(file: string): Numbered[] {
  const folder = backupFolder(file);
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
  const rows = names.flatMap((name) => {
    const facts = statSync(join(folder, name), { throwIfNoEntry: false });
    if (!facts?.isFile() || !isDatabaseName(name)) return [];
    const said = readBackupName(file, name);
    const at = (said?.at ?? facts.mtime).toISOString();
    const backup: Backup = { name, at, kind: said?.kind ?? 'put here', sizeBytes: facts.size };
    return [{ backup, number: said?.number ?? Number.POSITIVE_INFINITY }];
  });
  return rows.sort(newestFirst);
}

function newestFirst(a: Numbered, b: Numbered): number {
  if (a.number !== b.number) return a.number < b.number ? 1 : -1;
  if (a.backup.at !== b.backup.at) return a.backup.at < b.backup.at ? 1 : -1;
  return b.backup.name.localeCompare(a.backup.name);
}

/** Copies the open file as it stands and gives the copy's name. No transaction may be open. Throws on failure. */
export function makeBackup(connection: Database, file: string, kind: BackupKind, at: Date): string {
  return bornBackup(connection, file, kind, at, false)!;
}

/** As above, but gives null and keeps no copy where it would be the same as the newest, byte for byte. */
export function makeChangedBackup(
  connection: Database,
  file: string,
  kind: BackupKind,
  at: Date,
): string | null {
  return bornBackup(connection, file, kind, at, true);
}

function bornBackup(
  connection: Database,
  file: string,
  kind: BackupKind,
  at: Date,
  onlyIfChanged: boolean,
): string | null {
  const folder = backupFolder(file);
  const folderMode = folderModeBeside(file);
  if (mkdirSync(folder, { recursive: true, mode: folderMode }) !== undefined) chmodSync(folder, folderMode);
  else closeToOthers(folder, folderMode);
  const tempFile = join(folder, `${basename(file)}.${process.pid}.part`);
  rmSync(tempFile, { force: true });
  try {
    copyWhole(connection, file, tempFile);
    const newest = numbered(file).find(({ backup }) => backup.kind !== 'put here');
    if (onlyIfChanged && newest && isSame(tempFile, join(folder, newest.backup.name))) return null;
    const name = backupName(file, { number: (newest?.number ?? 0) + 1, at, kind });
    renameSync(tempFile, join(folder, name));
    return name;
  } finally {
    rmSync(tempFile, { force: true });
  }
}

/** Takes away the oldest of each kind that nobody asked for, beyond the number that is kept. */
export function thinBackups(file: string): void {
  const rows = listBackups(file);
  for (const kind of thinned) {
    const ofKind = rows.filter((backup) => backup.kind === kind);
    for (const { name } of ofKind.slice(keptCount)) rmSync(join(backupFolder(file), name), { force: true });
  }
}

const chunkBytes = 1024 * 1024;

function isSame(a: string, b: string): boolean {
  if (statSync(a).size !== statSync(b).size) return false;
  const handles = [openSync(a, 'r'), openSync(b, 'r')] as const;
  try {
    const chunks = [Buffer.alloc(chunkBytes), Buffer.alloc(chunkBytes)] as const;
    for (;;) {
      const [readA, readB] = [readSync(handles[0], chunks[0]), readSync(handles[1], chunks[1])];
      if (readA !== readB || !chunks[0].subarray(0, readA).equals(chunks[1].subarray(0, readB))) return false;
      if (readA === 0) return true;
    }
  } finally {
    for (const handle of handles) closeSync(handle);
  }
}
