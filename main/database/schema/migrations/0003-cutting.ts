/**
 * A cutting groups the movements of one day at the table, and an undo is a further cutting that names the one it
 * takes back. A remnant that comes back is narrower than the cloth it was cut from: `worth_ratio` says which share of
 * the lot's price a millimetre of it carries, and a lot's worth is reckoned from that in place of the bare length.
 */
import type { Migration } from '../migration.ts';

export const cutting: Migration = {
  number: 3,
  what: 'cutting',
  sql: `
    CREATE TABLE cutting (
      entry INTEGER PRIMARY KEY,
      id TEXT NOT NULL UNIQUE CHECK (id <> ''),
      plan_id TEXT NOT NULL,
      -- The plan as it was cut.
      revision INTEGER NOT NULL,
      at TEXT NOT NULL,
      coats TEXT NOT NULL CHECK (json_valid(coats)),
      slots TEXT NOT NULL CHECK (json_valid(slots)),
      note TEXT NOT NULL,
      -- No cutting is taken back twice.
      undoes TEXT UNIQUE REFERENCES cutting (id),
      FOREIGN KEY (plan_id, revision) REFERENCES plan_revision (plan_id, revision)
    ) STRICT;
    CREATE INDEX cutting_by_plan ON cutting (plan_id, entry);
    CREATE TRIGGER cutting_is_new BEFORE INSERT ON cutting
    WHEN EXISTS (SELECT 1 FROM cutting WHERE id = NEW.id OR entry = NEW.entry OR undoes = NEW.undoes)
    BEGIN SELECT RAISE(ABORT, 'the ledger only grows'); END;
    CREATE TRIGGER cutting_stays BEFORE UPDATE ON cutting
    BEGIN SELECT RAISE(ABORT, 'the ledger only grows'); END;
    CREATE TRIGGER cutting_remains BEFORE DELETE ON cutting
    BEGIN SELECT RAISE(ABORT, 'the ledger only grows'); END;

    ALTER TABLE movement ADD COLUMN cutting_id TEXT REFERENCES cutting (id);
    CREATE INDEX movement_by_cutting ON movement (cutting_id, entry) WHERE cutting_id IS NOT NULL;

    ALTER TABLE length ADD COLUMN worth_ratio REAL NOT NULL DEFAULT 1
      CHECK (worth_ratio > 0 AND worth_ratio <= 1);
    CREATE TRIGGER length_worth_stays BEFORE UPDATE OF worth_ratio ON length
    BEGIN SELECT RAISE(ABORT, 'what was received stays as it was'); END;

    DROP TRIGGER lot_begins;
    DROP TRIGGER lot_counts;
    DROP TRIGGER movement_counts;
    -- What the lot's price is shared by: its amount, narrow remnants counted by their share.
    ALTER TABLE lot_balance ADD COLUMN worth_milli INTEGER NOT NULL DEFAULT 0 CHECK (worth_milli >= 0);
    UPDATE lot_balance SET worth_milli = on_hand_milli;
    CREATE TRIGGER lot_begins AFTER INSERT ON lot
    BEGIN INSERT INTO lot_balance VALUES (NEW.id, 0, 0, 0); END;
    CREATE TRIGGER movement_counts AFTER INSERT ON movement
    BEGIN
      UPDATE lot_balance SET on_hand_milli = on_hand_milli + NEW.on_hand_milli,
        reserved_milli = reserved_milli + NEW.reserved_milli,
        worth_milli = worth_milli + CASE WHEN NEW.length_id IS NULL THEN NEW.on_hand_milli ELSE coalesce((
          SELECT CAST(round(length.worth_ratio * (before.on_hand_milli + NEW.on_hand_milli)) AS INTEGER)
            - CAST(round(length.worth_ratio * before.on_hand_milli) AS INTEGER)
          FROM length JOIN length_balance AS before ON before.length_id = length.id
          WHERE length.id = NEW.length_id), 0) END
        WHERE lot_id = NEW.lot_id;
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
          + CAST(round(CAST(lot.price_minor AS REAL) * NEW.worth_milli / lot.received_milli) AS INTEGER)
          - CAST(round(CAST(lot.price_minor AS REAL) * OLD.worth_milli / lot.received_milli) AS INTEGER)
        FROM lot WHERE lot.id = NEW.lot_id AND item_balance.item_id = lot.item_id;
    END;
  `,
};
