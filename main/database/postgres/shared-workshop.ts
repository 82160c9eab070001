/**
 * The maker's own workshop where several desks share it. Its backups are files of this desk, each a whole workshop: a
 * copy of the server's own making (pg_dump) is for whoever looks after the database.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { randomUUID } from 'node:crypto';
import { chmodSync, mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { err, ok, type Result } from '../../../shared-core/measure/problem.ts';
import { backupFolder, listBackups, thinBackups } from '../backups/backup-folder.ts';
import { type BackupKind, backupName, readBackupName } from '../backups/backup-name.ts';
import { carryAll } from '../carry/carry.ts';
import { databaseProblem } from '../failures/failure.ts';
import { folderModeBeside } from '../file/private-file.ts';
import { readWorkshop } from '../file/reading.ts';
import { fillNewFile } from '../sqlite/file-target.ts';
import type { OwnStore } from '../store.ts';
import { shownAddress } from './address.ts';
import { serverProblem } from './failing.ts';
import { sharedSchema } from './shared-migrations.ts';
import { openSharedStore, type SharedOptions, type SharedStore } from './postgres-store.ts';
import { refill } from './shared-target.ts';

export interface SharedWorkshopOptions extends SharedOptions {
  /** Absolute: names what this desk keeps of its own, the log and the backups. */
  readonly localFile: string;
  readonly now: () => Date;
  /** Gives a store also where it cannot be had now; each asking whether it is ready tries again. */
  readonly mayOpenLater: boolean;
}

export async function openSharedWorkshop(options: SharedWorkshopOptions): Promise<Result<OwnStore>> {
  const { localFile, now, waitMs } = options;
  const name = shownAddress(options.address);
  const listeners = new Set<() => void>();
  let current = await openSharedStore(options);
  if (!current.ok && !options.mayOpenLater) return current;
  let again: Promise<void> | null = null;
  if (current.ok) listenTo(current.value);

  function listenTo(store: SharedStore): void {
    store.onChangeElsewhere(() => {
      for (const listener of listeners) listener();
    });
  }

  function inUse(): SharedStore {
    if (!current.ok) throw new Error('the shared workshop is not open');
    return current.value;
  }

  /** Calls that come at once open it once. */
  async function ready(): Promise<Result<null>> {
    if (current.ok) return ok(null);
    again ??= reopened().finally(() => {
      again = null;
    });
    await again;
    return current.ok ? ok(null) : current;
  }

  async function reopened(): Promise<void> {
    current = await openSharedStore(options);
    if (current.ok) listenTo(current.value);
  }

  /** Of what stands there at this instant, read back and compared. */
  async function copyOf(kind: BackupKind): Promise<Result<null>> {
    const folder = backupFolder(localFile);
    const mode = folderModeBeside(localFile);
    if (mkdirSync(folder, { recursive: true, mode }) !== undefined) chmodSync(folder, mode);
    const numbers = listBackups(localFile).map(({ name }) => readBackupName(localFile, name)?.number ?? 0);
    const name = backupName(localFile, { number: 1 + Math.max(0, ...numbers), at: now(), kind });
    const made = await inUse().read({ isLong: true }, (source) =>
      fillNewFile(join(folder, name), now, (target) => carryAll(source, target, { from: name, to: name })),
    );
    return made.ok ? ok(null) : made;
  }

  return ok({
    name,
    file: localFile,
    schemaVersion: () => sharedSchema,
    ready,
    told: () => [],
    read: (how, work) => inUse().read(how, work),
    write: (how, work) => inUse().write(how, work),
    onChangeElsewhere(listener) {
      listeners.add(listener);
      return () => void listeners.delete(listener);
    },
    explain: async (error) => serverProblem(error, name) ?? databaseProblem(error, localFile),
    async close() {
      await again?.catch(() => {});
      if (current.ok) await current.value.close();
    },
    backups: () => ({ folder: backupFolder(localFile), rows: listBackups(localFile), lastProblem: null }),
    backup: () => copyOf('by hand'),
    async restore(name) {
      if (!listBackups(localFile).some((backup) => backup.name === name)) {
        const fix = say('shared-workshop.open-the-settings-again-and-choose');
        return err({
          where: say('shared-workshop.the-backup', { name }),
          what: say('common.is-no-longer-there'),
          fix,
        });
      }
      const read = readWorkshop(join(backupFolder(localFile), name), waitMs);
      if (!read.ok) return read;
      const backup = read.value;
      try {
        const kept = await copyOf('before bringing back');
        if (!kept.ok) return kept;
        const filled = await backup.queries
          .transaction()
          .setAccessMode('read only')
          .execute((source) =>
            refill(inUse().queries, randomUUID(), (target) =>
              carryAll(source, target, { from: name, to: name }),
            ),
          );
        if (!filled.ok) return filled;
        thinBackups(localFile);
        return ok(null);
      } finally {
        backup.close();
      }
    },
  });
}
