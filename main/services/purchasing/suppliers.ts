/** The calls about suppliers: what they ask for a delivery, and how long it takes. */
import { byName } from '../../../shared-core/wording/in-order.ts';
import type { CallInput } from '../../../shared-core/contract/contract.ts';
import type { SupplierRow } from '../../../shared-core/contract/offer-calls.ts';
import { ok, type Result } from '../../../shared-core/measure/problem.ts';
import { eachOnce, type Supplier, supplierKey } from '../../../shared-core/stash/supplier.ts';
import type { Queries } from '../../database/store.ts';
import type { CallContext, Calls } from '../calls/call.ts';

export const supplierCalls = { listSuppliers, saveSupplier } satisfies Calls<
  'listSuppliers' | 'saveSupplier'
>;

/** Those with facts of their own, by name, each once. */
export async function readSuppliers(queries: Queries): Promise<Supplier[]> {
  const rows = await queries.selectFrom('supplier').selectAll().orderBy('key').execute();
  return eachOnce(
    rows.map((row) => ({
      name: row.name,
      deliveryMinor: row.delivery_minor,
      freeFromMinor: row.free_from_minor,
      leadDays: row.lead_days,
    })),
  );
}

/**
 * How a supplier's name is written wherever it is read: as in its facts, else as in the first of its offers, else as
 * given without the blanks around it. So a supplier that is written anew is written so in all its offers.
 */
export async function supplierSpelling(queries: Queries): Promise<(name: string) => string> {
  const offered = await queries
    .selectFrom('offer')
    .select('supplier as name')
    .distinct()
    .orderBy('name')
    .execute();
  const spellings = new Map<string, string>();
  for (const { name } of [...(await readSuppliers(queries)), ...offered]) {
    const key = supplierKey(name);
    if (!spellings.has(key)) spellings.set(key, name);
  }
  return (name) => spellings.get(supplierKey(name)) ?? name.trim();
}

/** Every supplier that has facts or offers, by name, each as it is written everywhere. */
export async function supplierNames(queries: Queries): Promise<readonly string[]> {
  return (await supplierRows(queries)).map(({ name }) => name);
}

/** Every supplier that has facts or offers, by name, with what is not known of it yet. */
async function listSuppliers({
  queries,
}: CallContext): Promise<Result<{ readonly rows: readonly SupplierRow[] }>> {
  return ok({ rows: await supplierRows(queries) });
}

async function supplierRows(queries: Queries): Promise<readonly SupplierRow[]> {
  const known = new Map((await readSuppliers(queries)).map((each) => [supplierKey(each.name), each]));
  const offered = await queries
    .selectFrom('offer')
    .select(({ fn }) => ['supplier', fn.countAll<number>().as('count')])
    .groupBy('supplier')
    .execute();
  const spelling = await supplierSpelling(queries);
  const byKey = Map.groupBy(offered, ({ supplier }) => supplierKey(supplier));
  const rows = [...new Set([...known.keys(), ...byKey.keys()])].map((key): SupplierRow => {
    const supplier = known.get(key);
    const offers = byKey.get(key) ?? [];
    return {
      name: spelling(key),
      facts: supplier ?? null,
      offerCount: offers.reduce((sum, { count }) => sum + count, 0),
    };
  });
  return rows.sort((a, b) => byName(a.name, b.name));
}

/** Writes down or replaces what is known of the supplier of this name. */
async function saveSupplier(
  { queries }: CallContext,
  input: CallInput<'saveSupplier'>,
): Promise<Result<{ readonly name: string }>> {
  const row = {
    name: input.name,
    delivery_minor: input.deliveryMinor,
    free_from_minor: input.freeFromMinor,
    lead_days: input.leadDays,
  };
  const key = supplierKey(input.name);
  const written = await queries.selectFrom('supplier').select(['key', 'name']).execute();
  const same = written.filter(({ name }) => supplierKey(name) === key).map((each) => each.key);
  // Older files hold keys of another rule, so the rows are told by their names.
  if (same.length > 0) await queries.deleteFrom('supplier').where('key', 'in', same).execute();
  await queries
    .insertInto('supplier')
    .values({ ...row, key })
    .execute();
  return ok({ name: input.name });
}
