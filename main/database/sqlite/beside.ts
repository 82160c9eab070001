/**
 * Transactions on a workshop's file. One connection holds one transaction, so long readings go by a connection of their
 * own and leave the usual one free, and while a long writing has it, other readings see the file as it stood before.
 * What writes waits for its turn.
 */
import SqliteDatabase from 'better-sqlite3';
import type { Result } from '../../../shared-core/measure/problem.ts';
import { type OpenWorkshop, workshopOver } from '../file/connection.ts';
import { refusalRollsBack } from '../rolled-back.ts';
import type { ReadOptions, Work } from '../store.ts';

export interface Transactions {
  read<Value>(open: OpenWorkshop, options: ReadOptions, work: Work<Value>): Promise<Result<Value>>;
  write<Value>(open: OpenWorkshop, options: ReadOptions, work: Work<Value>): Promise<Result<Value>>;
}

export function transactions(): Transactions {
  const longWritings = new Map<OpenWorkshop, number>();
  const count = (open: OpenWorkshop, more: number) =>
    longWritings.set(open, (longWritings.get(open) ?? 0) + more);
  return {
    async read(open, { isLong = false }, work) {
      const isBeside = isLong || (longWritings.get(open) ?? 0) > 0;
      const reader = isBeside ? readerOf(open) : null;
      try {
        return await transact(reader ?? open, 'read only', work);
      } finally {
        reader?.close();
      }
    },
    async write(open, { isLong = false }, work) {
      if (!isLong) return transact(open, 'read write', work);
      count(open, 1);
      try {
        return await transact(open, 'read write', work);
      } finally {
        count(open, -1);
      }
    },
  };
}

function transact<Value>(
  { queries }: OpenWorkshop,
  accessMode: 'read only' | 'read write',
  work: Work<Value>,
): Promise<Result<Value>> {
  return refusalRollsBack(work, (rolling) =>
    queries.transaction().setAccessMode(accessMode).execute(rolling),
  );
}

/** Null where there is no file to read, or it cannot be had a second time. */
function readerOf(open: OpenWorkshop): OpenWorkshop | null {
  if (open.connection.memory || open.connection.readonly) return null;
  try {
    const connection = new SqliteDatabase(open.file, { readonly: true, fileMustExist: true });
    connection.pragma('trusted_schema = OFF');
    return workshopOver(connection, null, open.file);
  } catch {
    return null;
  }
}
