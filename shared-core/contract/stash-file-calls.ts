/** The calls about the stash as a file for a spreadsheet. */
import { z } from 'zod';
import type { StashChange } from '../exchange/stash-csv/stash-change.ts';

/** What the text holds is looked at line by line, with a place for each problem. */
const fileText = z.strictObject({ text: z.string() });

export const stashFileCalls = {
  /** The shelf as CSV: a line for each length, or lot, or item of which nothing is there. */
  stashFile: { changes: false, input: z.strictObject({}) },
  /** What such a file would change. Writes nothing. */
  lookAtStashFile: { changes: false, input: fileText },
  /** All of it, or nothing. */
  bringInStashFile: { changes: true, input: fileText },
} as const;

export interface StashFileChanges {
  readonly lineCount: number;
  readonly newItemCount: number;
  readonly changedItemCount: number;
  readonly newLotCount: number;
  readonly correctionCount: number;
  /** The first of them in the order of the lines. */
  readonly changes: readonly {
    readonly line: number;
    readonly kind: StashChange['kind'];
    readonly itemName: string;
    readonly text: string;
  }[];
}

export interface StashFileOutputs {
  stashFile: { readonly text: string };
  lookAtStashFile: StashFileChanges;
  bringInStashFile: StashFileChanges;
}
