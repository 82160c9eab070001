/** Cuttings as they were booked, with their rows of the ledger. */
import type { Cutting } from '../../../shared-core/stash/cutting.ts';
import type { Movement } from '../../../shared-core/stash/stash.ts';
import type { Queries } from '../../database/store.ts';
import { movementOf } from '../stock/ledger.ts';

/** Newest first. */
export async function readCuttings(
  queries: Queries,
  which: { readonly planId: string | null } | { readonly cuttingId: string },
): Promise<Cutting[]> {
  let query = queries
    .selectFrom('cutting')
    .leftJoin('cutting as later', 'later.undoes', 'cutting.id')
    .selectAll('cutting')
    .select('later.id as undoneBy')
    .orderBy('cutting.entry', 'desc');
  if ('cuttingId' in which) query = query.where('cutting.id', '=', which.cuttingId);
  else if (which.planId !== null) query = query.where('cutting.plan_id', '=', which.planId);
  const rows = await query.execute();
  if (rows.length === 0) return [];
  const movements = new Map<string, Movement[]>(rows.map((row) => [row.id, []]));
  const booked = await queries
    .selectFrom('movement')
    .selectAll()
    .where('cutting_id', 'in', [...movements.keys()])
    .orderBy('entry')
    .execute();
  for (const row of booked) movements.get(row.cutting_id as string)?.push(movementOf(row));
  return rows.map((row) => ({
    id: row.id,
    planId: row.plan_id,
    revision: row.revision,
    at: row.at,
    coats: JSON.parse(row.coats),
    note: row.note,
    slots: JSON.parse(row.slots),
    undoes: row.undoes,
    undoneBy: row.undoneBy,
    movements: movements.get(row.id) ?? [],
  }));
}
