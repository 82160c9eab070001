/**
 * Calls that take long, and those that are asked meanwhile. One connection holds one transaction, so what only reads
 * goes by a connection of its own: a long reading leaves the usual one free, and while a long writing has it, other
 * readings see the file as it stood before. What writes waits for its turn.
 */
import SqliteDatabase from 'better-sqlite3';
import { type CallName, calls } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/measure/problem.ts';
import { type OpenWorkshop, workshopOver } from '../../database/file/connection.ts';
import { type ServedCall, type Serving, serve } from './served.ts';

const longReadings: readonly CallName[] = ['checkPriceList', 'lookAtStashFile'];
const longWritings: readonly CallName[] = ['bringInPriceList', 'bringInStashFile', 'undoLastChange'];

export type Serve = typeof serve;

/** As serve, on the connection that suits the call and what is under way. */
export function servingBeside(): Serve {
  const writingCount = new Map<OpenWorkshop, number>();
  const count = (open: OpenWorkshop, more: number) =>
    writingCount.set(open, (writingCount.get(open) ?? 0) + more);
  return async (open, call, input, serving) => {
    if (longWritings.includes(call)) {
      count(open, 1);
      try {
        return await serve(open, call, input, serving);
      } finally {
        count(open, -1);
      }
    }
    const isBeside = longReadings.includes(call) || (writingCount.get(open) ?? 0) > 0;
    return isBeside && !calls[call].changes
      ? serveByReader(open, call, input, serving)
      : serve(open, call, input, serving);
  };
}

async function serveByReader(
  open: OpenWorkshop,
  call: ServedCall,
  input: unknown,
  serving: Serving,
): Promise<Result<unknown>> {
  const reader = readerOf(open);
  if (reader === null) return serve(open, call, input, serving);
  try {
    return await serve(reader, call, input, serving);
  } finally {
    reader.close();
  }
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
