/**
 * The one boundary between the services and whatever keeps a workshop: a file (sqlite/) or a database that several
 * desks share (postgres/). Services read and write through it, and know neither.
 *
 * What a service may rely on, whichever it is:
 * - `read` sees one consistent state from its first query to its last, and keeps nobody from writing.
 * - `write` is all or nothing. Whatever other desks do meanwhile, the outcome is one that the same changes could have
 *   had one after another. So the work may be run more than once: it must change nothing but through its queries.
 * - `entry` of a row that only ever grows (movement, cutting, lot, length) is the order of the commits.
 * - The rules of the ledger are held by the store itself: see schema/ and postgres/migrations.
 */
import type { Transaction } from 'kysely';
import type { Backups } from '../../shared-core/contract/contract.ts';
import type { Problem, Result } from '../../shared-core/measure/problem.ts';
import type { Schema } from './schema/schema.ts';

/** Inside one transaction. */
export type Queries = Transaction<Schema>;

/**
 * What a change is about, and what it locks: changes of one part go one after another in every desk, those of two
 * parts may go side by side. Reading locks nothing.
 */
export const parts = ['stash', 'plans', 'lays', 'workshop'] as const;
export type Part = (typeof parts)[number];

/** What is done in one transaction. A refusal takes back all that it wrote. */
export type Work<Value> = (queries: Queries) => Promise<Result<Value>>;

export interface ReadOptions {
  /** It takes seconds, and others must be answered meanwhile. Absent: no. */
  readonly isLong?: boolean;
}

export interface WriteOptions extends ReadOptions {
  readonly locks: Part;
}

export interface Store {
  /** What the maker is told: the absolute path of the file, or the address of the database without its password. */
  readonly name: string;
  /** The number of the last migration; it means the same tables in every dialect. */
  schemaVersion(): number;
  /** Refused where it cannot be had just now. To be asked before anything else is; each time tries again. */
  ready(): Promise<Result<null>>;
  /** What is wrong with it though it can be used, and what became of it at the start. */
  told(): readonly Problem[];
  /** Rejects for what the store cannot do; `explain` then has the words. */
  read<Value>(options: ReadOptions, work: Work<Value>): Promise<Result<Value>>;
  write<Value>(options: WriteOptions, work: Work<Value>): Promise<Result<Value>>;
  /** Calls the listener after each change that another desk made, and when one may have been missed. Gives what ends it. */
  onChangeElsewhere(listener: () => void): () => void;
  /** A sentence for a failure that the maker can do something about; null for anything else. */
  explain(error: unknown): Promise<Problem | null>;
  close(): Promise<void>;
}

/** The maker's own, of which there are backups. */
export interface OwnStore extends Store {
  /** Absolute: the file on this machine that the log of failures and the backups are named after; it may not exist. */
  readonly file: string;
  backups(): Backups;
  /** A whole copy, made because the maker asked for it. */
  backup(): Promise<Result<null>>;
  /** Puts the backup of that name in the place of what is there, which is kept. No other call may be under way here. */
  restore(name: string): Promise<Result<null>>;
}

/** The demo's, made when it is first asked for. */
export interface DemoStore extends Store {
  /** Everything as it was invented, whatever was done in it. */
  makeAnew(): Promise<void>;
}
