/** What the ledger is worth: read whole and valued by the one rule of shared-core/cost/valuation.ts. */
import type { Kysely } from 'kysely';
import type { AccountSources, StashAccount } from '../../shared-core/cost/stash-account.ts';
import { stashAccount } from '../../shared-core/cost/stash-account.ts';
import { found, type Outcome } from '../../shared-core/measure/problem.ts';
import type { Schema } from '../database/schema.ts';
import type { CallContext, Calls } from './call.ts';

export const accountCalls = { readAccount } satisfies Calls<'readAccount'>;

/** Items put away since are in it too: their money was spent all the same. */
async function readAccount(context: CallContext): Promise<Outcome<StashAccount>> {
  const { queries } = context;
  return found(
    stashAccount({
      items: await queries
        .selectFrom('item')
        .select(['id', 'name', 'kind'])
        .orderBy('name_key')
        .orderBy('id')
        .execute(),
      plans: await queries.selectFrom('plan').select(['id', 'name']).execute(),
      ...(await readLedger(queries)),
    }),
  );
}

/** Every lot, and every movement in the order it was written. */
async function readLedger(queries: Kysely<Schema>): Promise<Pick<AccountSources, 'lots' | 'movements'>> {
  const lots = await queries
    .selectFrom('lot')
    .select(['id', 'item_id', 'received_milli', 'price_minor'])
    .execute();
  const movements = await queries
    .selectFrom('movement')
    .leftJoin('length', 'length.id', 'movement.length_id')
    .select(['kind', 'movement.lot_id', 'length_id', 'on_hand_milli', 'plan_id', 'worth_ratio'])
    .orderBy('movement.entry')
    .execute();
  return {
    lots: lots.map((row) => ({
      id: row.id,
      itemId: row.item_id,
      receivedMilli: row.received_milli,
      priceMinor: row.price_minor,
    })),
    movements: movements.map((row) => ({
      kind: row.kind,
      lotId: row.lot_id,
      lengthId: row.length_id,
      onHandMilli: row.on_hand_milli,
      planId: row.plan_id,
      ...(row.worth_ratio !== null && { worthRatio: row.worth_ratio }),
    })),
  };
}
