/**
 * The backups of a workshop's file: whole copies in a folder beside it, each with its date and reason in its name.
 * Those made by themselves give way to newer ones; those that the maker asked for stay.
 */
import { mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import type { Database } from 'better-sqlite3';
import type { Backup } from '../../shared-core/contract/contract.ts';

/** 'put here' is a file that the maker has laid into the folder. */
type BackupKind = Exclude<Backup['kind'], 'put here'>;

export const keptAutomaticCount = 10;

/** file: absolute, here and below. "workshop.sqlite" has its backups in "workshop-backups". */
export function backupFolder(file: string): string {
  return join(dirname(file), `${basename(file, extname(file))}-backups`);
}

/** Newest first; empty where there is no folder yet. */
export function listBackups(file: string): Backup[] {
  const folder = backupFolder(file);
  let names: string[];
  try {
    names = readdirSync(folder);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw error;
  }
  return names
    .flatMap((name) => {
      const facts = statSync(join(folder, name), { throwIfNoEntry: false });
      if (!facts?.isFile() || !/\.(sqlite3?|db)$/i.test(name)) return [];
      const said = readName(name);
      return [
        {
          name,
          at: said?.at ?? facts.mtime.toISOString(),
          kind: said?.kind ?? ('put here' as const),
          sizeBytes: facts.size,
        },
      ];
    })
    .sort((a, b) => (a.at === b.at ? b.name.localeCompare(a.name) : a.at < b.at ? 1 : -1));
}

/** Copies the open file as it stands and gives the copy's name. No transaction may be open. Throws on failure. */
export function makeBackup(connection: Database, file: string, kind: BackupKind, at: Date): string {
  const folder = backupFolder(file);
  mkdirSync(folder, { recursive: true });
  // What stands in the log goes into the file now, so that the file's own date is never later than this backup's.
  connection.pragma('wal_checkpoint(PASSIVE)');
  const unborn = join(folder, `${basename(file)}.${process.pid}.part`);
  rmSync(unborn, { force: true });
  try {
    connection.prepare('VACUUM INTO ?').run(unborn);
    const name = freeName(folder, file, kind, at);
    renameSync(unborn, join(folder, name));
    return name;
  } finally {
    rmSync(unborn, { force: true });
  }
}

/** Takes away the oldest of those that were made by themselves, beyond the number that is kept. */
export function thinBackups(file: string): void {
  const automatic = listBackups(file).filter((backup) => backup.kind === 'automatic');
  for (const { name } of automatic.slice(keptAutomaticCount))
    rmSync(join(backupFolder(file), name), { force: true });
}

/** Whether the closed file was written to after its newest backup; true where there is none. */
export function hasChangedSinceBackup(file: string): boolean {
  const newest = Math.max(
    0,
    ...listBackups(file).map(({ name }) => statSync(join(backupFolder(file), name)).mtimeMs),
  );
  const changed = [file, `${file}-wal`].map((path) => {
    const facts = statSync(path, { throwIfNoEntry: false });
    return facts && facts.size > 0 ? facts.mtimeMs : 0;
  });
  return Math.max(...changed) > newest;
}

const nameForm =
  /-(\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2})-(automatic|by-hand|before-bringing-back)(?:-\d+)?\.\w+$/;

function readName(name: string): { at: string; kind: BackupKind } | null {
  const match = nameForm.exec(name);
  if (!match) return null;
  const [day, time] = match[1]!.split('T');
  const at = new Date(`${day}T${time!.replaceAll('-', ':')}Z`);
  if (Number.isNaN(at.getTime())) return null;
  return { at: at.toISOString(), kind: match[2]!.replaceAll('-', ' ') as BackupKind };
}

/** Never that of an earlier one. */
function freeName(folder: string, file: string, kind: BackupKind, at: Date): string {
  const ending = extname(file) || '.sqlite';
  const stamp = at.toISOString().replaceAll(':', '-').replace(/\..*/, '');
  const stem = `${basename(file, extname(file))}-${stamp}-${kind.replaceAll(' ', '-')}`;
  const taken = new Set(readdirSync(folder));
  for (let next = 1; ; next++) {
    const name = `${stem}${next === 1 ? '' : `-${next}`}${/\.(sqlite3?|db)$/i.test(ending) ? ending : '.sqlite'}`;
    if (!taken.has(name)) return name;
  }
}
