/** What suppliers ask for a delivery, and what offers ask for many. */
import type { Migration } from '../migration.ts';

export const suppliers: Migration = {
  number: 2,
  what: 'suppliers',
  sql: `
    -- The key is the name folded, so that one supplier is not written down twice.
    CREATE TABLE supplier (
      key TEXT PRIMARY KEY NOT NULL CHECK (key <> ''),
      name TEXT NOT NULL CHECK (name <> ''),
      delivery_minor INTEGER NOT NULL CHECK (delivery_minor >= 0),
      free_from_minor INTEGER CHECK (free_from_minor > 0),
      lead_days INTEGER CHECK (lead_days >= 0)
    ) STRICT;

    ALTER TABLE offer ADD COLUMN breaks TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(breaks));
    ALTER TABLE offer ADD COLUMN least_count INTEGER NOT NULL DEFAULT 1 CHECK (least_count > 0);
  `,
};
