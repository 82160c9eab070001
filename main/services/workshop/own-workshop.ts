/**
 * The maker's own workshop from the start of the program to its end: claimed, looked through for damage, backed up, and
 * brought back from a backup, also where its file cannot be opened at all.
 */
import type { Backups } from '../../../shared-core/contract/contract.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import { backupFolder, listBackups, makeBackup } from '../../database/backups/backup-folder.ts';
import { restoreBackup } from '../../database/backups/bring-back.ts';
import type { Claim } from '../../database/file/claim.ts';
import { type OpenWorkshop, openWorkshop } from '../../database/file/connection.ts';
import { damage } from '../../database/failures/damage.ts';
import { openClaimed } from '../../database/file/opening.ts';
import { readWorkshop } from '../../database/file/reading.ts';
import { backUpAtStart } from './backups.ts';

export interface OwnWorkshop {
  /** Absolute. */
  readonly file: string;
  /** The open workshop. One that could not be opened is tried again. */
  use(): Result<OpenWorkshop>;
  /** What is wrong with the file though it is open, and what became of it at the start. */
  told(): readonly Problem[];
  backups(): Backups;
  /** No other call may be under way. */
  restoreBackup(name: string): Result<OpenWorkshop>;
  /** The name of a backup of what was kept before the file was removed or replaced; null where none can be made. */
  rescue(): Promise<string | null>;
  close(): void;
}

export interface OwnOptions {
  readonly dataFile: string;
  readonly now: () => Date;
  readonly waitMs: number;
  readonly isReadOnly: boolean;
  /** Told in fixed words of what was found amiss, and what was thrown there. */
  readonly note: (what: string, error?: unknown) => void;
}

/** Refused where the file cannot be had, or is at fault and there is no backup to bring back. */
export function openOwn(options: OwnOptions): Result<OwnWorkshop> {
  const { dataFile, waitMs } = options;
  if (options.isReadOnly) {
    const read = readWorkshop(dataFile, waitMs);
    return read.ok ? ok(over(options, read.value.file, null, read)) : read;
  }
  const claimed = openClaimed(dataFile, options);
  if (!claimed.ok) return claimed;
  const { file, claim, opened } = claimed.value;
  try {
    return ok(over(options, file, claim, opened));
  } catch (error) {
    claim.release();
    throw error;
  }
}

function over(
  options: OwnOptions,
  file: string,
  claim: Claim | null,
  opened: Result<OpenWorkshop>,
): OwnWorkshop {
  const { now, note } = options;
  let current = opened;
  let told: readonly Problem[] = [];
  let backupProblem: Problem | null = null;
  let rescued: string | null = null;

  if (claim !== null) begin('at the start');

  /** After each opening but those for reading alone. */
  function begin(when: 'at the start' | 'later'): void {
    told = [];
    backupProblem = null;
    if (!current.ok) {
      note('the file cannot be opened');
      return;
    }
    const open = current.value;
    const damaged = damage(open.connection, file);
    if (open.told.length > 0) note('a log of another file was kept apart');
    if (damaged) note('the file is damaged');
    told = damaged ? [...open.told, goingOnDamaged(damaged)] : open.told;
    // What is damaged is no backup, and must not push out those from before.
    if (!damaged && when === 'at the start') backupProblem = backUpAtStart(open, now(), note);
  }

  const reopen = () => openWorkshop(file, options);

  return {
    file,
    use() {
      if (!current.ok && claim !== null) {
        current = reopen();
        if (current.ok) begin('at the start');
      }
      return current;
    },
    told: () => told,
    backups: () => ({ folder: backupFolder(file), rows: listBackups(file), lastProblem: backupProblem }),
    restoreBackup(name) {
      const brought = restoreBackup(name, { file, open: current.ok ? current.value : null, now, reopen });
      const isOther = brought.open !== null && !(current.ok && current.value === brought.open);
      if (brought.open) current = ok(brought.open);
      else if (current.ok) current = err(...brought.problems);
      if (isOther) begin('later');
      return brought.open && brought.problems.length === 0 ? ok(brought.open) : err(...brought.problems);
    },
    async rescue() {
      if (rescued !== null || !current.ok || claim === null) return rescued;
      const { connection, queries } = current.value;
      try {
        // Holding the connection keeps every other call of this program waiting meanwhile.
        rescued = await queries
          .connection()
          .execute(async () => makeBackup(connection, file, 'rescued', now()));
      } catch (error) {
        note('rescue', error);
      }
      return rescued;
    },
    close() {
      if (current.ok) current.value.close();
      claim?.release();
    },
  };
}

function goingOnDamaged({ where, what }: Problem): Problem {
  return {
    where,
    what,
    fix: 'What you see may lack entries. Bring a backup back under Settings: the damaged file is kept as well. Until then no backup is made at the start, and none is taken away.',
  };
}
