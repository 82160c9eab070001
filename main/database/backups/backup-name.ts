/**
 * The names of backups: own-0017-2026-03-27T08-09-10-by-hand.sqlite. The number tells the order in which they were
 * made; the date is for people, since a clock may be wrong. Earlier versions gave no number.
 */
import { basename, extname } from 'node:path';
import type { Backup } from '../../../shared-core/contract/contract.ts';

/** 'put here' is a file that the maker has laid into the folder. */
export type BackupKind = Exclude<Backup['kind'], 'put here'>;

export interface BackupName {
  /** From 1; 0 for those of earlier versions. */
  readonly number: number;
  readonly at: Date;
  readonly kind: BackupKind;
}

const databaseEnding = /\.(sqlite3?|db)$/i;
const dated =
  /-(\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2})-(automatic|by-hand|before-bringing-back|rescued)(?:-\d+)?\.\w+$/;

export function isDatabaseName(name: string): boolean {
  return databaseEnding.test(name);
}

export function backupName(file: string, { number, at, kind }: BackupName): string {
  const ending = extname(file);
  const stamp = at.toISOString().replaceAll(':', '-').replace(/\..*/, '');
  const words = `${stemOf(file)}-${String(number).padStart(4, '0')}-${stamp}-${kind.replaceAll(' ', '-')}`;
  return words + (isDatabaseName(ending) ? ending : '.sqlite');
}

/** Null for a name that this program did not give. */
export function readBackupName(file: string, name: string): BackupName | null {
  const match = dated.exec(name);
  if (!match) return null;
  const [day, time] = match[1]!.split('T');
  const at = new Date(`${day}T${time!.replaceAll('-', ':')}Z`);
  if (Number.isNaN(at.getTime())) return null;
  const front = name.slice(0, match.index);
  // Only behind the file's own name: one that ends in digits is not numbered by them.
  const isOurs = front.startsWith(`${stemOf(file)}-`);
  const digits = isOurs ? /^\d{4,}$/.exec(front.slice(stemOf(file).length + 1)) : null;
  const kind = match[2]!.replaceAll('-', ' ') as BackupKind;
  return { number: digits ? Number(digits[0]) : 0, at, kind };
}

export function stemOf(file: string): string {
  return basename(file, extname(file));
}
