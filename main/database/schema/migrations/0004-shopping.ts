/** What is ticked on a coat's shopping list, so that a trip outlives the window. */
import type { Migration } from '../migration.ts';

export const shopping: Migration = {
  number: 4,
  what: 'shopping',
  sql: `
    CREATE TABLE shopping_tick (
      plan_id TEXT NOT NULL REFERENCES plan (id),
      offer_id TEXT NOT NULL REFERENCES offer (id) ON DELETE CASCADE,
      ticked_at TEXT NOT NULL,
      PRIMARY KEY (plan_id, offer_id)
    ) STRICT, WITHOUT ROWID;
    CREATE INDEX shopping_tick_by_offer ON shopping_tick (offer_id);
  `,
};
