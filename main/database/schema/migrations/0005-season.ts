/** The plans that are made one after another, in the order of their priority. coat_count NULL: as many as the plan says. */
import type { Migration } from '../migration.ts';

export const season: Migration = {
  number: 5,
  what: 'season',
  sql: `
    CREATE TABLE season_plan (
      plan_id TEXT PRIMARY KEY NOT NULL REFERENCES plan (id),
      place INTEGER NOT NULL UNIQUE CHECK (place > 0),
      coat_count INTEGER CHECK (coat_count > 0)
    ) STRICT, WITHOUT ROWID;
  `,
};
