/**
 * Cuttings as versions before this schema wrote them, in today's words: coats cut in all became coats cut by each,
 * pieces learn their size, and what was counted up again to take a cutting back became its reversal.
 *
 * Part of a released migration: it reads the shapes of its own day and uses no code that may change later.
 */
import type { Database } from 'better-sqlite3';

interface CuttingRow {
  readonly id: string;
  readonly plan_id: string;
  readonly at: string;
  readonly coats: string;
  readonly slots: string;
  readonly undoes: string | null;
  readonly plan: string;
}

interface MovementRow {
  readonly id: string;
  readonly kind: string;
  readonly lot_id: string;
  readonly length_id: string | null;
  readonly plan_id: string | null;
  readonly on_hand_milli: number;
}

interface Coats {
  readonly size: string;
  readonly coatCount: number;
}

interface OldSlot {
  readonly itemId: string;
  readonly itemName: string;
  readonly met: { readonly kind: string; readonly shapes?: readonly { readonly pieceId: string }[] };
  readonly lines: readonly { readonly lotId: string }[];
}

export function rereadCuttings(database: Database): void {
  const rows = database
    .prepare(
      `SELECT cutting.id, cutting.plan_id, cutting.at, coats, slots, undoes, plan_revision.plan
       FROM cutting JOIN plan_revision
         ON plan_revision.plan_id = cutting.plan_id AND plan_revision.revision = cutting.revision
       ORDER BY cutting.entry`,
    )
    .all() as CuttingRow[];
  const noteDown = database.prepare('INSERT INTO upgrade_note (schema, note) VALUES (7, ?)');
  const rewrite = database.prepare('UPDATE cutting SET coats = ?, slots = ? WHERE id = ?');
  const itemOfLot = database.prepare(
    'SELECT item.id AS itemId, item.name AS itemName FROM lot JOIN item ON item.id = lot.item_id WHERE lot.id = ?',
  );
  for (const { row, coats, problem } of coatsOfEach(rows)) {
    if (problem !== '') noteDown.run(problem);
    const slots = (JSON.parse(row.slots) as OldSlot[]).map((slot) =>
      newSlot(slot, row, (lotId) => itemOfLot.get(lotId) as { itemId: string; itemName: string }),
    );
    rewrite.run(JSON.stringify(coats), JSON.stringify(slots), row.id);
  }
  for (const row of rows) {
    if (row.undoes !== null && !reversed(database, row.id, row.undoes)) {
      noteDown.run(
        `${cuttingOf(row)} was taken back by entries that do not answer it one by one. They stay as counts: the account shows what was cut as consumed, and as found again.`,
      );
    }
  }
}

/** What was booked was "cut in all": each cutting cut what was not cut by those that stood when it was booked. */
function coatsOfEach(rows: readonly CuttingRow[]) {
  const standing = new Map<string, { readonly planId: string; readonly coats: readonly Coats[] }>();
  return rows.map((row) => {
    if (row.undoes !== null) standing.delete(row.undoes);
    const wrong: string[] = [];
    const coats = (JSON.parse(row.coats) as Coats[]).map(({ size, coatCount }) => {
      const before = [...standing.values()]
        .filter((each) => each.planId === row.plan_id)
        .flatMap((each) => each.coats)
        .reduce((sum, each) => sum + (each.size === size ? each.coatCount : 0), 0);
      if (coatCount < before) wrong.push(`${coatCount} of size ${size || 'at hand'} in all after ${before}`);
      return { size, coatCount: Math.max(0, coatCount - before) };
    });
    if (row.undoes === null) standing.set(row.id, { planId: row.plan_id, coats });
    const problem =
      wrong.length === 0
        ? ''
        : `${cuttingOf(row)} names fewer coats than were cut before it (${wrong.join(', ')}). It was taken to cut none of that size.`;
    return { row, coats, problem };
  });
}

function newSlot(
  { itemId, itemName, met, lines, ...slot }: OldSlot,
  row: CuttingRow,
  itemOfLot: (lotId: string) => { readonly itemId: string; readonly itemName: string },
) {
  const plan = JSON.parse(row.plan) as { size: string; sizes?: readonly { readonly size: string }[] };
  return {
    ...slot,
    met:
      met.kind === 'shapes' ? { ...met, shapes: (met.shapes ?? []).map((shape) => sized(shape, plan)) } : met,
    lines: lines.map((line) => {
      const item = itemOfLot(line.lotId);
      return { ...(item.itemId === itemId ? { itemId, itemName } : item), ...line };
    }),
  };
}

/** Pieces of the size at hand had their own id; those of other sizes carried the size behind it. */
function sized<Shape extends { readonly pieceId: string }>(
  shape: Shape,
  plan: { readonly size: string; readonly sizes?: readonly { readonly size: string }[] },
): Shape & { readonly size: string } {
  const other = plan.sizes?.find(({ size }) => shape.pieceId.endsWith(` @ ${size}`));
  if (!other) return { ...shape, size: plan.size };
  return { ...shape, pieceId: shape.pieceId.slice(0, -` @ ${other.size}`.length), size: other.size };
}

/** True where the rows that took the cutting back answered it one by one; they are then its reversals. */
function reversed(database: Database, undoId: string, cuttingId: string): boolean {
  const read = database.prepare(
    `SELECT id, kind, lot_id, length_id, plan_id, on_hand_milli FROM movement
     WHERE cutting_id = ? AND on_hand_milli <> 0 ORDER BY entry`,
  );
  const taken = (read.all(cuttingId) as MovementRow[]).reverse();
  const back = read.all(undoId) as MovementRow[];
  const answers = (one: MovementRow, other: MovementRow | undefined) =>
    other?.kind === 'corrected' &&
    other.lot_id === one.lot_id &&
    other.length_id === one.length_id &&
    other.plan_id === one.plan_id &&
    other.on_hand_milli === -one.on_hand_milli;
  if (taken.length !== back.length || !taken.every((one, index) => answers(one, back[index]))) return false;
  const write = database.prepare("UPDATE movement SET kind = 'reversed', reverses = ? WHERE id = ?");
  for (const [index, one] of taken.entries()) write.run(one.id, back[index]?.id);
  return true;
}

function cuttingOf({ at, plan }: CuttingRow): string {
  return `The cutting of ${at.slice(0, 10)} for ${(JSON.parse(plan) as { name: string }).name}`;
}
