/** An empty database into which a whole workshop is carried, in one transaction with the making of its tables. */
import { say } from '../../../shared-core/wording/say.ts';
import { type Kysely, sql } from 'kysely';
import { err, type Result } from '../../../shared-core/measure/problem.ts';
import { refusalRollsBack } from '../rolled-back.ts';
import type { Schema } from '../schema/schema.ts';
import type { Queries, Work } from '../store.ts';
import { readAddress } from './address.ts';
import { queriesOf } from './connecting.ts';
import { serverProblem } from './failing.ts';
import { bringUp, lookAt } from './founding.ts';
import { channel } from './notices.ts';

/** Makes the tables and fills them by the work, in which no trigger acts. On a refusal the database is as empty as it was. */
export async function fillNewDatabase<Value>(
  address: string,
  waitMs: number,
  work: Work<Value>,
): Promise<Result<Value>> {
  const read = readAddress(address);
  if (!read.ok) return read;
  const { shown } = read.value;
  const queries = queriesOf(read.value, waitMs);
  try {
    const looked = await lookAt(queries, shown);
    if (!looked.ok) return looked;
    if (looked.value !== 'empty') {
      const fix = say('shared-target.name-an-empty-database-what-is');
      return err({ where: shown, what: say('shared-target.holds-a-workshop-already'), fix });
    }
    return await refusalRollsBack(
      async (inside) => {
        await bringUp(inside);
        return withoutTriggers(inside, work);
      },
      (rolling) => queries.transaction().execute(rolling),
    );
  } catch (error) {
    const problem = serverProblem(error, shown);
    if (problem === null) throw error;
    return err(problem);
  } finally {
    await queries.destroy();
  }
}

/** Takes away all that is there and fills it anew by the work, at one instant for every desk; on a refusal all stays. */
export function refill<Value>(
  queries: Kysely<Schema>,
  desk: string,
  work: Work<Value>,
): Promise<Result<Value>> {
  return refusalRollsBack(
    async (inside) => {
      await dropEverything(inside);
      await bringUp(inside);
      const outcome = await withoutTriggers(inside, work);
      await sql`select pg_notify(${channel}, ${desk})`.execute(inside);
      return outcome;
    },
    (rolling) => queries.transaction().execute(rolling),
  );
}

async function dropEverything(inside: Queries): Promise<void> {
  const { rows: tables } = await sql<{
    name: string;
  }>`select tablename as name from pg_tables where schemaname = current_schema()`.execute(inside);
  for (const { name } of tables) await sql`drop table ${sql.table(name)} cascade`.execute(inside);
  const { rows: functions } = await sql<{ name: string }>`select oid::regprocedure::text as name from pg_proc
    where pronamespace = current_schema()::regnamespace
      and not exists (select from pg_depend where objid = pg_proc.oid and deptype = 'e')`.execute(inside);
  for (const { name } of functions) await sql.raw(`drop function ${name}`).execute(inside);
}

async function withoutTriggers<Value>(inside: Queries, work: Work<Value>): Promise<Result<Value>> {
  const { rows } = await sql<{ name: string }>`select distinct relname as name
    from pg_trigger join pg_class on pg_class.oid = tgrelid
    where not tgisinternal and relnamespace = current_schema()::regnamespace`.execute(inside);
  for (const { name } of rows) await sql`alter table ${sql.table(name)} disable trigger user`.execute(inside);
  const outcome = await work(inside);
  for (const { name } of rows) await sql`alter table ${sql.table(name)} enable trigger user`.execute(inside);
  // What the server plans its queries by; it would look by itself only later.
  await sql`analyze`.execute(inside);
  return outcome;
}
