/** The tables as the queries see them, after the last migration. JSON columns are texts. */
import type { Generated } from 'kysely';
import type { ItemKind } from '../../../shared-core/stash/kinds.ts';
import type { PictureFacts } from '../../../shared-core/stash/photo.ts';
import type { Length, MovementKind } from '../../../shared-core/stash/stash.ts';

export interface Schema {
  readonly workshop: { readonly only_row: 1; readonly name: string; readonly settings: string };
  readonly item: {
    readonly id: string;
    readonly kind: ItemKind;
    readonly name: string;
    readonly colour: string;
    readonly place: string;
    readonly notes: string;
    readonly facts: string;
    readonly typed: string;
    readonly archived: Generated<0 | 1>;
    /** Folded for sorting, see search-text.ts. */
    readonly name_key: string;
    readonly place_key: string;
    /** Folded words of the item and of all its lots, one field a line. */
    readonly search_text: string;
  };
  readonly item_photo: {
    readonly item_id: string;
    readonly media_type: PictureFacts['mediaType'];
    readonly bytes: Uint8Array;
    readonly width_px: number;
    readonly height_px: number;
    readonly saved_at: string;
  };
  readonly lot: {
    /** Order of entry, for lots of one day. */
    readonly entry: Generated<number>;
    readonly id: string;
    readonly item_id: string;
    readonly received_on: string;
    readonly supplier: string;
    readonly dye_lot: string;
    readonly received_milli: number;
    readonly price_minor: number;
  };
  readonly length: {
    readonly entry: Generated<number>;
    readonly id: string;
    readonly lot_id: string;
    readonly width_mm: number;
    readonly form: Length['form'];
    readonly flaws: string;
    /** The share of its lot's price that a millimetre carries: below 1 for remnants narrower than their cloth. */
    readonly worth_ratio: Generated<number>;
    /** 1: its first wash is over. */
    readonly is_washed: Generated<0 | 1>;
  };
  readonly movement: {
    readonly entry: Generated<number>;
    readonly id: string;
    readonly at: string;
    readonly kind: MovementKind;
    readonly lot_id: string;
    readonly length_id: string | null;
    readonly on_hand_milli: number;
    readonly reserved_milli: number;
    readonly plan_id: string | null;
    readonly reason: string;
    /** Generated: null where a movement is no part of a cutting. */
    readonly cutting_id: Generated<string | null>;
    /** Generated: null but for a reversal. */
    readonly reverses: Generated<string | null>;
  };
  readonly cutting: {
    readonly entry: Generated<number>;
    readonly id: string;
    readonly plan_id: string;
    /** The plan as it was cut. */
    readonly revision: number;
    readonly at: string;
    readonly coats: string;
    readonly slots: string;
    readonly note: string;
    /** The cutting that this one takes back, or null. */
    readonly undoes: string | null;
  };
  /** Kept by triggers: the sums of the movements of an item, a lot or a length. Never written by a query. */
  readonly item_balance: {
    readonly item_id: string;
    readonly on_hand_milli: number;
    readonly reserved_milli: number;
    /** Lots, and lengths, with something on hand. */
    readonly lot_count: number;
    readonly length_count: number;
    readonly value_minor: number;
  };
  readonly lot_balance: {
    readonly lot_id: string;
    readonly on_hand_milli: number;
    readonly reserved_milli: number;
    /** What the lot's price is shared by: its amount, narrow remnants counted by their share. */
    readonly worth_milli: number;
  };
  readonly length_balance: {
    readonly length_id: string;
    readonly on_hand_milli: number;
    readonly reserved_milli: number;
  };
  /** What the stash's last change did, as long as it can be undone. items, offers: see services/stock/last-change.ts. */
  readonly last_change: {
    readonly only_row: 1;
    readonly id: string;
    readonly said: string;
    readonly first_entry: number;
    readonly last_entry: number;
    readonly items: string;
    readonly offers: string;
  };
  /** What bringing the file up to a schema had to assume. */
  readonly upgrade_note: {
    readonly entry: Generated<number>;
    readonly schema: number;
    readonly note: string;
    readonly seen_at: string | null;
  };
  readonly offer: {
    readonly id: string;
    readonly item_id: string;
    readonly supplier: string;
    readonly unit: string;
    readonly price_minor: number;
    readonly priced_on: string;
    readonly breaks: Generated<string>;
    readonly least_count: Generated<number>;
  };
  readonly supplier: {
    /** The name folded (stash/supplier.ts). */
    readonly key: string;
    readonly name: string;
    readonly delivery_minor: number;
    readonly free_from_minor: number | null;
    readonly lead_days: number | null;
  };
  readonly shopping_tick: {
    readonly plan_id: string;
    readonly offer_id: string;
    readonly ticked_at: string;
  };
  readonly plan: {
    readonly id: string;
    readonly name: string;
    readonly size: string;
    readonly coat_count: number;
    /** The latest. */
    readonly revision: number;
    readonly changed_at: string;
  };
  readonly plan_revision: {
    readonly plan_id: string;
    readonly revision: number;
    readonly plan: string;
    /** What the maker did, in a sentence. */
    readonly said: string;
    readonly at: string;
    /** The revision that undoing this one goes back to; null where there is none. */
    readonly undo_to: number | null;
  };
  readonly season_plan: {
    readonly plan_id: string;
    /** From 1, without gaps: the first plan has the stash to itself. */
    readonly place: number;
    /** NULL: as many as the plan says. */
    readonly coat_count: number | null;
  };
  readonly kept_lay: {
    readonly entry: Generated<number>;
    readonly job_hash: string;
    readonly result: string;
    readonly kept_at: string;
  };
}
