/**
 * A measured rise becomes that of the pieces with the most layers of batting, which a maker measures first.
 *
 * Part of a released migration: it reads the shapes of its own day and uses no code that may change later.
 */
import type { Database } from 'better-sqlite3';

interface Plan {
  readonly name: string;
  readonly slots: readonly { readonly id: string; readonly kind: string }[];
  readonly pieces: readonly Piece[];
  readonly sizes?: readonly { readonly pieces: readonly Piece[] }[];
  readonly quilting: { readonly spacingMm: number; readonly riseMm: number };
}

interface Piece {
  readonly quilted: string | null;
  readonly cutFrom: readonly { readonly slotId: string; readonly plyCount: number }[];
}

interface Row {
  readonly plan_id: string;
  readonly revision: number;
  readonly plan: string;
  readonly isLatest: number;
}

export function riseByLayers(database: Database): void {
  const rows = database
    .prepare(
      `SELECT plan_id, plan_revision.revision, plan, plan_revision.revision = plan.revision AS isLatest
       FROM plan_revision JOIN plan ON plan.id = plan_id
       WHERE json_type(plan, '$.quilting.riseMm') IN ('integer', 'real')`,
    )
    .all() as Row[];
  const rewrite = database.prepare('UPDATE plan_revision SET plan = ? WHERE plan_id = ? AND revision = ?');
  const noteDown = database.prepare('INSERT INTO upgrade_note (schema, note) VALUES (9, ?)');
  for (const row of rows) {
    const plan = JSON.parse(row.plan) as Plan;
    const { riseMm, ...quilting } = plan.quilting;
    const counts = plyCounts(plan);
    const battingPlyCount = Math.max(0, ...counts);
    const measure = {
      battingPlyCount,
      spacingMm: quilting.spacingMm,
      riseMm,
      overLinesRatio: null,
      alongLinesRatio: null,
    };
    rewrite.run(
      JSON.stringify({ ...plan, quilting: { ...quilting, measures: [measure] } }),
      row.plan_id,
      row.revision,
    );
    if (row.isLatest && new Set(counts).size > 1) {
      noteDown.run(
        `The rise measured for ${plan.name} was counted for all its layers alike. It now counts for pieces with ${battingPlyCount} layers of batting, and for others in proportion: measure a swatch of each.`,
      );
    }
  }
}

/** Layers of batting of each quilted piece, in all sizes. */
function plyCounts(plan: Plan): number[] {
  const batting = new Set(plan.slots.filter(({ kind }) => kind === 'batting').map(({ id }) => id));
  return [...plan.pieces, ...(plan.sizes ?? []).flatMap(({ pieces }) => pieces)]
    .filter(({ quilted }) => quilted !== null)
    .map(({ cutFrom }) =>
      cutFrom.reduce((sum, { slotId, plyCount }) => sum + (batting.has(slotId) ? plyCount : 0), 0),
    );
}
