/**
 * One program at a time has a workshop's file open. The claim is a lock that SQLite holds on a small file beside it
 * for as long as the program runs: the system lets go of it when the program dies, so none is ever left behind.
 * The small file says who holds it, and stays readable meanwhile.
 */
import { say } from '../../../shared-core/wording/say.ts';
import { clockWords } from '../../../shared-core/measure/calendar-date.ts';
import { rmSync } from 'node:fs';
import SqliteDatabase, { type Database } from 'better-sqlite3';
import { ok, type Result, err } from '../../../shared-core/measure/problem.ts';
import { databaseProblem } from '../failures/failure.ts';
import { closeToOthers, modeBeside } from './private-file.ts';

export interface Claim {
  release(): void;
}

/** How long to wait for a program that is just ending. */
const waitMs = 400;
const maxTries = 5;

/** file: absolute, and its true name: see realFile. Refused while another program, or another opening in this one, holds the claim. */
export function claimFile(file: string, now: () => Date): Result<Claim> {
  const lockFile = `${file}-open`;
  for (let tries = 1; ; tries++) {
    let lock: Database | undefined;
    try {
      lock = new SqliteDatabase(lockFile, { timeout: waitMs });
      closeToOthers(lockFile, modeBeside(file));
      const held = holdFor(lock, now);
      return ok({ release: () => release(held, lockFile) });
    } catch (error) {
      const code = String((error as { code?: unknown }).code);
      const isHeld = /^SQLITE_(BUSY|LOCKED)/.test(code);
      const holder = isHeld && lock ? holderOf(lock) : null;
      lock?.close();
      if (isHeld) return err(heldBy(file, holder));
      // The holder before has just taken its file away, or the file is rubbish from elsewhere: begin with a new one.
      const isStray = /^SQLITE_(READONLY_DBMOVED|NOTADB|CORRUPT|IOERR)/.test(code);
      if (isStray && tries < maxTries) {
        if (!code.startsWith('SQLITE_READONLY')) rmSync(lockFile, { force: true });
        continue;
      }
      const problem = databaseProblem(error, file);
      if (!problem) throw error;
      return err(problem);
    }
  }
}

interface Holder {
  readonly pid: number;
  readonly since: string;
}

/** Writing the row also proves that the file still has its name: SQLite refuses to write where it has not. */
function holdFor(lock: Database, now: () => Date): Database {
  lock.exec(
    'BEGIN IMMEDIATE; CREATE TABLE IF NOT EXISTS holder (pid INTEGER, since TEXT); DELETE FROM holder',
  );
  lock.prepare('INSERT INTO holder VALUES (?, ?)').run(process.pid, now().toISOString());
  // Who comes between these two gets it, and this program is refused.
  lock.exec('COMMIT; BEGIN IMMEDIATE');
  return lock;
}

function holderOf(lock: Database): Holder | null {
  try {
    return (lock.prepare('SELECT pid, since FROM holder').get() as Holder | undefined) ?? null;
  } catch {
    return null;
  }
}

function release(lock: Database, lockFile: string): void {
  // Taken away while it is still held, so that nobody can have claimed it in between.
  try {
    rmSync(lockFile, { force: true });
  } catch {
    // Where an open file cannot be removed it stays; without its lock it means nothing.
  }
  lock.close();
}

function heldBy(file: string, holder: Holder | null) {
  const time = holder && clockWords(new Date(holder.since));
  const who = holder ? say('claim.since-process', { time, pid: holder.pid }) : '';
  return {
    where: file,
    what: say('claim.is-open-already-in-another-window', { who }),
    fix: say('claim.go-on-in-that-window-or'),
  };
}
