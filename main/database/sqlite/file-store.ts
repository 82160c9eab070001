/**
 * The maker's own workshop as a file, from the start of the program to its end: claimed, looked through for damage,
 * backed up, and brought back from a backup, also where its file cannot be opened at all.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { ok, type Result, type Problem, err } from '../../../shared-core/measure/problem.ts';
import {
  backupFolder,
  listBackups,
  makeBackup,
  makeChangedBackup,
  thinBackups,
} from '../backups/backup-folder.ts';
import { restoreBackup } from '../backups/bring-back.ts';
import { damage } from '../failures/damage.ts';
import { databaseProblem } from '../failures/failure.ts';
import type { Claim } from '../file/claim.ts';
import { type OpenWorkshop, openWorkshop } from '../file/connection.ts';
import { FileNotInPlace } from '../file/in-place.ts';
import { openClaimed } from '../file/opening.ts';
import { readWorkshop } from '../file/reading.ts';
import { schemaVersion } from '../schema/migrate.ts';
import type { OwnStore } from '../store.ts';
import { transactions } from './beside.ts';

export interface FileStoreOptions {
  readonly dataFile: string;
  readonly now: () => Date;
  /** How long a call waits for another program that holds the file. */
  readonly waitMs: number;
  /** For a program that only reads, beside an open window or not: see file/reading.ts. Every write fails. */
  readonly isReadOnly: boolean;
  /** Told in fixed words of what was found amiss, and what was thrown there. */
  readonly note: (what: string, error?: unknown) => void;
}

/** Refused where the file cannot be had, or is at fault and there is no backup to bring back. */
export function openFileStore(options: FileStoreOptions): Result<OwnStore> {
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
  options: FileStoreOptions,
  file: string,
  claim: Claim | null,
  opened: Result<OpenWorkshop>,
): OwnStore {
  const { now, note } = options;
  const { read, write } = transactions();
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

  function inUse(): OpenWorkshop {
    if (!current.ok) throw new Error('the file is not open');
    return current.value;
  }

  const reopen = () => openWorkshop(file, options);

  /** The name of a backup of what was kept before the file was removed or replaced; null where none can be made. */
  async function rescue(): Promise<string | null> {
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
  }

  return {
    name: file,
    file,
    schemaVersion: () => schemaVersion(inUse().connection),
    async ready() {
      if (!current.ok && claim !== null) {
        current = reopen();
        if (current.ok) begin('at the start');
      }
      return current.ok ? ok(null) : current;
    },
    told: () => told,
    read: (how, work) => read(inUse(), how, work),
    write: (how, work) => write(inUse(), how, work),
    onChangeElsewhere: () => () => {},
    async explain(error) {
      const problem = databaseProblem(error, file);
      if (problem === null || !(error instanceof FileNotInPlace)) return problem;
      // What was kept before the file went is in the program's hands alone, and would go with it.
      const name = await rescue();
      if (name === null) return problem;
      const fix = say('file-store.this-step-was-not-kept-all', { name });
      return { ...problem, fix };
    },
    backups: () => ({ folder: backupFolder(file), rows: listBackups(file), lastProblem: backupProblem }),
    async backup() {
      const { connection, queries } = inUse();
      // As above.
      await queries.connection().execute(async () => makeBackup(connection, file, 'by hand', now()));
      return ok(null);
    },
    async restore(name) {
      const brought = restoreBackup(name, { file, open: current.ok ? current.value : null, now, reopen });
      const isOther = brought.open !== null && !(current.ok && current.value === brought.open);
      if (brought.open) current = ok(brought.open);
      else if (current.ok) current = err(...brought.problems);
      if (isOther) begin('later');
      return brought.open && brought.problems.length === 0 ? ok(null) : err(...brought.problems);
    },
    async close() {
      if (current.ok) current.value.close();
      claim?.release();
    },
  };
}

/**
 * Makes a backup at the start where the file holds anything and is not the same as its newest backup. A backup that
 * cannot be made is told of and noted in the failure log, and keeps nobody from working.
 */
function backUpAtStart(
  open: OpenWorkshop,
  now: Date,
  note: (what: string, error: unknown) => void,
): Problem | null {
  try {
    if (isEmpty(open)) return null;
    if (makeChangedBackup(open.connection, open.file, 'automatic', now) !== null) thinBackups(open.file);
    return null;
  } catch (error) {
    note('backup at the start', error);
    const where = backupFolder(open.file);
    const fix = say('file-store.see-that-there-is-room-and');
    return databaseProblem(error, where) ?? { where, what: say('file-store.could-not-take-a-backup'), fix };
  }
}

/** Neither an item nor a plan stands in it. */
export function isEmpty(open: OpenWorkshop): boolean {
  return (
    open.connection
      .prepare('SELECT NOT EXISTS (SELECT 1 FROM item) AND NOT EXISTS (SELECT 1 FROM plan)')
      .pluck()
      .get() === 1
  );
}

function goingOnDamaged({ where, what }: Problem): Problem {
  return {
    where,
    what,
    fix: say('file-store.what-you-see-may-lack-entries'),
  };
}
