/** One search over all that a workshop holds. */
import { z } from 'zod';
import type { ItemKind } from '../stash/kinds.ts';
import type { ItemId, PlanId } from '../stash/stash.ts';

export const findCalls = {
  /** Items by name, colour, place, supplier and dye lot; coats, suppliers, and offers by item and supplier. A code from a shelf label: its item alone. */
  find: { changes: false, input: z.strictObject({ text: z.string().max(200) }) },
} as const;

/** How many of each kind are given at most; those that begin with what was typed first. */
export const maxFound = 8;

export type Find =
  | {
      readonly kind: 'item';
      readonly itemId: ItemId;
      readonly name: string;
      readonly itemKind: ItemKind;
      readonly colour: string;
      readonly isPutAway: boolean;
    }
  | { readonly kind: 'coat'; readonly planId: PlanId; readonly name: string; readonly size: string }
  | { readonly kind: 'supplier'; readonly name: string }
  | { readonly kind: 'offer'; readonly itemId: ItemId; readonly name: string; readonly supplier: string };

export interface FindOutputs {
  find: { readonly finds: readonly Find[] };
}
