/** Whether a database is a shared workshop, and what it takes to make it one of this version. */
import { say } from '../../../shared-core/wording/say.ts';
import { type Kysely, sql, type Transaction } from 'kysely';
import { Migrator } from 'kysely/migration';
import { err, ok, type Problem, type Result } from '../../../shared-core/measure/problem.ts';
import { newerFile } from '../schema/migrate.ts';
import type { Schema } from '../schema/schema.ts';
import { numberOf, sharedMigrations, sharedSchema } from './shared-migrations.ts';

/** What a version of PostgreSQL below this lacks. */
const leastServer = 15;

/** Kept shut while the tables are changed, and held open by each desk that uses them: advisory locks of the server. */
const inUseKey = 0x426f4261;

/** What is there: nothing at all, a workshop of this version, or one that must be brought up to it. */
export type Founded = 'empty' | 'ready' | 'older';

/** Looks, and changes nothing. Refused where it is not ours, or of a newer version. */
export async function lookAt(queries: Kysely<Schema>, shown: string): Promise<Result<Founded>> {
  const { rows: servers } = await sql<{
    version: number;
    encoding: string;
  }>`select current_setting('server_version_num')::integer / 10000 as version,
    current_setting('server_encoding') as encoding`.execute(queries);
  const { version, encoding } = servers[0] ?? { version: 0, encoding: '' };
  if (version < leastServer) {
    const fix = say('founding.let-it-be-brought-up-to', { leastServer });
    return err({ where: shown, what: say('founding.is-postgresql-which-is-too-old', { version }), fix });
  }
  if (encoding !== 'UTF8') {
    const fix = say('founding.let-one-be-made-with-the');
    return err({ where: shown, what: say('founding.is-a-database-with-the-letters', { encoding }), fix });
  }
  const { rows: tables } = await sql<{
    name: string;
  }>`select tablename as name from pg_tables where schemaname = current_schema()`.execute(queries);
  const names = new Set(tables.map(({ name }) => name));
  if (names.size === 0) return ok('empty');
  if (!names.has('kysely_migration') || !names.has('workshop')) return err(notOurs(shown));
  const { rows: done } = await sql<{ name: string }>`select name from kysely_migration order by name`.execute(
    queries,
  );
  const last = Math.max(0, ...done.map(({ name }) => numberOf(name)));
  if (!done.every(({ name }) => name in sharedMigrations)) {
    return err(last > sharedSchema ? newerFile(shown, last, sharedSchema) : notOurs(shown));
  }
  return ok(last === sharedSchema ? 'ready' : 'older');
}

/** Makes the tables, or brings them up to this version; inside: a transaction. Throws what the server refuses. */
export async function bringUp(inside: Transaction<Schema>): Promise<void> {
  const migrator = new Migrator({
    db: inside,
    provider: { getMigrations: async () => ({ ...sharedMigrations }) },
  });
  const { error } = await migrator.migrateToLatest();
  if (error) throw error;
}

/**
 * What the ledger is kept by: each trigger that is there and acts. One that was taken away would let through what no
 * workshop allows.
 */
export async function lacksTriggers(queries: Kysely<Schema>, shown: string): Promise<Problem | null> {
  const { rows } = await sql<{ count: number }>`
    select count(*) as count from pg_trigger join pg_class on pg_class.oid = tgrelid
    where not tgisinternal and tgenabled = 'O' and relnamespace = current_schema()::regnamespace`.execute(
    queries,
  );
  if (rows[0]?.count === triggerCount) return null;
  return {
    where: shown,
    what: say('founding.lacks-rules-by-which-the-ledger'),
    fix: say('founding.bring-a-backup-back-into-a'),
  };
}

/** Of the schema as it is now. */
const triggerCount = 31;

/** Holds the workshop open for this desk, on a connection that stays; false where its tables are being changed. */
export const holdOpen = `select pg_try_advisory_lock_shared(${inUseKey}) as held`;
/** Keeps every desk out, on a connection that stays; false where one is in. */
export const holdShut = `select pg_try_advisory_lock(${inUseKey}) as held`;

function notOurs(shown: string): Problem {
  return {
    where: shown,
    what: say('founding.is-the-database-of-another-program'),
    fix: say('founding.name-an-empty-one-or-let'),
  };
}
