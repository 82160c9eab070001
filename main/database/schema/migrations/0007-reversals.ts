/**
 * A cutting that is taken back is reversed, row by row, instead of being counted up again; what is set aside never
 * exceeds what is on hand; a cutting keeps how many coats it cut, and in which size its pieces were cut. What older
 * versions wrote is put into these words; what that had to assume stands in `upgrade_note`, for the maker to read.
 */
import type { Migration } from '../migration.ts';
import { rereadCuttings } from './0007-reread-cuttings.ts';

export const reversals: Migration = {
  number: 7,
  what: 'reversals',
  sql: `
    CREATE TABLE upgrade_note (
      entry INTEGER PRIMARY KEY,
      schema INTEGER NOT NULL,
      note TEXT NOT NULL CHECK (note <> ''),
      seen_at TEXT
    ) STRICT;

    -- Where more is set aside than there is, the coat that set aside last gives way first.
    CREATE TEMP TABLE set_aside AS
      SELECT lot_id, length_id, plan_id, sum(reserved_milli) AS reserved_milli,
        max(entry) FILTER (WHERE kind = 'reserved') AS last_entry
      FROM movement GROUP BY lot_id, length_id, plan_id HAVING sum(reserved_milli) > 0;
    CREATE TEMP TABLE to_release AS
      SELECT lot_id, length_id, plan_id, min(reserved_milli, excess_milli - before_milli) AS milli FROM (
        SELECT set_aside.*, place.excess_milli, coalesce(sum(set_aside.reserved_milli) OVER (
          PARTITION BY set_aside.lot_id, set_aside.length_id ORDER BY last_entry DESC
          ROWS BETWEEN UNBOUNDED PRECEDING AND 1 PRECEDING), 0) AS before_milli
        FROM set_aside JOIN (
          SELECT length.lot_id, length_id, b.reserved_milli - b.on_hand_milli AS excess_milli
            FROM length_balance AS b JOIN length ON length.id = b.length_id
          UNION ALL
          SELECT lot_id, NULL, b.reserved_milli - b.on_hand_milli FROM lot_balance AS b
            WHERE NOT EXISTS (SELECT 1 FROM length WHERE length.lot_id = b.lot_id)
        ) AS place ON place.lot_id = set_aside.lot_id AND place.length_id IS set_aside.length_id
      ) WHERE excess_milli > before_milli;
    INSERT INTO movement (id, at, kind, lot_id, length_id, on_hand_milli, reserved_milli, plan_id, reason)
      SELECT lower(hex(randomblob(16))), strftime('%Y-%m-%dT%H:%M:%fZ', 'now'), 'released', lot_id, length_id, 0, -milli,
        plan_id, 'more was set aside than is there' FROM to_release;
    INSERT INTO upgrade_note (schema, note)
      SELECT 7, 'More of ' || item.name || ' was set aside than is on hand. '
        || coalesce('The coat ' || plan.name, 'The coat') || ' set aside last, so ' 
        || rtrim(rtrim(printf('%.3f', sum(milli) / 1000.0), '0'), '.')
        || CASE item.kind WHEN 'cloth' THEN ' mm' WHEN 'batting' THEN ' mm' WHEN 'fill' THEN ' g' WHEN 'thread' THEN ' m'
          ELSE '' END
        || ' of it was released. Look at its cover again.'
      FROM to_release JOIN lot ON lot.id = lot_id JOIN item ON item.id = lot.item_id
        LEFT JOIN plan ON plan.id = plan_id
      GROUP BY item.id, plan_id ORDER BY item.name, plan.name;
    DROP TABLE to_release;
    DROP TABLE set_aside;

    -- A part of a thing that comes whole was booked where two lines were taken from one lot.
    INSERT INTO upgrade_note (schema, note)
      SELECT 7, 'Of ' || item.name || ', ' || rtrim(rtrim(printf('%.3f', b.on_hand_milli / 1000.0), '0'), '.')
        || ' is on hand by the ledger, though it is counted in whole pieces. Count it and correct the number.'
      FROM lot_balance AS b JOIN lot ON lot.id = b.lot_id JOIN item ON item.id = lot.item_id
      WHERE b.on_hand_milli % 1000 <> 0 AND (item.kind = 'needle' OR item.kind = 'fastening'
        AND coalesce(json_extract(item.facts, '$.form'), '') NOT IN ('cord', 'elastic', 'tape', 'hook and loop'))
      ORDER BY item.name;

    CREATE TABLE movement_next (
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
      cutting_id TEXT REFERENCES cutting (id),
      -- The row of a cutting that this one takes back; none is taken back twice.
      reverses TEXT UNIQUE REFERENCES movement (id),
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
        ELSE 0 END)
    ) STRICT;
    INSERT INTO movement_next SELECT entry, id, at, kind, lot_id, length_id, on_hand_milli, reserved_milli, plan_id,
      reason, cutting_id, NULL FROM movement;
    DROP TABLE movement;
    ALTER TABLE movement_next RENAME TO movement;
    CREATE INDEX movement_by_lot ON movement (lot_id, entry);
    CREATE INDEX movement_by_plan ON movement (plan_id) WHERE plan_id IS NOT NULL;
    CREATE INDEX movement_by_length ON movement (length_id) WHERE length_id IS NOT NULL;
    CREATE INDEX movement_by_cutting ON movement (cutting_id, entry) WHERE cutting_id IS NOT NULL;
    DROP TRIGGER cutting_stays;
  `,
  finish: (database) => {
    rereadCuttings(database);
    database.exec(`
      CREATE TRIGGER cutting_stays BEFORE UPDATE ON cutting
      BEGIN SELECT RAISE(ABORT, 'the ledger only grows'); END;
      CREATE TRIGGER movement_is_new BEFORE INSERT ON movement
      WHEN EXISTS (SELECT 1 FROM movement WHERE id = NEW.id OR entry = NEW.entry OR reverses = NEW.reverses)
      BEGIN SELECT RAISE(ABORT, 'the ledger only grows'); END;
      CREATE TRIGGER movement_stays BEFORE UPDATE ON movement
      BEGIN SELECT RAISE(ABORT, 'the ledger only grows'); END;
      CREATE TRIGGER movement_remains BEFORE DELETE ON movement
      BEGIN SELECT RAISE(ABORT, 'the ledger only grows'); END;
      CREATE TRIGGER movement_reverses BEFORE INSERT ON movement
      WHEN NEW.kind = 'reversed' AND NOT EXISTS (SELECT 1 FROM movement AS taken WHERE taken.id = NEW.reverses
        AND taken.kind IN ('cut', 'returned') AND taken.lot_id = NEW.lot_id AND taken.length_id IS NEW.length_id
        AND taken.plan_id IS NEW.plan_id AND taken.on_hand_milli = -NEW.on_hand_milli)
      BEGIN SELECT RAISE(ABORT, 'a reversal is the row it takes back, the other way round'); END;

      DROP TRIGGER lot_begins;
      DROP TRIGGER lot_counts;
      DROP TRIGGER length_begins;
      DROP TRIGGER length_counts;
      CREATE TABLE lot_balance_next (
        lot_id TEXT PRIMARY KEY NOT NULL REFERENCES lot (id),
        on_hand_milli INTEGER NOT NULL CHECK (on_hand_milli >= 0),
        reserved_milli INTEGER NOT NULL CHECK (reserved_milli BETWEEN 0 AND on_hand_milli),
        -- What the lot's price is shared by: its amount, narrow remnants counted by their share.
        worth_milli INTEGER NOT NULL CHECK (worth_milli >= 0)
      ) STRICT, WITHOUT ROWID;
      INSERT INTO lot_balance_next SELECT lot_id, on_hand_milli, reserved_milli, worth_milli FROM lot_balance;
      DROP TABLE lot_balance;
      ALTER TABLE lot_balance_next RENAME TO lot_balance;
      CREATE TABLE length_balance_next (
        length_id TEXT PRIMARY KEY NOT NULL REFERENCES length (id),
        on_hand_milli INTEGER NOT NULL CHECK (on_hand_milli >= 0),
        reserved_milli INTEGER NOT NULL CHECK (reserved_milli BETWEEN 0 AND on_hand_milli)
      ) STRICT, WITHOUT ROWID;
      INSERT INTO length_balance_next SELECT length_id, on_hand_milli, reserved_milli FROM length_balance;
      DROP TABLE length_balance;
      ALTER TABLE length_balance_next RENAME TO length_balance;

      CREATE TRIGGER lot_begins AFTER INSERT ON lot
      BEGIN INSERT INTO lot_balance VALUES (NEW.id, 0, 0, 0); END;
      CREATE TRIGGER length_begins AFTER INSERT ON length
      BEGIN INSERT INTO length_balance VALUES (NEW.id, 0, 0); END;
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
      -- Whole numbers, so that half a minor unit is rounded as it is everywhere else.
      CREATE TRIGGER lot_counts AFTER UPDATE ON lot_balance
      BEGIN
        UPDATE item_balance SET
          on_hand_milli = item_balance.on_hand_milli + NEW.on_hand_milli - OLD.on_hand_milli,
          reserved_milli = item_balance.reserved_milli + NEW.reserved_milli - OLD.reserved_milli,
          lot_count = lot_count + (NEW.on_hand_milli > 0) - (OLD.on_hand_milli > 0),
          value_minor = value_minor
            + CAST((2 * lot.price_minor * NEW.worth_milli + lot.received_milli) / (2 * lot.received_milli) AS INTEGER)
            - CAST((2 * lot.price_minor * OLD.worth_milli + lot.received_milli) / (2 * lot.received_milli) AS INTEGER)
          FROM lot WHERE lot.id = NEW.lot_id AND item_balance.item_id = lot.item_id;
      END;
      CREATE TRIGGER length_counts AFTER UPDATE ON length_balance
      WHEN (NEW.on_hand_milli > 0) <> (OLD.on_hand_milli > 0)
      BEGIN
        UPDATE item_balance SET length_count = length_count + (NEW.on_hand_milli > 0) - (OLD.on_hand_milli > 0)
          FROM length JOIN lot ON lot.id = length.lot_id
          WHERE length.id = NEW.length_id AND item_balance.item_id = lot.item_id;
      END;
      UPDATE item_balance SET value_minor = coalesce((
        SELECT sum(CAST((2 * lot.price_minor * worth_milli + lot.received_milli) / (2 * lot.received_milli) AS INTEGER))
        FROM lot JOIN lot_balance ON lot_balance.lot_id = lot.id WHERE lot.item_id = item_balance.item_id), 0);
    `);
  },
};
