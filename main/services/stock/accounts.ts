/** What the ledger is worth: read whole and valued by the one rule of shared-core/cost/valuation.ts. */
import type { AccountSources } from '../../../shared-core/cost/stash-account.ts';
import { stashAccount } from '../../../shared-core/cost/stash-account.ts';
import { stashByAge } from '../../../shared-core/cost/stash-by-age.ts';
import type { CallOutput } from '../../../shared-core/contract/contract.ts';
import { localDate } from '../../../shared-core/measure/calendar-date.ts';
import type { Lot } from '../../../shared-core/stash/stash.ts';
import { ok, type Result } from '../../../shared-core/measure/problem.ts';
import type { Queries } from '../../database/store.ts';
import type { CallContext, Calls } from '../calls/call.ts';

export const accountCalls = { readAccount } satisfies Calls<'readAccount'>;

/** Items put away since are in it too: their money was spent all the same. */
async function readAccount(context: CallContext): Promise<Result<CallOutput<'readAccount'>>> {
  const { queries } = context;
  const items = await queries
    .selectFrom('item')
    .innerJoin('item_balance', 'item_balance.item_id', 'item.id')
    .select(['id', 'name', 'kind', 'value_minor as onHandMinor'])
    .orderBy('name_key')
    .orderBy('id')
    .execute();
  const plans = await queries.selectFrom('plan').select(['id', 'name']).execute();
  const sources = { items, plans, ...(await readLedger(queries)) };
  const byAge = stashByAge({ ...sources, today: localDate(context.now()) });
  return ok({ ...stashAccount(sources), byAge });
}

type LedgerLot = Lot & AccountSources['lots'][number];
type LedgerMovement = AccountSources['movements'][number] & { readonly id: string };

/** Lots and their movements in the order they were written; those of some lots, or all. */
export async function readLedger(
  queries: Queries,
  lotIds?: readonly string[],
): Promise<{ readonly lots: readonly LedgerLot[]; readonly movements: readonly LedgerMovement[] }> {
  let lotQuery = queries.selectFrom('lot').selectAll();
  let movementQuery = queries
    .selectFrom('movement')
    .leftJoin('length', 'length.id', 'movement.length_id')
    .select([
      'movement.id',
      'kind',
      'movement.lot_id',
      'length_id',
      'on_hand_milli',
      'plan_id',
      'reverses',
      'worth_ratio',
    ])
    .orderBy('movement.entry');
  if (lotIds) {
    lotQuery = lotQuery.where('id', 'in', lotIds);
    movementQuery = movementQuery.where('movement.lot_id', 'in', lotIds);
  }
  const lots = lotIds?.length === 0 ? [] : await lotQuery.execute();
  const movements = lotIds?.length === 0 ? [] : await movementQuery.execute();
  return {
    lots: lots.map((row) => ({
      id: row.id,
      itemId: row.item_id,
      receivedOn: row.received_on,
      supplier: row.supplier,
      dyeLot: row.dye_lot,
      receivedMilli: row.received_milli,
      priceMinor: row.price_minor,
    })),
    movements: movements.map((row) => ({
      id: row.id,
      kind: row.kind,
      lotId: row.lot_id,
      lengthId: row.length_id,
      onHandMilli: row.on_hand_milli,
      planId: row.plan_id,
      ...(row.reverses !== null && { reverses: row.reverses }),
      ...(row.worth_ratio !== null && { worthRatio: row.worth_ratio }),
    })),
  };
}
