/** What a plan needs beyond what was cut for it already: pieces are held against the very pieces that were cut. */
import { outsideMm2 } from '../../geometry/boolean.ts';
import { type Ring, ringStretched } from '../../geometry/ring.ts';
import type { CoatPlan } from '../../plan/model/coat-plan.ts';
import type { CutShape, Cutting, Met } from '../../stash/cutting.ts';
import { toMilli } from '../../stash/stash.ts';
import type { FirstWash } from './first-wash.ts';
import type { Need, ShapeToCut } from '../need.ts';

/** Trimming or a rounded corner: a piece may stand out by this share of its area and still be got from the one cut. */
const trimRatio = 0.002;

/** Needs less what the cuttings met. A piece that has grown since is needed anew; one that was cut larger is trimmed. */
export function stillToCut(
  plan: CoatPlan,
  needs: readonly Need[],
  cuttings: readonly Cutting[],
): readonly Need[] {
  if (cuttings.length === 0) return needs;
  const sizes = new Set([plan.size, ...(plan.sizes ?? []).map(({ size }) => size)]);
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
    const cut = onTable(met);
    const own = need.shapes.map((shape) =>
      lessCut(shape, cut, need.firstWash, ({ size }) => size === shape.size),
    );
    // A size that the plan no longer names was renamed or taken out: its pieces serve where they are large enough.
    const shapes = own
      .map((shape) => lessCut(shape, cut, need.firstWash, ({ size }) => !sizes.has(size)))
      .filter((shape) => shape.count + shape.mirroredCount > 0);
    const areaMm2 = shapes.reduce(
      (sum, shape) => sum + shape.areaMm2 * (shape.count + shape.mirroredCount),
      0,
    );
    return { ...need, shapes, areaMm2 };
  });
}

/** Pieces that were cut and serve no need yet. */
interface CutPieces {
  readonly shape: CutShape;
  count: number;
  mirroredCount: number;
}

function onTable(met: readonly Met[]): CutPieces[] {
  return met
    .flatMap((each) => (each.kind === 'shapes' ? each.shapes : []))
    .map((shape) => ({ shape, count: shape.count, mirroredCount: shape.mirroredCount }));
}

/** The shape less the cut pieces that serve it; those are taken off the table. */
function lessCut(
  needed: ShapeToCut,
  cut: readonly CutPieces[],
  wash: FirstWash | undefined,
  mayServe: (shape: CutShape) => boolean,
): ShapeToCut {
  let { count, mirroredCount } = needed;
  for (const pieces of cut) {
    const { shape } = pieces;
    if (count + mirroredCount === 0) break;
    if (shape.pieceId !== needed.pieceId || !mayServe(shape)) continue;
    // A piece that was cut with something to spare may have grown into it.
    if (outsideMm2(needed.keptRing ?? needed.ring, asNeeded(shape, wash)) > needed.areaMm2 * trimRatio)
      continue;
    const plain = Math.min(count, pieces.count);
    const mirrored = Math.min(mirroredCount, pieces.mirroredCount);
    count -= plain;
    mirroredCount -= mirrored;
    pieces.count -= plain;
    pieces.mirroredCount -= mirrored;
  }
  return { ...needed, count, mirroredCount };
}

/** The outline of a cut piece as it is when the need is cut: the one washed, the other not, they are compared alike. */
function asNeeded({ ring, isWashed }: CutShape, wash: FirstWash | undefined): Ring {
  const outline = Float64Array.from(ring);
  if (!wash || wash.isBeforeCutting === (isWashed ?? false)) return outline;
  const along = 1 - wash.alongRatio;
  const across = 1 - wash.acrossRatio;
  return isWashed ? ringStretched(outline, 1 / along, 1 / across) : ringStretched(outline, along, across);
}
