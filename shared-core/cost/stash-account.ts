/** Where the money of the whole stash went: by item, and of what was consumed, by coat. */
import { say } from '../wording/say.ts';
import type { ItemKind } from '../stash/kinds.ts';
import type { ItemId, PlanId } from '../stash/stash.ts';
import {
  type Account,
  accountSum,
  booked,
  emptyAccount,
  movementValues,
  type PricedLot,
  type PricedMovement,
} from './valuation.ts';

export interface AccountSources {
  readonly items: readonly {
    readonly id: ItemId;
    readonly name: string;
    readonly kind: ItemKind;
    /** What lies of it on the shelf is worth, by the balances that are kept beside the ledger. */
    readonly onHandMinor: number;
  }[];
  readonly lots: readonly (PricedLot & { readonly itemId: ItemId })[];
  /** The whole ledger, in the order it was written. */
  readonly movements: readonly (PricedMovement & { readonly planId: PlanId | null })[];
  readonly plans: readonly { readonly id: PlanId; readonly name: string }[];
}

export interface ItemAccount {
  readonly itemId: ItemId;
  readonly itemName: string;
  readonly kind: ItemKind;
  readonly account: Account;
}

export interface StashAccount {
  /** In the order of the items; those of which nothing was ever received are left out. */
  readonly items: readonly ItemAccount[];
  readonly total: Account;
  /** planId null: cut without a coat being named. They add up to the total's consumedMinor. */
  readonly coats: readonly {
    readonly planId: PlanId | null;
    readonly planName: string;
    readonly consumedMinor: number;
  }[];
}

export function stashAccount({ items, lots, movements, plans }: AccountSources): StashAccount {
  const itemOfLot = new Map(lots.map((lot) => [lot.id, lot.itemId]));
  const values = movementValues(lots, movements);
  const byItem = new Map<ItemId, Account>();
  const byCoat = new Map<PlanId | null, number>();
  const reversed = new Set(movements.flatMap(({ reverses }) => reverses ?? []));
  const isReversed = (id: string) => reversed.has(id);
  movements.forEach(({ id, kind, lotId, planId }, index) => {
    const valueMinor = values[index] ?? 0;
    const itemId = itemOfLot.get(lotId) ?? '';
    byItem.set(itemId, booked(byItem.get(itemId) ?? emptyAccount, kind, valueMinor));
    if ((kind === 'cut' || kind === 'returned') && !isReversed(id))
      byCoat.set(planId, (byCoat.get(planId) ?? 0) - valueMinor);
  });
  const accounts = items.flatMap(({ id, name, kind, onHandMinor }): ItemAccount[] => {
    const account = byItem.get(id);
    return account ? [{ itemId: id, itemName: name, kind, account: { ...account, onHandMinor } }] : [];
  });
  const names = new Map(plans.map((plan) => [plan.id, plan.name]));
  return {
    items: accounts,
    total: accountSum(accounts.map(({ account }) => account)),
    coats: [...byCoat].map(([planId, consumedMinor]) => ({
      planId,
      planName: planId === null ? say('stash-account.no-coat-named') : (names.get(planId) ?? ''),
      consumedMinor,
    })),
  };
}
