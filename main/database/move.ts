/** Carries a whole workshop from a file or a database to another, and changes nothing where the two would differ. */
import { resolve } from 'node:path';
import type { Result } from '../../shared-core/measure/problem.ts';
import { carryAll } from './carry/carry.ts';
import type { RowCounts } from './carry/proof.ts';
import { readWorkshop } from './file/reading.ts';
import { isAddress, shownAddress } from './postgres/address.ts';
import { openSharedStore } from './postgres/postgres-store.ts';
import { fillNewDatabase } from './postgres/shared-target.ts';
import { fillNewFile } from './sqlite/file-target.ts';
import type { Work } from './store.ts';

export interface MoveOptions {
  /** Each a file or an address. The target must be a file that is not there yet, or an empty database. */
  readonly from: string;
  readonly to: string;
  readonly now: () => Date;
  /** How long to wait for a server, or for a program that holds the file shut. */
  readonly waitMs: number;
}

/** How many rows were carried, by table. The source is only read, and may be in use: what is carried is one instant of it. */
export async function moveWorkshop({ from, to, now, waitMs }: MoveOptions): Promise<Result<RowCounts>> {
  const names = { from: shownName(from), to: shownName(to) };
  const fill = <Value>(work: Work<Value>) =>
    isAddress(to) ? fillNewDatabase(to, waitMs, work) : fillNewFile(resolve(to), now, work);
  return readFrom(from, waitMs, (source) => fill((target) => carryAll(source, target, names)));
}

async function readFrom<Value>(from: string, waitMs: number, work: Work<Value>): Promise<Result<Value>> {
  if (isAddress(from)) {
    const opened = await openSharedStore({ address: from, waitMs, isReadOnly: true });
    if (!opened.ok) return opened;
    try {
      return await opened.value.read({ isLong: true }, work);
    } finally {
      await opened.value.close();
    }
  }
  const read = readWorkshop(from, waitMs);
  if (!read.ok) return read;
  try {
    return await read.value.queries.transaction().setAccessMode('read only').execute(work);
  } finally {
    read.value.close();
  }
}

/** A password is never printed. */
function shownName(place: string): string {
  return isAddress(place) ? shownAddress(place) : resolve(place);
}
