/** Batting learns how far apart it may be quilted, what holds it together and whether it needs a backing: not known yet. */
import type { Migration } from '../migration.ts';

export const battingFacts: Migration = {
  number: 11,
  what: 'batting facts',
  sql: `
    UPDATE item SET facts = json_insert(facts, '$.lineLimitMm', NULL, '$.heldBy', NULL, '$.needsBacking', NULL)
      WHERE kind = 'batting';
  `,
};
