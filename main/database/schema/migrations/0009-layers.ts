/**
 * What was measured on a swatch is kept by its number of layers; a plan had one rise for all of them. And the words
 * "quilt first" of drafted plans go: their figures never left anything to trim, and the order is now a choice.
 */
import type { Migration } from '../migration.ts';
import { riseByLayers } from './0009-rise-by-layers.ts';

/** With the blank that parts it from the sentence before. */
const quiltFirst = ' Quilt first, then cut to the outline.';

export const layers: Migration = {
  number: 9,
  what: 'layers',
  sql: `
    DROP TRIGGER plan_revision_stays;
    INSERT INTO upgrade_note (schema, note)
      SELECT 9, 'The notes of ' || plan.name || ' said to quilt first and then cut, though nothing was planned to be trimmed. It is now planned as it was reckoned: cut to the outline, then quilted. Its plan lets you choose to cut with something to spare.'
      FROM plan JOIN plan_revision ON plan_revision.plan_id = plan.id AND plan_revision.revision = plan.revision
      WHERE instr(json_extract(plan_revision.plan, '$.notes'), '${quiltFirst}') > 0;
    UPDATE plan_revision
      SET plan = json_set(plan, '$.notes', replace(json_extract(plan, '$.notes'), '${quiltFirst}', ''))
      WHERE instr(json_extract(plan, '$.notes'), '${quiltFirst}') > 0;
    INSERT INTO upgrade_note (schema, note)
      SELECT 9, 'Take-up of quilting was reckoned over the lines alone and is now at least 2.5 % both ways, as measured quilts show: quilted pieces are cut larger than before. A swatch of your own stands in its place.'
      WHERE EXISTS (SELECT 1 FROM plan_revision, json_each(plan_revision.plan, '$.pieces') AS piece
        WHERE json_type(plan_revision.plan, '$.quilting') = 'object'
          AND json_extract(piece.value, '$.quilted') IS NOT NULL);
    UPDATE plan_revision SET plan = json_remove(plan, '$.quilting.riseMm')
      WHERE json_type(plan, '$.quilting.riseMm') = 'null';
  `,
  finish: (database) => {
    riseByLayers(database);
    database.exec(`
      CREATE TRIGGER plan_revision_stays BEFORE UPDATE ON plan_revision
      BEGIN SELECT RAISE(ABORT, 'a revision of a plan is never changed'); END;
    `);
  },
};
