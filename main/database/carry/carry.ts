/**
 * A whole workshop carried from one store into an empty one, row for row, its balances too: a history from before a
 * stricter rule could not be booked anew. It is then read back from both, and kept only if they are the same.
 */
import { say } from '../../../shared-core/wording/say.ts';
import type { Kysely } from 'kysely';
import { err, ok, type Problem, type Result } from '../../../shared-core/measure/problem.ts';
import type { Schema } from '../schema/schema.ts';
import { addRows, carriedTables, pagesOf } from './carried-tables.ts';
import { compareAll, type RowCounts, wrongBalances } from './proof.ts';

/**
 * Both inside a transaction: of the source one snapshot, of the target one that is taken back on a refusal. In the
 * target no trigger may act meanwhile. names: of both, for the maker.
 */
export async function carryAll(
  source: Kysely<Schema>,
  target: Kysely<Schema>,
  names: { readonly from: string; readonly to: string },
): Promise<Result<RowCounts>> {
  const wrong = await wrongBalances(source);
  if (wrong.length > 0) {
    return err(
      notSame(
        names.from,
        say('carry.contradicts-itself', { wrong: wrong.join('; ') }),
        say('carry.bring-a-backup-back-that-is'),
      ),
    );
  }
  await target.deleteFrom('workshop').execute();
  for (const table of carriedTables) {
    for await (const rows of pagesOf(source, table)) await addRows(target, table, rows);
  }
  const { counts, differences } = await compareAll(source, target);
  const found = [...differences, ...(await wrongBalances(target))];
  if (found.length === 0) return ok(counts);
  return err(
    notSame(
      names.to,
      say('carry.did-not-keep-what-was-carried', { found: found.join('; ') }),
      say('carry.nothing-was-kept-there'),
    ),
  );
}

function notSame(where: string, what: string, fix: string): Problem {
  return { where, what, fix };
}
