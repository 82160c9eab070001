/** The calls that set the shelf right: write-offs, counts, and items put away. */
import { z } from 'zod';
import { say } from '../wording/say.ts';
import type { ItemId, ItemOnShelf, PlanId } from '../stash/stash.ts';
import { amount, id, positiveAmount, shortText } from './schemas.ts';

const reason = shortText.min(1, { error: () => say('common.is-missing') });
const place = { lotId: id, lengthId: id.nullable() };

export const shelfCalls = {
  /** Takes an amount (in the kind's unit) off the shelf for good, with a reason. */
  writeOff: { changes: true, input: z.strictObject({ ...place, amount: positiveAmount, reason }) },
  /**
   * What was counted on the shelf; the difference is booked as a correction with a reason. Where less is there than
   * coats have set aside, the coat that set aside last loses what is not there.
   */
  correctCount: { changes: true, input: z.strictObject({ ...place, counted: amount, reason }) },
  /** Many counts at once, booked all or none. */
  takeStock: {
    changes: true,
    input: z.strictObject({
      counts: z
        .array(z.strictObject({ ...place, counted: amount }))
        .min(1)
        .max(2000),
      reason,
    }),
  },
  /** What lies on the shelf of some items, in the order of their ids. */
  readShelf: { changes: false, input: z.strictObject({ itemIds: z.array(id).max(500) }) },
  /** Put away, an item is out of the lists and no longer offered to coats; nothing of it is lost. */
  archiveItem: { changes: true, input: z.strictObject({ itemId: id, isPutAway: z.boolean() }) },
} as const;

export interface ShelfOutputs {
  writeOff: { readonly onHand: number };
  correctCount: {
    readonly onHand: number;
    /** What coats had set aside of what is not there, and have lost; in the kind's unit. */
    readonly released: readonly {
      readonly planId: PlanId;
      readonly planName: string;
      readonly amount: number;
    }[];
  };
  /** How many places differed from what was booked. */
  /** releasedFrom: names of coats that had set aside what is not there. */
  takeStock: { readonly correctedCount: number; readonly releasedFrom: readonly string[] };
  readShelf: { readonly shelves: readonly ItemOnShelf[] };
  archiveItem: { readonly itemId: ItemId };
}
