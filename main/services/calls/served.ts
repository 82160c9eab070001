/** The calls that run in one transaction each: what is refused or fails is rolled back whole. */
import { type CallName, calls, type Workshop } from '../../../shared-core/contract/contract.ts';
import type { Result } from '../../../shared-core/measure/problem.ts';
import type { Part, Queries, Store } from '../../database/store.ts';
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
  | 'noteWindowFailure'
  | 'readSharing'
  | 'shareWorkshop';

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

/** Calls that take seconds over large stashes. */
const longCalls: readonly ServedCall[] = [
  'checkPriceList',
  'lookAtStashFile',
  'bringInPriceList',
  'bringInStashFile',
  'undoLastChange',
];

/** What each change locks where it is not the stash. */
const locks: Partial<Record<ServedCall, Part>> = {
  savePlan: 'plans',
  undoPlan: 'plans',
  saveSeason: 'plans',
  keepLay: 'lays',
  saveSettings: 'workshop',
  markUpgradeNotesSeen: 'workshop',
};

/** What every call of this opening is given. */
export interface Serving {
  readonly workshop: Workshop;
  readonly now: () => Date;
}

/** input: as the call's own schema gave it. store: it said that it is ready. Rejects for what the store cannot do. */
export function serve(
  store: Store,
  call: ServedCall,
  input: unknown,
  serving: Serving,
): Promise<Result<unknown>> {
  const run = served[call] as (context: CallContext, input: unknown) => Promise<Result<unknown>>;
  const work = (queries: Queries) => run(contextOf(store, queries, serving), input);
  const isLong = longCalls.includes(call);
  return calls[call].changes
    ? store.write({ locks: locks[call] ?? 'stash', isLong }, work)
    : store.read({ isLong }, work);
}

export function contextOf(store: Store, queries: Queries, { workshop, now }: Serving): CallContext {
  return {
    queries,
    workshop,
    dataFile: store.name,
    schemaVersion: store.schemaVersion(),
    now,
    told: store.told(),
  };
}
