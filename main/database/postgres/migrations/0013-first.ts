/**
 * The first schema on PostgreSQL: the very tables that a file has after its migration 13, with the same rules. Once
 * released, this file is never edited: what changes is a new migration, with the same number in schema/migrations.
 *
 * Where the dialects differ, rows are kept equal: JSON and dates stay texts, yes and no stay 1 and 0, and texts are
 * sorted by their bytes. What a file has from its single writer is added: an entry is given out under the lock of the
 * stash, so the order of entries is that of the commits; see docs/decisions/0006-several-desks.md.
 */
import { type Kysely, sql } from 'kysely';
import type { Migration } from 'kysely/migration';
import { ruleTexts } from './0013-rules.ts';

/** Sorted by bytes, as a file sorts. */
const words = 'text COLLATE "C"';
/** Refuses what is no JSON; it never gives false. */
const json = (column: string) => `CHECK (${column}::json IS NOT NULL)`;

const tables = `
  CREATE TABLE workshop (
    only_row integer PRIMARY KEY CHECK (only_row = 1),
    name ${words} NOT NULL,
    settings ${words} NOT NULL ${json('settings')}
  );

  CREATE TABLE item (
    id ${words} PRIMARY KEY CHECK (id <> ''),
    kind ${words} NOT NULL,
    archived integer NOT NULL DEFAULT 0 CHECK (archived IN (0, 1)),
    name_key ${words} NOT NULL,
    place_key ${words} NOT NULL,
    search_text ${words} NOT NULL,
    name ${words} NOT NULL CHECK (name <> ''),
    colour ${words} NOT NULL,
    place ${words} NOT NULL,
    typed ${words} NOT NULL ${json('typed')},
    facts ${words} NOT NULL ${json('facts')},
    notes ${words} NOT NULL
  );
  CREATE INDEX item_by_name ON item (archived, name_key, id);
  CREATE INDEX item_by_kind ON item (kind, archived, name_key);
  CREATE INDEX item_by_place ON item (archived, place_key, name_key);

  CREATE TABLE item_photo (
    item_id ${words} PRIMARY KEY REFERENCES item (id),
    media_type ${words} NOT NULL CHECK (media_type IN ('image/jpeg', 'image/webp')),
    bytes bytea NOT NULL CHECK (length(bytes) BETWEEN 1 AND 200000),
    width_px integer NOT NULL CHECK (width_px BETWEEN 1 AND 640),
    height_px integer NOT NULL CHECK (height_px BETWEEN 1 AND 640),
    saved_at ${words} NOT NULL
  );

  CREATE TABLE lot (
    entry bigint PRIMARY KEY,
    id ${words} NOT NULL UNIQUE CHECK (id <> ''),
    item_id ${words} NOT NULL REFERENCES item (id),
    received_on ${words} NOT NULL CHECK (received_on ~ '^[0-9]{4}-[0-9]{2}-[0-9]{2}$'),
    supplier ${words} NOT NULL,
    dye_lot ${words} NOT NULL,
    received_milli bigint NOT NULL CHECK (received_milli > 0),
    price_minor bigint NOT NULL CHECK (price_minor >= 0)
  );
  CREATE INDEX lot_by_item ON lot (item_id, received_on, entry);

  CREATE TABLE length (
    entry bigint PRIMARY KEY,
    id ${words} NOT NULL UNIQUE CHECK (id <> ''),
    lot_id ${words} NOT NULL REFERENCES lot (id),
    width_mm double precision NOT NULL CHECK (width_mm > 0),
    form ${words} NOT NULL CHECK (form IN ('roll', 'cut', 'remnant', 'sheet')),
    flaws ${words} NOT NULL ${json('flaws')},
    worth_ratio double precision NOT NULL DEFAULT 1 CHECK (worth_ratio > 0 AND worth_ratio <= 1),
    is_washed integer NOT NULL DEFAULT 0 CHECK (is_washed IN (0, 1)),
    UNIQUE (id, lot_id)
  );
  CREATE INDEX length_by_lot ON length (lot_id, entry);

  CREATE TABLE plan (
    id ${words} PRIMARY KEY CHECK (id <> ''),
    name ${words} NOT NULL,
    size ${words} NOT NULL,
    coat_count bigint NOT NULL CHECK (coat_count > 0),
    revision bigint NOT NULL CHECK (revision > 0),
    changed_at ${words} NOT NULL
  );

  CREATE TABLE plan_revision (
    plan_id ${words} NOT NULL REFERENCES plan (id),
    revision bigint NOT NULL CHECK (revision > 0),
    plan ${words} NOT NULL ${json('plan')},
    said ${words} NOT NULL,
    at ${words} NOT NULL,
    undo_to bigint CHECK (undo_to < revision),
    PRIMARY KEY (plan_id, revision)
  );

  CREATE TABLE cutting (
    entry bigint PRIMARY KEY,
    id ${words} NOT NULL UNIQUE CHECK (id <> ''),
    plan_id ${words} NOT NULL,
    revision bigint NOT NULL,
    at ${words} NOT NULL,
    coats ${words} NOT NULL ${json('coats')},
    slots ${words} NOT NULL ${json('slots')},
    note ${words} NOT NULL,
    undoes ${words} UNIQUE REFERENCES cutting (id),
    FOREIGN KEY (plan_id, revision) REFERENCES plan_revision (plan_id, revision)
  );
  CREATE INDEX cutting_by_plan ON cutting (plan_id, entry);

  CREATE TABLE movement (
    entry bigint PRIMARY KEY,
    id ${words} NOT NULL UNIQUE CHECK (id <> ''),
    at ${words} NOT NULL,
    kind ${words} NOT NULL,
    lot_id ${words} NOT NULL REFERENCES lot (id),
    length_id ${words},
    on_hand_milli bigint NOT NULL,
    reserved_milli bigint NOT NULL,
    plan_id ${words} REFERENCES plan (id),
    reason ${words} NOT NULL,
    cutting_id ${words} REFERENCES cutting (id),
    reverses ${words} UNIQUE REFERENCES movement (id),
    FOREIGN KEY (length_id, lot_id) REFERENCES length (id, lot_id),
    CHECK ((kind = 'reversed') = (reverses IS NOT NULL)),
    CHECK (CASE kind
      WHEN 'received' THEN on_hand_milli > 0 AND reserved_milli = 0
      WHEN 'reserved' THEN on_hand_milli = 0 AND reserved_milli > 0
      WHEN 'released' THEN on_hand_milli = 0 AND reserved_milli < 0
      WHEN 'cut' THEN on_hand_milli < 0 AND reserved_milli <= 0
      WHEN 'returned' THEN on_hand_milli > 0 AND reserved_milli = 0
      WHEN 'reversed' THEN on_hand_milli <> 0 AND reserved_milli = 0
      WHEN 'corrected' THEN on_hand_milli <> 0 AND reserved_milli = 0
      WHEN 'written off' THEN on_hand_milli < 0 AND reserved_milli = 0
      ELSE false END)
  );
  CREATE INDEX movement_by_lot ON movement (lot_id, entry);
  CREATE INDEX movement_by_plan ON movement (plan_id) WHERE plan_id IS NOT NULL;
  CREATE INDEX movement_by_length ON movement (length_id) WHERE length_id IS NOT NULL;
  CREATE INDEX movement_by_cutting ON movement (cutting_id, entry) WHERE cutting_id IS NOT NULL;

  CREATE TABLE lot_balance (
    lot_id ${words} PRIMARY KEY REFERENCES lot (id),
    on_hand_milli bigint NOT NULL CHECK (on_hand_milli >= 0),
    reserved_milli bigint NOT NULL CHECK (reserved_milli BETWEEN 0 AND on_hand_milli),
    worth_milli bigint NOT NULL CHECK (worth_milli >= 0)
  );
  CREATE TABLE length_balance (
    length_id ${words} PRIMARY KEY REFERENCES length (id),
    on_hand_milli bigint NOT NULL CHECK (on_hand_milli >= 0),
    reserved_milli bigint NOT NULL CHECK (reserved_milli BETWEEN 0 AND on_hand_milli)
  );
  CREATE TABLE item_balance (
    item_id ${words} PRIMARY KEY REFERENCES item (id),
    on_hand_milli bigint NOT NULL CHECK (on_hand_milli >= 0),
    reserved_milli bigint NOT NULL CHECK (reserved_milli >= 0),
    lot_count bigint NOT NULL CHECK (lot_count >= 0),
    length_count bigint NOT NULL CHECK (length_count >= 0),
    value_minor bigint NOT NULL CHECK (value_minor >= 0)
  );

  CREATE TABLE offer (
    id ${words} PRIMARY KEY CHECK (id <> ''),
    item_id ${words} NOT NULL REFERENCES item (id),
    supplier ${words} NOT NULL,
    unit ${words} NOT NULL ${json('unit')},
    price_minor bigint NOT NULL CHECK (price_minor >= 0),
    priced_on ${words} NOT NULL,
    breaks ${words} NOT NULL DEFAULT '[]' ${json('breaks')},
    least_count bigint NOT NULL DEFAULT 1 CHECK (least_count > 0)
  );
  CREATE INDEX offer_by_item ON offer (item_id, supplier);

  CREATE TABLE supplier (
    key ${words} PRIMARY KEY CHECK (key <> ''),
    name ${words} NOT NULL CHECK (name <> ''),
    delivery_minor bigint NOT NULL CHECK (delivery_minor >= 0),
    free_from_minor bigint CHECK (free_from_minor > 0),
    lead_days bigint CHECK (lead_days >= 0)
  );

  CREATE TABLE shopping_tick (
    plan_id ${words} NOT NULL REFERENCES plan (id),
    offer_id ${words} NOT NULL REFERENCES offer (id) ON DELETE CASCADE,
    ticked_at ${words} NOT NULL,
    PRIMARY KEY (plan_id, offer_id)
  );
  CREATE INDEX shopping_tick_by_offer ON shopping_tick (offer_id);

  CREATE TABLE season_plan (
    plan_id ${words} PRIMARY KEY REFERENCES plan (id),
    place bigint NOT NULL UNIQUE CHECK (place > 0),
    coat_count bigint CHECK (coat_count > 0)
  );

  CREATE TABLE kept_lay (
    entry bigint PRIMARY KEY,
    job_hash ${words} NOT NULL UNIQUE,
    result ${words} NOT NULL ${json('result')},
    kept_at ${words} NOT NULL
  );

  CREATE TABLE upgrade_note (
    entry bigint PRIMARY KEY,
    schema bigint NOT NULL,
    note ${words} NOT NULL CHECK (note <> ''),
    seen_at ${words}
  );

  CREATE TABLE last_change (
    only_row integer PRIMARY KEY CHECK (only_row = 1),
    id ${words} NOT NULL CHECK (id <> ''),
    said ${words} NOT NULL CHECK (said <> ''),
    first_entry bigint NOT NULL,
    last_entry bigint NOT NULL,
    items ${words} NOT NULL ${json('items')},
    offers ${words} NOT NULL ${json('offers')}
  );

  INSERT INTO workshop (only_row, name, settings) VALUES (1, '', '{"system":"metric","currency":"EUR"}');

  -- Of several desks alone. A turn is an empty table: whoever changes a part of the workshop locks its turn.
  CREATE TABLE stash_turn ();
  CREATE TABLE plans_turn ();
  CREATE TABLE lays_turn ();
  CREATE TABLE workshop_turn ();
  -- A step that was kept, so that a desk which lost its connection meanwhile can ask.
  CREATE TABLE kept_step (id ${words} PRIMARY KEY, at timestamptz NOT NULL DEFAULT now());

  -- As a file has it.
  CREATE FUNCTION instr(hay text, needle text) RETURNS integer LANGUAGE sql IMMUTABLE STRICT PARALLEL SAFE
    RETURN strpos(hay, needle);
`;

export const first: Migration = {
  async up(database: Kysely<unknown>) {
    for (const text of [tables, ...ruleTexts()]) await sql.raw(text).execute(database);
  },
};
