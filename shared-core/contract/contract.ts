/**
 * The typed calls that both doors serve: declared here, implemented in main/services, called through renderer/client.
 * A call comes in an envelope that names the workshop it is for, and is answered by a Result:
 * a maker's mistake is a list of problems, and then nothing was changed.
 */
import type { Language } from '../wording/say.ts';
import { z } from 'zod';
import type { PriceList } from '../exchange/price-list/price-list-shape.ts';
import type { LayResult } from '../lay/job.ts';
import type { Result, Problem } from '../measure/problem.ts';
import type { CoatPlan } from '../plan/model/coat-plan.ts';
import type { Cutting, SetAside } from '../stash/cutting.ts';
import type { ItemKind } from '../stash/kinds.ts';
import type { Offer } from '../stash/offer.ts';
import type { ItemId, ItemOnShelf, LotId, Movement, OfferId, PlanId } from '../stash/stash.ts';
import type { Supplier } from '../stash/supplier.ts';
import { changeCalls, type ChangeOutputs } from './change-calls.ts';
import { offerCalls, type SupplierRow } from './offer-calls.ts';
import { factValues, typedTexts } from './fact-schemas.ts';
import { findCalls, type FindOutputs } from './find-calls.ts';
import { costCalls, type CostOutputs } from './cost-calls.ts';
import { photoCalls, type PhotoOutputs } from './photo-calls.ts';
import { programCalls, type ProgramOutputs } from './program-calls.ts';
import { shelfCalls, type ShelfOutputs } from './shelf-calls.ts';
import { cuttingCalls, type CuttingOutputs } from './cutting-calls.ts';
import { shoppingCalls } from './shopping-calls.ts';
import { stashFileCalls, type StashFileOutputs } from './stash-file-calls.ts';
import {
  coatPlan,
  id,
  itemKind,
  layResult,
  longText,
  name,
  receivedLot,
  type Settings,
  settings,
  shortText,
} from './schemas.ts';

const nothing = z.strictObject({});

/** `changes` tells a call that writes. Inputs are validated once, at the door, by these schemas. */
export const calls = {
  /** Who and where: the workshop, its file, its settings. */
  workshopFacts: { changes: false, input: nothing },
  saveSettings: { changes: true, input: settings },
  /** The maker has read what bringing the file up to date had to assume. */
  markUpgradeNotesSeen: { changes: true, input: nothing },
  /** Makes the demo workshop anew, whatever was done in it. Only for the workshop 'demo'. */
  openDemo: { changes: true, input: nothing },

  /** The whole copies of the maker's own file, newest first, also where the file cannot be opened. The demo has none. */
  listBackups: { changes: false, input: nothing },
  backUp: { changes: true, input: nothing },
  /** Puts a backup in the place of the file; what stood there is kept as a backup too. */
  restoreBackup: { changes: true, input: z.strictObject({ name: shortText }) },
  /** The log of failures, whole: times, steps and places in the program, never what a maker typed. */
  readFailureLog: { changes: false, input: nothing },
  /** A failure in the window, for the log. No message: it may quote what a maker typed. */
  noteWindowFailure: {
    changes: false,
    input: z.strictObject({
      /** The room, or a word for what was worked out. */
      place: z.string().regex(/^[a-z -]{1,40}$/),
      kind: z.string().max(200),
      stack: z.string().max(20_000),
    }),
  },

  ...programCalls,

  /** Rows of the stash, searched by name, colour, place, supplier and dye lot, sorted and cut to a window. */
  listItems: {
    changes: false,
    input: z.strictObject({
      search: z.string().max(200),
      kinds: z.array(itemKind).max(10),
      sortBy: z.enum(['name', 'kind', 'place', 'onHand', 'value']),
      isDescending: z.boolean(),
      /** True: only what was put away. Absent: only what was not. */
      isPutAway: z.boolean().exactOptional(),
      offset: z.number().int().min(0),
      limit: z.number().int().min(1).max(500),
    }),
  },
  readItem: { changes: false, input: z.strictObject({ itemId: id }) },
  /** itemId null makes a new item; firstLot is its first purchase, received with it or not at all. */
  saveItem: {
    changes: true,
    input: z.strictObject({
      itemId: id.nullable(),
      kind: itemKind,
      name,
      colour: shortText,
      place: shortText,
      notes: longText,
      facts: factValues,
      typed: typedTexts,
      firstLot: receivedLot.omit({ itemId: true }).exactOptional(),
    }),
  },
  /**
   * A purchase comes in. Kinds that lie as lengths name each length (mm); others an amount in their unit.
   * `count` lengths of the same measure may be received in one line.
   */
  receiveLot: { changes: true, input: receivedLot },
  ...shelfCalls,
  ...changeCalls,
  ...photoCalls,
  ...offerCalls,
  ...shoppingCalls,
  ...findCalls,
  ...stashFileCalls,

  listPlans: { changes: false, input: nothing },
  readPlan: { changes: false, input: z.strictObject({ planId: id }) },
  /** Saves a plan as its next revision. basedOn: the revision it was changed from, null for a new plan. */
  savePlan: {
    changes: true,
    input: z.strictObject({
      plan: coatPlan,
      basedOn: z.number().int().min(1).nullable(),
      said: z.string().max(1000),
    }),
  },
  /** The state before the last change becomes the plan again, as a new revision; undoing again goes a step further back. */
  undoPlan: { changes: true, input: z.strictObject({ planId: id }) },

  /** All that the flow reads for a plan: the plan, what is on the shelf of the kinds it uses, and offers. */
  flowInput: { changes: false, input: z.strictObject({ planId: id }) },
  ...costCalls,
  /** A lay found earlier for the same job, if any. */
  readLay: { changes: false, input: z.strictObject({ jobHash: z.string().regex(/^[0-9a-f]{64}$/) }) },
  keepLay: {
    changes: true,
    input: z.strictObject({ jobHash: z.string().regex(/^[0-9a-f]{64}$/), result: layResult }),
  },

  ...cuttingCalls,
} as const satisfies Record<string, { changes: boolean; input: z.ZodType }>;

export type CallName = keyof typeof calls;
export const callNames = Object.keys(calls) as readonly CallName[];
export type CallInput<Name extends CallName> = z.infer<(typeof calls)[Name]['input']>;

export interface WorkshopFacts {
  readonly workshop: Workshop;
  readonly dataFile: string;
  readonly schemaVersion: number;
  readonly settings: Settings;
  readonly itemCount: number;
  readonly planCount: number;
  /** What is wrong with the file though it is open, or what had to be done to open it. */
  readonly fileProblems: readonly Problem[];
  /** What bringing an older file up to date had to assume, as sentences, oldest first. */
  readonly upgradeNotes: readonly UpgradeNote[];
}

export interface UpgradeNote {
  readonly note: string;
  readonly isSeen: boolean;
}

export interface Backup {
  readonly name: string;
  /** ISO, UTC. */
  readonly at: string;
  /** 'rescued': made when the file was gone or another lay in its place. 'put here': laid into the folder by the maker. */
  readonly kind: 'automatic' | 'by hand' | 'before bringing back' | 'rescued' | 'put here';
  readonly sizeBytes: number;
}

export interface Backups {
  readonly folder: string;
  readonly rows: readonly Backup[];
  /** Why the backup at the start could not be made; null where it was, or none was due. */
  readonly lastProblem: Problem | null;
}

export interface ItemRow {
  readonly id: ItemId;
  readonly kind: ItemKind;
  readonly name: string;
  readonly colour: string;
  readonly place: string;
  /** In the kind's unit. */
  readonly onHand: number;
  readonly reserved: number;
  readonly lotCount: number;
  readonly lengthCount: number;
  /** What is on hand at what its lots cost. */
  readonly valueMinor: number;
}

export interface PlanRow {
  readonly id: PlanId;
  readonly name: string;
  readonly size: string;
  readonly coatCount: number;
  readonly changedAt: string;
}

export interface FlowInput {
  readonly plan: CoatPlan;
  readonly revision: number;
  readonly shelf: readonly ItemOnShelf[];
  readonly offers: readonly Offer[];
  readonly suppliers: readonly Supplier[];
  /** ISO date; prices are old or not as of it. */
  readonly today: string;
  readonly settings: Settings;
  /** What this plan has set aside; on the shelf above that counts as free. */
  readonly setAside: readonly SetAside[];
  /** Cuttings of this plan that stand, oldest first. */
  readonly cuttings: readonly Cutting[];
}

interface CallOutputs
  extends ChangeOutputs,
    CostOutputs,
    CuttingOutputs,
    FindOutputs,
    PhotoOutputs,
    ProgramOutputs,
    ShelfOutputs,
    StashFileOutputs {
  workshopFacts: WorkshopFacts;
  saveSettings: Settings;
  markUpgradeNotesSeen: WorkshopFacts;
  openDemo: WorkshopFacts;
  listBackups: Backups;
  backUp: Backups;
  restoreBackup: WorkshopFacts;
  /** file: absolute, there or not. text: '' where nothing has failed yet. */
  readFailureLog: { readonly file: string; readonly text: string };
  noteWindowFailure: { readonly file: string };
  listItems: { readonly rows: readonly ItemRow[]; readonly total: number };
  readItem: {
    readonly shelf: ItemOnShelf;
    readonly movements: readonly Movement[];
    readonly offers: readonly Offer[];
    readonly isPutAway: boolean;
    /** What coats have set aside of it. */
    readonly setAside: readonly (SetAside & { readonly planId: PlanId; readonly planName: string })[];
  };
  saveItem: { readonly itemId: ItemId };
  receiveLot: { readonly lotId: LotId };
  receiveLots: { readonly lotIds: readonly LotId[] };
  readTicks: { readonly offerIds: readonly OfferId[] };
  setTick: { readonly offerIds: readonly OfferId[] };
  setTicks: { readonly offerIds: readonly OfferId[] };
  saveOffer: { readonly offerId: OfferId };
  removeOffer: { readonly offerId: OfferId };
  listSuppliers: { readonly rows: readonly SupplierRow[] };
  saveSupplier: { readonly name: string };
  checkPriceList: PriceList;
  bringInPriceList: { readonly addedCount: number; readonly changedCount: number };
  priceList: { readonly text: string };
  listPlans: { readonly rows: readonly PlanRow[] };
  readPlan: {
    readonly plan: CoatPlan;
    readonly revision: number;
    readonly said: string;
    readonly canUndo: boolean;
  };
  savePlan: { readonly planId: PlanId; readonly revision: number };
  undoPlan: {
    readonly plan: CoatPlan;
    readonly revision: number;
    readonly said: string;
    readonly canUndo: boolean;
  };
  flowInput: FlowInput;
  readLay: { readonly result: LayResult | null };
  keepLay: { readonly jobHash: string };
}

export type CallOutput<Name extends CallName> = CallOutputs[Name];

export type Workshop = 'own' | 'demo';

type Call<Name extends CallName> = (
  workshop: Workshop,
  input: CallInput<Name>,
  language?: Language,
) => Promise<Result<CallOutput<Name>>>;

/** The whole contract as functions, as the Electron preload exposes it and the client offers it. */
export type BoltAndBaffleApi = {
  readonly [Name in CallName]: Call<Name>;
};
