/** How many layers a piece is quilted in, and what swatches of so many layers showed. */
import { say } from '../../wording/say.ts';
import { type CoatPlan, type Piece, type QuiltedMeasure, slotById } from './coat-plan.ts';

/** Layers of batting in a piece; 0 where it is stuffed, or padded by nothing. */
export function battingPlyCount(plan: CoatPlan, piece: Piece): number {
  return piece.cutFrom.reduce(
    (sum, from) => sum + (slotById(plan, from.slotId).kind === 'batting' ? from.plyCount : 0),
    0,
  );
}

/** Whether batting or loose fill lies in the piece. */
export function isPadded(plan: CoatPlan, piece: Piece): boolean {
  return piece.cutFrom.some(
    ({ slotId, plyCount }) => plyCount > 0 && ['batting', 'fill'].includes(slotById(plan, slotId).kind),
  );
}

/** What was measured on a swatch of so many layers; null: nothing. */
export function measureOf(plan: CoatPlan, plyCount: number): QuiltedMeasure | null {
  return plan.quilting?.measures?.find((measure) => measure.battingPlyCount === plyCount) ?? null;
}

/** A measured rise of other layers of batting, the nearest in number; of two as near the thicker. Null: none. */
export function nearestRise(
  plan: CoatPlan,
  plyCount: number,
): { readonly battingPlyCount: number; readonly riseMm: number } | null {
  const known = (plan.quilting?.measures ?? []).flatMap(({ battingPlyCount: count, riseMm }) =>
    riseMm === null || count === 0 ? [] : [{ battingPlyCount: count, riseMm }],
  );
  const away = (each: (typeof known)[number]) => Math.abs(each.battingPlyCount - plyCount);
  const [nearest] = known.sort((a, b) => away(a) - away(b) || b.battingPlyCount - a.battingPlyCount);
  return nearest ?? null;
}

/** "loose fill", "1 layer of batting", "2 layers of batting". */
export function layersWords(plyCount: number): string {
  if (plyCount === 0) return say('quilted-layers.loose-fill');
  return say('quilted-layers.layers-of-batting', { plyCount });
}
