/** What a team is asked, and how it says that it could not. */
import type { LayBudget, LayJob, LayResult } from '../job.ts';

export interface TeamOrder {
  readonly job: LayJob;
  /** A function is asked when the lay begins. More than one hand only where seconds alone bound it: with iterations the lay depends on nothing else. */
  readonly budget: LayBudget | (() => LayBudget);
  /** Told the best of all members, the first lay included; not each step when they come fast. */
  readonly onBetter?: (result: LayResult) => void;
  readonly done: (result: LayResult) => void;
  readonly failed: (failure: LayFailure) => void;
}

export type LayFailure =
  | { readonly kind: 'refused'; readonly sentence: string }
  /** Its hands died, and so did the one that tried again. */
  | { readonly kind: 'died twice'; readonly cause: string }
  | { readonly kind: 'stopped'; readonly hadBegun: boolean }
  | { readonly kind: 'closed' };
