/** The workshop's own row. */
import type { Kysely } from 'kysely';
import type { Settings } from '../../shared-core/contract/schemas.ts';
import type { Schema } from '../database/schema.ts';

export async function readSettings(queries: Kysely<Schema>): Promise<Settings> {
  const row = await queries.selectFrom('workshop').select(['name', 'settings']).executeTakeFirstOrThrow();
  return { ...(JSON.parse(row.settings) as Omit<Settings, 'workshopName'>), workshopName: row.name };
}

export async function writeSettings(queries: Kysely<Schema>, settings: Settings): Promise<void> {
  const { workshopName, ...rest } = settings;
  await queries
    .updateTable('workshop')
    .set({ name: workshopName, settings: JSON.stringify(rest) })
    .execute();
}
