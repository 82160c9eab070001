/** The calls about suppliers: what they ask for a delivery, and how long it takes. */
import type { Kysely } from 'kysely';
import type { CallInput } from '../../shared-core/contract/contract.ts';
import type { SupplierRow } from '../../shared-core/contract/offer-calls.ts';
import { found, type Outcome } from '../../shared-core/measure/problem.ts';
import { type Supplier, supplierKey } from '../../shared-core/stash/supplier.ts';
import type { Schema } from '../database/schema.ts';
import type { CallContext, Calls } from './call.ts';

export const supplierCalls = { listSuppliers, saveSupplier } satisfies Calls<
  'listSuppliers' | 'saveSupplier'
>;

/** Those with facts of their own, by name. */
export async function readSuppliers(queries: Kysely<Schema>): Promise<Supplier[]> {
  const rows = await queries.selectFrom('supplier').selectAll().orderBy('key').execute();
  return rows.map((row) => ({
    name: row.name,
    deliveryMinor: row.delivery_minor,
    freeFromMinor: row.free_from_minor,
    leadDays: row.lead_days,
  }));
}

/** Every supplier that has facts or offers, by name, with what is not known of it yet. */
async function listSuppliers({
  queries,
}: CallContext): Promise<Outcome<{ readonly rows: readonly SupplierRow[] }>> {
  const known = new Map((await readSuppliers(queries)).map((each) => [supplierKey(each.name), each]));
  const offered = await queries
    .selectFrom('offer')
    .select(({ fn }) => ['supplier', fn.countAll<number>().as('count')])
    .groupBy('supplier')
    .execute();
  const byKey = Map.groupBy(offered, ({ supplier }) => supplierKey(supplier));
  const rows = [...new Set([...known.keys(), ...byKey.keys()])].map((key): SupplierRow => {
    const supplier = known.get(key);
    const offers = byKey.get(key) ?? [];
    return {
      name: supplier?.name ?? offers[0]?.supplier ?? key,
      facts: supplier ?? null,
      offerCount: offers.reduce((sum, { count }) => sum + count, 0),
    };
  });
  return found({ rows: rows.sort((a, b) => a.name.localeCompare(b.name)) });
}

/** Writes down or replaces what is known of the supplier of this name. */
async function saveSupplier(
  { queries }: CallContext,
  input: CallInput<'saveSupplier'>,
): Promise<Outcome<{ readonly name: string }>> {
  const row = {
    name: input.name,
    delivery_minor: input.deliveryMinor,
    free_from_minor: input.freeFromMinor,
    lead_days: input.leadDays,
  };
  await queries
    .insertInto('supplier')
    .values({ ...row, key: supplierKey(input.name) })
    .onConflict((conflict) => conflict.column('key').doUpdateSet(row))
    .execute();
  return found({ name: input.name });
}

/** How a supplier's name is written already, in its facts or its offers; else as given. */
export async function knownSupplierName(queries: Kysely<Schema>, name: string): Promise<string> {
  const key = supplierKey(name);
  const supplier = await queries
    .selectFrom('supplier')
    .select('name')
    .where('key', '=', key)
    .executeTakeFirst();
  if (supplier) return supplier.name;
  const offered = await queries.selectFrom('offer').select('supplier').distinct().execute();
  return offered.find((offer) => supplierKey(offer.supplier) === key)?.supplier ?? name.trim();
}
