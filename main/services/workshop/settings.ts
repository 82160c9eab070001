/** The workshop's own row. */
import type { Settings } from '../../../shared-core/contract/schemas.ts';
import type { Queries } from '../../database/store.ts';

export async function readSettings(queries: Queries): Promise<Settings> {
  const row = await queries.selectFrom('workshop').select(['name', 'settings']).executeTakeFirstOrThrow();
  return { ...(JSON.parse(row.settings) as Omit<Settings, 'workshopName'>), workshopName: row.name };
}

export async function writeSettings(queries: Queries, settings: Settings): Promise<void> {
  const { workshopName, ...rest } = settings;
  await queries
    .updateTable('workshop')
    .set({ name: workshopName, settings: JSON.stringify(rest) })
    .execute();
}

/** Whether anything but nothing is written down in the workshop's currency. */
export async function hasAmounts(queries: Queries, { pricing }: Settings): Promise<boolean> {
  const paid = await queries.selectFrom('lot').select('id').where('price_minor', '>', 0).executeTakeFirst();
  const offered = await queries
    .selectFrom('offer')
    .select('id')
    .where('price_minor', '>', 0)
    .executeTakeFirst();
  const asked = await queries
    .selectFrom('supplier')
    .select('key')
    .where(({ or, eb }) => or([eb('delivery_minor', '>', 0), eb('free_from_minor', '>', 0)]))
    .executeTakeFirst();
  const overheadMinor = pricing?.overhead?.kind === 'per coat' ? pricing.overhead.amountMinor : 0;
  const chargedMinor = overheadMinor + (pricing?.hourlyRateMinor ?? 0);
  return paid !== undefined || offered !== undefined || asked !== undefined || chargedMinor > 0;
}
