/** One photo for an item, replaced or taken away at will: it is no part of the ledger. Kept out of `item`, so that lists stay light. */
import type { Migration } from '../migration.ts';

export const photo: Migration = {
  number: 6,
  what: 'photo',
  sql: `
    CREATE TABLE item_photo (
      item_id TEXT PRIMARY KEY NOT NULL REFERENCES item (id),
      media_type TEXT NOT NULL CHECK (media_type IN ('image/jpeg', 'image/webp')),
      bytes BLOB NOT NULL CHECK (length(bytes) BETWEEN 1 AND 200000),
      width_px INTEGER NOT NULL CHECK (width_px BETWEEN 1 AND 640),
      height_px INTEGER NOT NULL CHECK (height_px BETWEEN 1 AND 640),
      saved_at TEXT NOT NULL
    ) STRICT;
  `,
};
