/**
 * The last change of the stash is kept with what it takes to undo it; what was received, counted or written off can be
 * reversed by a row of its own, as the rows of a cutting are.
 */
import type { Migration } from '../migration.ts';

export const undo: Migration = {
  number: 13,
  what: 'undo',
  sql: `
    CREATE TABLE last_change (
      only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
      id TEXT NOT NULL CHECK (id <> ''),
      said TEXT NOT NULL CHECK (said <> ''),
      -- The movements that it booked are those from first_entry to last_entry; none where the first is the greater.
      first_entry INTEGER NOT NULL,
      last_entry INTEGER NOT NULL,
      -- Items and offers as they were and as they became: [{id, before, after}].
      items TEXT NOT NULL CHECK (json_valid(items)),
      offers TEXT NOT NULL CHECK (json_valid(offers))
    ) STRICT;

    DROP TRIGGER movement_reverses;
    CREATE TRIGGER movement_reverses BEFORE INSERT ON movement
    WHEN NEW.kind = 'reversed' AND NOT EXISTS (SELECT 1 FROM movement AS taken WHERE taken.id = NEW.reverses
      AND taken.kind IN ('cut', 'returned', 'received', 'corrected', 'written off') AND taken.lot_id = NEW.lot_id
      AND taken.length_id IS NEW.length_id AND taken.plan_id IS NEW.plan_id
      AND taken.on_hand_milli = -NEW.on_hand_milli)
    BEGIN SELECT RAISE(ABORT, 'a reversal is the row it takes back, the other way round'); END;
  `,
};
