/**
 * The first schema. Once released, this file is never edited: what changes is a new migration.
 *
 * Amounts are whole thousandths of the kind's unit. What is on hand is the sum of the movements; the three
 * balance tables hold those sums, kept by triggers in the same transaction as the movement, so that a list over a
 * large ledger need not add it up each time. Their checks also refuse any movement that would take more than there is.
 * Ledger and plan revisions only grow: triggers refuse every other change.
 */
import type { Migration } from '../migration.ts';

export const first: Migration = {
  number: 1,
  what: 'first',
  sql: `
    CREATE TABLE workshop (
      only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
      name TEXT NOT NULL,
      settings TEXT NOT NULL CHECK (json_valid(settings))
    ) STRICT;

    -- What lists search and sort by stands first: notes may be long, and a list then never reads as far.
    CREATE TABLE item (
      id TEXT PRIMARY KEY NOT NULL CHECK (id <> ''),
      kind TEXT NOT NULL,
      archived INTEGER NOT NULL DEFAULT 0 CHECK (archived IN (0, 1)),
      name_key TEXT NOT NULL,
      place_key TEXT NOT NULL,
      search_text TEXT NOT NULL,
      name TEXT NOT NULL CHECK (name <> ''),
      colour TEXT NOT NULL,
      place TEXT NOT NULL,
      typed TEXT NOT NULL CHECK (json_valid(typed)),
      facts TEXT NOT NULL CHECK (json_valid(facts)),
      notes TEXT NOT NULL
    ) STRICT;
    CREATE INDEX item_by_name ON item (archived, name_key, id);
    CREATE INDEX item_by_kind ON item (kind, archived, name_key);
    CREATE INDEX item_by_place ON item (archived, place_key, name_key);

    CREATE TABLE lot (
      entry INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE CHECK (id <> ''),
      item_id TEXT NOT NULL REFERENCES item (id),
      received_on TEXT NOT NULL CHECK (received_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
      supplier TEXT NOT NULL,
      dye_lot TEXT NOT NULL,
      received_milli INTEGER NOT NULL CHECK (received_milli > 0),
      price_minor INTEGER NOT NULL CHECK (price_minor >= 0)
    ) STRICT;
    CREATE INDEX lot_by_item ON lot (item_id, received_on, entry);

    CREATE TABLE length (
      entry INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE CHECK (id <> ''),
      lot_id TEXT NOT NULL REFERENCES lot (id),
      width_mm REAL NOT NULL CHECK (width_mm > 0),
      form TEXT NOT NULL CHECK (form IN ('roll', 'cut', 'remnant', 'sheet')),
      flaws TEXT NOT NULL CHECK (json_valid(flaws)),
      UNIQUE (id, lot_id)
    ) STRICT;
    CREATE INDEX length_by_lot ON length (lot_id, entry);

    CREATE TABLE plan (
      id TEXT PRIMARY KEY NOT NULL CHECK (id <> ''),
      name TEXT NOT NULL,
      size TEXT NOT NULL,
      coat_count INTEGER NOT NULL CHECK (coat_count > 0),
      revision INTEGER NOT NULL CHECK (revision > 0),
      changed_at TEXT NOT NULL
    ) STRICT;

    CREATE TABLE plan_revision (
      plan_id TEXT NOT NULL REFERENCES plan (id),
      revision INTEGER NOT NULL CHECK (revision > 0),
      plan TEXT NOT NULL CHECK (json_valid(plan)),
      said TEXT NOT NULL,
      at TEXT NOT NULL,
      undo_to INTEGER CHECK (undo_to < revision),
      PRIMARY KEY (plan_id, revision)
    ) STRICT;
    CREATE TRIGGER plan_revision_stays BEFORE UPDATE ON plan_revision
    BEGIN SELECT RAISE(ABORT, 'a revision of a plan is never changed'); END;
    CREATE TRIGGER plan_revision_remains BEFORE DELETE ON plan_revision
    BEGIN SELECT RAISE(ABORT, 'a revision of a plan is never removed'); END;

    CREATE TABLE movement (
      entry INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE CHECK (id <> ''),
      at TEXT NOT NULL,
      kind TEXT NOT NULL,
      lot_id TEXT NOT NULL REFERENCES lot (id),
      length_id TEXT,
      on_hand_milli INTEGER NOT NULL,
      reserved_milli INTEGER NOT NULL,
      plan_id TEXT REFERENCES plan (id),
      reason TEXT NOT NULL,
      FOREIGN KEY (length_id, lot_id) REFERENCES length (id, lot_id),
      CHECK (CASE kind
        WHEN 'received' THEN on_hand_milli > 0 AND reserved_milli = 0
        WHEN 'reserved' THEN on_hand_milli = 0 AND reserved_milli > 0
        WHEN 'released' THEN on_hand_milli = 0 AND reserved_milli < 0
        WHEN 'cut' THEN on_hand_milli < 0 AND reserved_milli <= 0
        WHEN 'returned' THEN on_hand_milli > 0 AND reserved_milli = 0
        WHEN 'corrected' THEN on_hand_milli <> 0 AND reserved_milli = 0
        WHEN 'written off' THEN on_hand_milli < 0 AND reserved_milli = 0
        ELSE 0 END)
    ) STRICT;
    CREATE INDEX movement_by_lot ON movement (lot_id, entry);
    CREATE INDEX movement_by_plan ON movement (plan_id) WHERE plan_id IS NOT NULL;
    CREATE INDEX movement_by_length ON movement (length_id) WHERE length_id IS NOT NULL;

    CREATE TABLE lot_balance (
      lot_id TEXT PRIMARY KEY NOT NULL REFERENCES lot (id),
      on_hand_milli INTEGER NOT NULL CHECK (on_hand_milli >= 0),
      reserved_milli INTEGER NOT NULL CHECK (reserved_milli >= 0)
    ) STRICT, WITHOUT ROWID;
    CREATE TABLE length_balance (
      length_id TEXT PRIMARY KEY NOT NULL REFERENCES length (id),
      on_hand_milli INTEGER NOT NULL CHECK (on_hand_milli >= 0),
      reserved_milli INTEGER NOT NULL CHECK (reserved_milli >= 0)
    ) STRICT, WITHOUT ROWID;

    CREATE TABLE item_balance (
      item_id TEXT PRIMARY KEY NOT NULL REFERENCES item (id),
      on_hand_milli INTEGER NOT NULL CHECK (on_hand_milli >= 0),
      reserved_milli INTEGER NOT NULL CHECK (reserved_milli >= 0),
      -- Lots and lengths with something on hand, and what the lots' rest is worth: price x rest / received, each rounded.
      lot_count INTEGER NOT NULL CHECK (lot_count >= 0),
      length_count INTEGER NOT NULL CHECK (length_count >= 0),
      value_minor INTEGER NOT NULL CHECK (value_minor >= 0)
    ) STRICT, WITHOUT ROWID;

    CREATE TRIGGER item_begins AFTER INSERT ON item
    BEGIN INSERT INTO item_balance VALUES (NEW.id, 0, 0, 0, 0, 0); END;
    CREATE TRIGGER lot_begins AFTER INSERT ON lot
    BEGIN INSERT INTO lot_balance VALUES (NEW.id, 0, 0); END;
    CREATE TRIGGER length_begins AFTER INSERT ON length
    BEGIN INSERT INTO length_balance VALUES (NEW.id, 0, 0); END;
    CREATE TRIGGER movement_counts AFTER INSERT ON movement
    BEGIN
      UPDATE lot_balance SET on_hand_milli = on_hand_milli + NEW.on_hand_milli,
        reserved_milli = reserved_milli + NEW.reserved_milli WHERE lot_id = NEW.lot_id;
      UPDATE length_balance SET on_hand_milli = on_hand_milli + NEW.on_hand_milli,
        reserved_milli = reserved_milli + NEW.reserved_milli WHERE length_id = NEW.length_id;
    END;
    CREATE TRIGGER lot_counts AFTER UPDATE ON lot_balance
    BEGIN
      UPDATE item_balance SET
        on_hand_milli = item_balance.on_hand_milli + NEW.on_hand_milli - OLD.on_hand_milli,
        reserved_milli = item_balance.reserved_milli + NEW.reserved_milli - OLD.reserved_milli,
        lot_count = lot_count + (NEW.on_hand_milli > 0) - (OLD.on_hand_milli > 0),
        value_minor = value_minor
          + CAST(round(CAST(lot.price_minor AS REAL) * NEW.on_hand_milli / lot.received_milli) AS INTEGER)
          - CAST(round(CAST(lot.price_minor AS REAL) * OLD.on_hand_milli / lot.received_milli) AS INTEGER)
        FROM lot WHERE lot.id = NEW.lot_id AND item_balance.item_id = lot.item_id;
    END;
    CREATE TRIGGER length_counts AFTER UPDATE ON length_balance
    WHEN (NEW.on_hand_milli > 0) <> (OLD.on_hand_milli > 0)
    BEGIN
      UPDATE item_balance SET length_count = length_count + (NEW.on_hand_milli > 0) - (OLD.on_hand_milli > 0)
        FROM length JOIN lot ON lot.id = length.lot_id
        WHERE length.id = NEW.length_id AND item_balance.item_id = lot.item_id;
    END;
    -- What a balance was reckoned from must not change under it.
    CREATE TRIGGER lot_stays BEFORE UPDATE OF id, item_id, received_milli, price_minor ON lot
    BEGIN SELECT RAISE(ABORT, 'what was received stays as it was'); END;
    CREATE TRIGGER lot_remains BEFORE DELETE ON lot
    BEGIN SELECT RAISE(ABORT, 'what was received stays as it was'); END;
    CREATE TRIGGER length_stays BEFORE UPDATE OF id, lot_id ON length
    BEGIN SELECT RAISE(ABORT, 'what was received stays as it was'); END;
    CREATE TRIGGER length_remains BEFORE DELETE ON length
    BEGIN SELECT RAISE(ABORT, 'what was received stays as it was'); END;

    -- Without this an INSERT OR REPLACE would drop the older row without its delete trigger.
    CREATE TRIGGER movement_is_new BEFORE INSERT ON movement
    WHEN EXISTS (SELECT 1 FROM movement WHERE id = NEW.id OR entry = NEW.entry)
    BEGIN SELECT RAISE(ABORT, 'the ledger only grows'); END;
    CREATE TRIGGER movement_stays BEFORE UPDATE ON movement
    BEGIN SELECT RAISE(ABORT, 'the ledger only grows'); END;
    CREATE TRIGGER movement_remains BEFORE DELETE ON movement
    BEGIN SELECT RAISE(ABORT, 'the ledger only grows'); END;

    CREATE TABLE offer (
      id TEXT PRIMARY KEY NOT NULL CHECK (id <> ''),
      item_id TEXT NOT NULL REFERENCES item (id),
      supplier TEXT NOT NULL,
      unit TEXT NOT NULL CHECK (json_valid(unit)),
      price_minor INTEGER NOT NULL CHECK (price_minor >= 0),
      priced_on TEXT NOT NULL
    ) STRICT;
    CREATE INDEX offer_by_item ON offer (item_id, supplier);

    CREATE TABLE kept_lay (
      entry INTEGER PRIMARY KEY,
      job_hash TEXT NOT NULL UNIQUE,
      result TEXT NOT NULL CHECK (json_valid(result)),
      kept_at TEXT NOT NULL
    ) STRICT;

    INSERT INTO workshop (only_row, name, settings) VALUES (1, '', '{"system":"metric","currency":"EUR"}');
  `,
};
