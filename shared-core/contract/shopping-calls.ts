/** The calls about a shopping trip: what is ticked on a coat's list, and all of it coming onto the shelf. */
import { z } from 'zod';
import { id, receivedLot } from './schemas.ts';

export const shoppingCalls = {
  /** Offers that are ticked on the plan's list, whether or not the list still holds them. */
  readTicks: { changes: false, input: z.strictObject({ planId: id }) },
  setTick: {
    changes: true,
    input: z.strictObject({ planId: id, offerId: id, isTicked: z.boolean() }),
  },
  /** Ticks and open lines that come back from a phone, all in one step; what is in neither stays as it is. */
  setTicks: {
    changes: true,
    input: z.strictObject({
      planId: id,
      ticked: z.array(id).max(1000),
      open: z.array(id).max(1000),
    }),
  },
  /** Several purchases in one step: all of them come in, or none. The ticks of what came in are taken off the list. */
  receiveLots: {
    changes: true,
    input: z.strictObject({
      planId: id,
      lots: z
        .array(z.strictObject({ offerId: id, lot: receivedLot }))
        .min(1)
        .max(200),
    }),
  },
} as const;
