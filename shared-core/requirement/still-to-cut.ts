/** What a plan needs beyond what was cut for it already: pieces are held against the very pieces that were cut. */
import { outsideMm2 } from '../geometry/boolean.ts';
import type { CutShape, Cutting } from '../stash/cutting.ts';
import { toMilli } from '../stash/stash.ts';
import type { Need, ShapeToCut } from './need.ts';

/** Trimming or a rounded corner: a piece may stand out by this share of its area and still be got from the one cut. */
const trimRatio = 0.002;

/** Needs less what the cuttings met. A piece that has grown since is needed anew; one that was cut larger is trimmed. */
export function stillToCut(needs: readonly Need[], cuttings: readonly Cutting[]): readonly Need[] {
  if (cuttings.length === 0) return needs;
  return needs.map((need): Need => {
    const met = cuttings.flatMap((cutting) =>
      cutting.slots.filter((slot) => slot.slotId === need.slotId).map((slot) => slot.met),
    );
    if (met.length === 0) return need;
    if (need.kind === 'amount') {
      const cut = met.reduce((sum, each) => sum + (each.kind === 'amount' ? each.amount : 0), 0);
      const rest = need.amount - cut;
      // Less than the ledger counts is a float's dust.
      return { ...need, amount: toMilli(rest) > 0 ? rest : 0 };
    }
    const cut = met.flatMap((each) => (each.kind === 'shapes' ? each.shapes : []));
    const shapes = need.shapes
      .map((shape) => lessCut(shape, cut))
      .filter((shape) => shape.count + shape.mirroredCount > 0);
    const areaMm2 = shapes.reduce(
      (sum, shape) => sum + shape.areaMm2 * (shape.count + shape.mirroredCount),
      0,
    );
    return { ...need, shapes, areaMm2 };
  });
}

function lessCut(shape: ShapeToCut, cut: readonly CutShape[]): ShapeToCut {
  const serving = cut.filter(
    (each) =>
      each.pieceId === shape.pieceId &&
      outsideMm2(shape.ring, Float64Array.from(each.ring)) <= shape.areaMm2 * trimRatio,
  );
  const sum = (side: 'count' | 'mirroredCount') => serving.reduce((total, each) => total + each[side], 0);
  return {
    ...shape,
    count: Math.max(0, shape.count - sum('count')),
    mirroredCount: Math.max(0, shape.mirroredCount - sum('mirroredCount')),
  };
}
