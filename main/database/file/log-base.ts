/**
 * Tells whether the log (-wal) beside a file is that file's own. A log holds newer states of some pages and fits the
 * file alone on which it was begun; read into another one, such as a backup put in place by hand after the program
 * died, it makes a mixture of both. So what each page was when the log was begun is written down beside it, as check
 * sums: a log is the file's own exactly where every page is still as it was, or as the log brings it.
 *
 * For that, pages go from the log into the file only here (settleLog), never behind our back.
 * Source of the layouts: sqlite.org/fileformat2.html, sections 1.3 and 4.1.
 */
import { hash, randomUUID } from 'node:crypto';
import {
  closeSync,
  fsyncSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { crc32 } from 'node:zlib';
import type { Database } from 'better-sqlite3';
import { modeBeside } from './private-file.ts';

/** Longer than that, a log is settled at the next entry. */
export const longLogBytes = 4 * 1024 * 1024;

const digestBytes = 32;

function basePath(file: string): string {
  return `${file}-pages`;
}

/** Whether a log lies there that must not be read into this file. The file must be closed, and of our kind. */
export function hasForeignLog(file: string): boolean {
  const log = logPages(`${file}-wal`);
  if (log === null) return false;
  const bytes = readFileSync(file);
  // A whole copy as SQLite writes it says in its header that it keeps no log.
  if (bytes[18] !== 2) return true;
  const base = readBase(file);
  if (base === null) return false;
  const pageBytes = pageBytesOf(bytes);
  if (pageBytes !== log.pageBytes || pageBytes !== base.pageBytes) return true;
  const sums = pageSums(bytes, pageBytes);
  const last = Math.min(log.lastPage, Math.max(base.sums.length, sums.length));
  for (let page = 1; page <= last; page++) {
    const sum = sums[page - 1];
    const isAsItWas = sum === base.sums[page - 1];
    // A program that died while it settled the log has left some pages as the log has them, or not yet at all.
    const brought = log.brought.get(page);
    if (!isAsItWas && !(brought && (sum === undefined || brought.has(sum)))) return true;
  }
  return false;
}

/**
 * Brings the whole log into the file, so that the next one begins on it, and writes down what it then begins on.
 * Where a reader is in the way, or the disk is full, nothing is written down: the next log counts as the file's own.
 * Never throws.
 */
export function settleLog(connection: Database, file: string): void {
  try {
    const [done] = connection.pragma('wal_checkpoint(TRUNCATE)') as { busy: number }[];
    // Through SQLite: opening and closing the file by ourselves would take SQLite's locks off it (fcntl, by POSIX).
    if (done?.busy === 0) writeBase(file, connection.serialize());
    else forgetLogBase(file);
  } catch {
    forgetLogBase(file);
  }
}

export function forgetLogBase(file: string): void {
  rmSync(basePath(file), { force: true });
}

interface LogPages {
  readonly pageBytes: number;
  /** Check sums of each state in which the log brings a page, by its number from 1. */
  readonly brought: ReadonlyMap<number, ReadonlySet<number>>;
  /** How many pages the file has with it. */
  readonly lastPage: number;
}

/** Null where there is no log, or none with an entry that was finished. */
function logPages(path: string): LogPages | null {
  if ((statSync(path, { throwIfNoEntry: false })?.size ?? 0) === 0) return null;
  const log = readFileSync(path);
  if (log.length < 32) return null;
  const pageBytes = log.readUInt32BE(8);
  const salts = log.subarray(16, 24);
  const brought = new Map<number, Set<number>>();
  let open: { page: number; sum: number }[] = [];
  let lastPage = 0;
  for (let at = 32; at + 24 + pageBytes <= log.length; at += 24 + pageBytes) {
    // Frames of an earlier round lie behind those of this one.
    if (!log.subarray(at + 8, at + 16).equals(salts)) break;
    const page = log.readUInt32BE(at);
    open.push({ page, sum: crc32(log.subarray(at + 24, at + 24 + pageBytes)) });
    const pageCount = log.readUInt32BE(at + 4);
    if (pageCount === 0) continue;
    for (const { page, sum } of open) brought.set(page, (brought.get(page) ?? new Set()).add(sum));
    open = [];
    lastPage = pageCount;
  }
  return lastPage === 0 ? null : { pageBytes, brought, lastPage };
}

function pageBytesOf(bytes: Uint8Array): number {
  const said = (bytes[16]! << 8) + bytes[17]!;
  return said === 1 ? 65_536 : said;
}

function pageSums(bytes: Uint8Array, pageBytes: number): Uint32Array {
  const sums = new Uint32Array(Math.ceil(bytes.length / pageBytes));
  for (let page = 0; page < sums.length; page++)
    sums[page] = crc32(bytes.subarray(page * pageBytes, (page + 1) * pageBytes));
  return sums;
}

/** A digest of the rest, then the page size and the sum of each page, four bytes each. */
function writeBase(file: string, bytes: Uint8Array): void {
  const pageBytes = pageBytesOf(bytes);
  const sums = pageSums(bytes, pageBytes);
  const words = new Uint32Array(1 + sums.length);
  words[0] = pageBytes;
  words.set(sums, 1);
  const rest = Buffer.from(words.buffer);
  const tempFile = `${file}.${randomUUID()}.new`;
  try {
    const handle = openSync(tempFile, 'wx', modeBeside(file));
    try {
      writeSync(handle, Buffer.concat([digestOf(rest), rest]));
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(tempFile, basePath(file));
    flushFolder(dirname(file));
  } finally {
    rmSync(tempFile, { force: true });
  }
}

function readBase(file: string): { pageBytes: number; sums: Uint32Array } | null {
  let bytes: Buffer;
  try {
    bytes = readFileSync(basePath(file));
  } catch {
    return null;
  }
  const rest = Uint8Array.from(bytes.subarray(digestBytes));
  if (rest.length < 4 || rest.length % 4 !== 0) return null;
  if (!bytes.subarray(0, digestBytes).equals(digestOf(rest))) return null;
  const words = new Uint32Array(rest.buffer);
  return { pageBytes: words[0]!, sums: words.subarray(1) };
}

function digestOf(bytes: Uint8Array): Buffer {
  return hash('sha256', bytes, 'buffer');
}

/** A new name is on the disk only once its folder is. Systems that open no folders see to that themselves. */
function flushFolder(folder: string): void {
  let handle: number;
  try {
    handle = openSync(folder, 'r');
  } catch {
    return;
  }
  try {
    fsyncSync(handle);
  } catch {
    // As above.
  } finally {
    closeSync(handle);
  }
}
