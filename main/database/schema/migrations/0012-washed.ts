/** Lengths learn whether their first wash is over; of those that are there nothing is known of a wash, so it is to come. */
import type { Migration } from '../migration.ts';

export const washed: Migration = {
  number: 12,
  what: 'washed',
  sql: `
    ALTER TABLE length ADD COLUMN is_washed INTEGER NOT NULL DEFAULT 0 CHECK (is_washed IN (0, 1));
    INSERT INTO upgrade_note (schema, note)
      SELECT 12, 'Cloth that shrinks is now laid as it is after its wash: drawings and cutting show washed cloth, what is taken from the shelf or bought stays in unwashed metres. A slot of its own can be cut unwashed, as was drawn before. Where only one shrinkage of an item is written down, the other is now taken as much.'
      WHERE EXISTS (SELECT 1 FROM item WHERE archived = 0
        AND (json_extract(facts, '$.shrinkageAlongRatio') > 0 OR json_extract(facts, '$.shrinkageAcrossRatio') > 0));
  `,
};
