/** What the road reads, and what fills its slots. */
import type { CoatPlan } from '../plan/model/coat-plan.ts';
import type { SlotItems } from '../requirement/need.ts';
import type { Cutting } from '../stash/cutting.ts';
import type { Offer } from '../stash/offer.ts';
import type { Item, ItemOnShelf } from '../stash/stash.ts';
import type { Supplier } from '../stash/supplier.ts';

export interface FlowSources {
  readonly plan: CoatPlan;
  readonly shelf: readonly ItemOnShelf[];
  readonly offers: readonly Offer[];
  readonly suppliers: readonly Supplier[];
  /** Cuttings of the plan that stand: what they met is not needed again. Absent: none. */
  readonly cuttings?: readonly Cutting[];
}

/** Width that an open slot is laid on until an item is chosen, mm (58 in, the usual width of coat nylon: common practice, no source). */
export const openSlotWidthMm = 1473;

export function slotItems(sources: Pick<FlowSources, 'plan' | 'shelf'>): SlotItems {
  const byId = new Map<string, Item>(sources.shelf.map(({ item }) => [item.id, item]));
  return new Map(
    sources.plan.slots.flatMap((slot) => {
      const item = slot.itemId === null ? undefined : byId.get(slot.itemId);
      return item ? [[slot.id, item] as const] : [];
    }),
  );
}
