/** A new file into which a whole workshop is carried: made whole under another name, then given its own. */
import { say } from '../../../shared-core/wording/say.ts';
import { randomUUID } from 'node:crypto';
import { linkSync, rmSync } from 'node:fs';
import { sql } from 'kysely';
import { err, type Result } from '../../../shared-core/measure/problem.ts';
import { copyWhole } from '../backups/whole-copy.ts';
import { databaseProblem } from '../failures/failure.ts';
import { openWorkshop } from '../file/connection.ts';
import { checkPlace, realFile } from '../file/file-check.ts';
import { refusalRollsBack } from '../rolled-back.ts';
import type { Queries, Work } from '../store.ts';

/**
 * Makes the file and fills it by the work, in which no trigger acts. On a refusal, or where the name is taken, nothing
 * is left. file: absolute.
 */
export async function fillNewFile<Value>(
  file: string,
  now: () => Date,
  work: Work<Value>,
): Promise<Result<Value>> {
  const real = realFile(file);
  if (!real.ok) return real;
  const placed = checkPlace(real.value);
  if (!placed.ok) return placed;
  if (placed.value === 'there') return err(isTaken(file));
  const [working, whole] = [`${file}.${randomUUID()}.new`, `${file}.${randomUUID()}.new`];
  try {
    const opened = openWorkshop(working, { now });
    if (!opened.ok) return opened;
    const open = opened.value;
    try {
      const filled = await refusalRollsBack(
        (queries) => withoutTriggers(queries, work),
        (rolling) => open.queries.transaction().execute(rolling),
      );
      if (!filled.ok) return filled;
      copyWhole(open.connection, working, whole);
      // A link fails where the name was taken meanwhile.
      linkSync(whole, file);
      return filled;
    } finally {
      open.close();
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return err(isTaken(file));
    const problem = databaseProblem(error, file);
    if (problem === null) throw error;
    return err(problem);
  } finally {
    for (const name of [working, whole]) {
      for (const ending of ['', '-journal', '-wal', '-shm', '-pages']) rmSync(name + ending, { force: true });
    }
  }
}

/** They come back as they were, to the letter. */
async function withoutTriggers<Value>(queries: Queries, work: Work<Value>): Promise<Result<Value>> {
  const { rows } = await sql<{
    name: string;
    sql: string;
  }>`select name, sql from sqlite_schema where type = 'trigger'`.execute(queries);
  for (const { name } of rows) await sql`drop trigger ${sql.table(name)}`.execute(queries);
  const outcome = await work(queries);
  for (const trigger of rows) await sql.raw(trigger.sql).execute(queries);
  return outcome;
}

function isTaken(file: string) {
  return {
    where: file,
    what: say('file-target.is-there-already'),
    fix: say('file-target.name-a-file-that-is-not'),
  };
}
