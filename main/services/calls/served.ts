/** The calls that run in one transaction each: what is refused or fails is rolled back whole. */
import { type CallName, calls, type Workshop } from '../../../shared-core/contract/contract.ts';
import type { Result, Problem } from '../../../shared-core/measure/problem.ts';
import type { OpenWorkshop } from '../../database/file/connection.ts';
import { schemaVersion } from '../../database/schema/migrate.ts';
import { accountCalls } from '../stock/accounts.ts';
import type { CallContext } from './call.ts';
import { cutSheetCalls } from '../cutting/cut-sheet.ts';
import { cuttingCalls } from '../cutting/cutting.ts';
import { flowInputCalls } from '../plans/flow-input.ts';
import { layCalls } from '../plans/lays.ts';
import { offerCalls } from '../purchasing/offers.ts';
import { photoCalls } from '../stock/photos.ts';
import { planCalls } from '../plans/plans.ts';
import { priceListCalls } from '../purchasing/price-lists.ts';
import { seasonCalls } from '../plans/season.ts';
import { shoppingCalls } from '../purchasing/shopping.ts';
import { stashCalls } from '../stock/stash.ts';
import { stashFileCalls } from '../stock/stash-file.ts';
import { changeCalls } from '../stock/undo.ts';
import { findCall } from '../workshop/find.ts';
import { supplierCalls } from '../purchasing/suppliers.ts';
import { workshopCalls } from '../workshop/workshop.ts';

/** These need the file as a whole, or none at all, rather than a transaction. */
export type WholeFileCall =
  | 'openDemo'
  | 'listBackups'
  | 'backUp'
  | 'restoreBackup'
  | 'readFailureLog'
  | 'programFacts'
  | 'askForNews'
  | 'noteWindowFailure';

const served = {
  ...workshopCalls,
  ...stashCalls,
  ...stashFileCalls,
  ...changeCalls,
  ...photoCalls,
  ...offerCalls,
  ...supplierCalls,
  ...priceListCalls,
  ...shoppingCalls,
  ...planCalls,
  ...flowInputCalls,
  ...layCalls,
  ...accountCalls,
  ...cutSheetCalls,
  ...cuttingCalls,
  ...seasonCalls,
  ...findCall,
} satisfies Record<Exclude<CallName, WholeFileCall>, unknown>;

export type ServedCall = keyof typeof served;

/** What every call of this opening is given. */
export interface Serving {
  readonly workshop: Workshop;
  readonly now: () => Date;
  /** What is wrong with the file though it is open. */
  readonly told: readonly Problem[];
}

/** input: as the call's own schema gave it. Rejects for what the file refuses. */
export async function serve(
  open: OpenWorkshop,
  call: ServedCall,
  input: unknown,
  serving: Serving,
): Promise<Result<unknown>> {
  const run = served[call] as (context: CallContext, input: unknown) => Promise<Result<unknown>>;
  const accessMode = calls[call].changes ? 'read write' : 'read only';
  try {
    return await open.queries
      .transaction()
      .setAccessMode(accessMode)
      .execute(async (queries) => {
        const outcome = await run(contextOf(open, queries, serving), input);
        if (!outcome.ok) throw new RolledBack(outcome);
        return outcome;
      });
  } catch (error) {
    if (error instanceof RolledBack) return error.outcome;
    throw error;
  }
}

export function contextOf(
  open: OpenWorkshop,
  queries: CallContext['queries'],
  { workshop, now, told }: Serving,
): CallContext {
  const version = schemaVersion(open.connection);
  return { queries, workshop, dataFile: open.file, schemaVersion: version, now, told };
}

/** Carries a refusal out of the transaction, so that it is rolled back. */
class RolledBack extends Error {
  readonly outcome: Result<never>;
  constructor(outcome: Result<never>) {
    super('rolled back');
    this.outcome = outcome;
  }
}
