/** The calls about money and the season: the account of the stash, what cuttings cost, and several plans on one stash. */
import { z } from 'zod';
import type { CutSheet } from '../cost/cut-sheet.ts';
import type { StashAccount } from '../cost/stash-account.ts';
import type { StackedBars } from '../measure/bars.ts';
import type { CoatPlan } from '../plan/model/coat-plan.ts';
import type { SeasonEntry } from '../plan/model/season-entry.ts';
import type { Offer } from '../stash/offer.ts';
import type { ItemOnShelf } from '../stash/stash.ts';
import type { Supplier } from '../stash/supplier.ts';
import { id, type Settings } from './schemas.ts';

const nothing = z.strictObject({});

export const costCalls = {
  /** What a coat's cuttings cost, and what its flow read before the first of them. */
  readCutSheet: { changes: false, input: z.strictObject({ planId: id }) },
  /** Where the money of the stash went, to the last minor unit. */
  readAccount: { changes: false, input: nothing },
  /** The plans of the season in the order of their priority, with all that its flow reads. */
  readSeason: { changes: false, input: nothing },
  /** coatCount null: as many as the plan says. */
  saveSeason: {
    changes: true,
    input: z.strictObject({
      entries: z
        .array(z.strictObject({ planId: id, coatCount: z.number().int().min(1).max(1000).nullable() }))
        .max(100),
    }),
  },
} as const;

interface OnStash {
  readonly shelf: readonly ItemOnShelf[];
  readonly offers: readonly Offer[];
  readonly suppliers: readonly Supplier[];
}

/** What the flow of a season reads. */
export interface SeasonInput extends OnStash {
  /** In the order of their priority. */
  readonly entries: readonly SeasonEntry[];
  readonly settings: Settings;
}

export interface CostOutputs {
  readCutSheet: {
    readonly sheet: CutSheet;
    /** Null where nothing is cut, or no coat was counted. */
    readonly before: (OnStash & { readonly plan: CoatPlan }) | null;
  };
  /** byAge: what is on hand by the age of its lots, as of today, and by kind. */
  readAccount: StashAccount & { readonly byAge: StackedBars };
  readSeason: SeasonInput;
  saveSeason: SeasonInput;
}
