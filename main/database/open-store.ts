/** Opens what keeps a workshop, whichever it is. Beyond this point nobody knows the dialect. */
import type { Result } from '../../shared-core/measure/problem.ts';
import { isAddress } from './postgres/address.ts';
import { openSharedWorkshop } from './postgres/shared-workshop.ts';
import { demoFileStore } from './sqlite/demo-file.ts';
import { type FileStoreOptions, openFileStore } from './sqlite/file-store.ts';
import type { OwnStore } from './store.ts';

export { demoFileStore as demoStore, openFileStore };

export interface StoreOptions extends FileStoreOptions {
  /** Absolute. For a database: names what this desk keeps of its own, the log and the backups. */
  readonly localFile: string;
  /** Of a database: gives a store also where it cannot be had now; each asking whether it is ready tries again. */
  readonly mayOpenLater: boolean;
  /** Of a database: how long a change waits for that of another desk; 20 s where nothing is said. */
  readonly lockMs?: number;
  /** Of a database: told each time that a change was made again. */
  readonly onAgain?: (why: 'conflict' | 'loss') => void;
}

/** dataFile: a file, or the address of a database. Refused where it cannot be had. */
export async function openStore(options: StoreOptions): Promise<Result<OwnStore>> {
  return isAddress(options.dataFile)
    ? openSharedWorkshop({ ...options, address: options.dataFile })
    : openFileStore(options);
}
