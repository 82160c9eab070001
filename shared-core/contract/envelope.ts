import { z } from 'zod';
import { type CallName, callNames } from './contract.ts';

/** What a door carries. */
export const envelope = z.strictObject({
  call: z.enum(callNames as [CallName, ...CallName[]]),
  workshop: z.enum(['own', 'demo']),
  input: z.unknown(),
  /** What the window speaks; absent: what the program speaks. */
  language: z.string().max(35).exactOptional(),
});
