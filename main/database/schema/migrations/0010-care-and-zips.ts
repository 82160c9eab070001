/**
 * Care was one word, the hottest wash or dry cleaning; now each of its five processes has a limit of its own. What was
 * for dry cleaning is kept as not to be washed and to be dry cleaned. A zip ticked as separating is kept as that, or
 * as two-way where its name says so: the tick was explained as opening at both ends, which is another thing.
 */
import type { Migration } from '../migration.ts';

export const careAndZips: Migration = {
  number: 10,
  what: 'care and zips',
  sql: `
    UPDATE item SET facts = json_set(json_remove(facts, '$.care'),
        '$.careWash', CASE json_extract(facts, '$.care')
          WHEN 'dry clean' THEN 'do not wash' ELSE json_extract(facts, '$.care') END,
        '$.careBleach', NULL, '$.careDry', NULL, '$.careIron', NULL,
        '$.careProfessional', CASE json_extract(facts, '$.care') WHEN 'dry clean' THEN 'dry clean P' END)
      WHERE kind IN ('cloth', 'batting', 'fill', 'fastening');

    INSERT INTO upgrade_note (schema, note)
      SELECT 10, 'How ' || name || ' opens was set to '
          || CASE WHEN lower(name) LIKE '%two-way%' OR lower(name) LIKE '%2-way%' OR lower(name) LIKE '%two way%'
            THEN 'two-way, separating' ELSE 'separating' END
          || ': comes wholly apart at the bottom. Change it at the item where it does not.'
        FROM item WHERE kind = 'fastening' AND json_extract(facts, '$.isSeparating') = 1 ORDER BY name_key, id;
    UPDATE item SET facts = json_set(json_remove(facts, '$.isSeparating'), '$.opening',
        CASE json_extract(facts, '$.isSeparating')
          WHEN 1 THEN CASE WHEN lower(name) LIKE '%two-way%' OR lower(name) LIKE '%2-way%' OR lower(name) LIKE '%two way%'
            THEN 'two-way, separating' ELSE 'separating' END
          WHEN 0 THEN CASE json_extract(facts, '$.form') WHEN 'zip' THEN 'closed at the bottom' END END)
      WHERE kind = 'fastening';
  `,
};
