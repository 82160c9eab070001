/** The calls about the last change of the stash: what it did, and undoing it. */
import { z } from 'zod';
import { id } from './schemas.ts';

export const changeCalls = {
  /**
   * The last change of the stash: a lot received, an amount written off, a count, an item or an offer changed, something
   * put away, or a file brought in. Null where there was none, or it was undone.
   */
  readLastChange: { changes: false, input: z.strictObject({}) },
  /** Undoes it whole, or says what followed that forbids it. What it booked is reversed by rows of their own. */
  undoLastChange: { changes: true, input: z.strictObject({ changeId: id }) },
} as const;

export interface LastChange {
  readonly id: string;
  /** A sentence without its full stop: "Received 5 m of Peatwater taffeta". */
  readonly said: string;
}

export interface ChangeOutputs {
  readLastChange: { readonly change: LastChange | null };
  /** said: of the change that was undone. */
  undoLastChange: { readonly said: string };
}
