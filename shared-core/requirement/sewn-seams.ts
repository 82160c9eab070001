/**
 * How long the plan's seams are and how thick they are sewn, from the pieces' own edges.
 * Edges that are sewn together bear the same seam; each sewing joins two of them, so the sewn length is half of the
 * sum of the edges, and a seam that only one edge bears (sewn to nothing that is drawn) is that edge.
 */
import type { CoatPlan, Piece } from '../plan/coat-plan.ts';
import { slotById } from '../plan/coat-plan.ts';
import { edgeLengthMm } from '../plan/outline-ring.ts';
import type { SlotItems } from './need.ts';

/** Share of a batting's loft that is left under a row of stitches: common practice, no source. */
export const sewnLoftRatio = 0.2;

/** Mass per volume of woven cloth as it lies, to guess a thickness from a weight: common practice, no source. */
const clothGPerCm3 = 0.4;

export interface SewnSeam {
  readonly seamId: string;
  /** All sewings of the batch: every ply that is sewn on its own (shell with its batting, lining) counts. */
  readonly sewnMm: number;
  /** The same for the outermost ply alone, where topstitching is seen. */
  readonly outerMm: number;
  /** All raw edges of the batch. */
  readonly edgesMm: number;
  /** Thickness under the needle, mm, as a mean over the sewings; null where a loft or a cloth's weight is not known. */
  readonly thicknessMm: number | null;
}

/** Plies of a piece that are sewn as one: quilted plies together, batting with them, each other cloth ply alone. */
interface SewnPly {
  readonly thicknessMm: number | null;
}

/** Thickness of one ply of an item as it is sewn, mm; null when it is not known. */
function plyThicknessMm(items: SlotItems, slotId: string): number | null {
  const item = items.get(slotId);
  switch (item?.kind) {
    case 'cloth':
      if (item.facts.thicknessMm !== null) return item.facts.thicknessMm;
      return item.facts.arealMassGPerM2 === null ? null : item.facts.arealMassGPerM2 / 1000 / clothGPerCm3;
    case 'batting':
      return item.facts.loftMm === null ? null : item.facts.loftMm * sewnLoftRatio;
    default:
      return null;
  }
}

function added(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : a + b;
}

/** The plies of a piece as they come under the needle, the quilted or padded one first. */
export function sewnPlies(plan: CoatPlan, piece: Piece, items: SlotItems): readonly SewnPly[] {
  const alone: SewnPly[] = [];
  let together: number | null = 0;
  let togetherCount = 0;
  let paddingMm: number | null = 0;
  for (const from of piece.cutFrom) {
    const slot = slotById(plan, from.slotId);
    if (slot.kind !== 'cloth' && slot.kind !== 'batting') continue;
    const oneMm = plyThicknessMm(items, slot.id);
    const allMm = oneMm === null ? null : oneMm * from.plyCount;
    if (slot.kind === 'batting') paddingMm = added(paddingMm, allMm);
    else if (slot.isQuilted && piece.quilted !== null) {
      together = added(together, allMm);
      togetherCount += from.plyCount;
    } else for (let ply = 0; ply < from.plyCount; ply++) alone.push({ thicknessMm: oneMm });
  }
  if (togetherCount > 0) return [{ thicknessMm: added(together, paddingMm) }, ...alone];
  // Batting that is not quilted lies behind the first ply of cloth.
  const [first, ...rest] = alone;
  return first ? [{ thicknessMm: added(first.thicknessMm, paddingMm) }, ...rest] : [];
}

/** Length and thickness of a seam in the whole batch. */
export function sewnSeam(plan: CoatPlan, seamId: string, items: SlotItems): SewnSeam {
  let edgeCount = 0;
  let edgesMm = 0;
  let outerEdgesMm = 0;
  let thicknessSum: number | null = 0;
  for (const piece of plan.pieces) {
    const edges = piece.outline.edges.filter((edge) => edge.seam === seamId);
    if (edges.length === 0) continue;
    const plies = sewnPlies(plan, piece, items);
    const foldCount = piece.foldEdge === null ? 1 : 2;
    const copyCount = piece.cutCount * plan.coatCount * foldCount;
    for (const edge of edges) {
      const oneMm = edgeLengthMm(piece.outline, edge.name) * copyCount;
      // An edge that runs over the fold is one edge, twice as long.
      edgeCount += plies.length * piece.cutCount * (touchesFold(piece, edge.name) ? 1 : foldCount);
      edgesMm += oneMm * plies.length;
      if (plies.length > 0) outerEdgesMm += oneMm;
      for (const ply of plies)
        thicknessSum = added(thicknessSum, ply.thicknessMm === null ? null : ply.thicknessMm * oneMm);
    }
  }
  const sideCount = edgeCount === 1 ? 1 : 2;
  return {
    seamId,
    sewnMm: edgesMm / sideCount,
    outerMm: outerEdgesMm / sideCount,
    edgesMm,
    thicknessMm: thicknessSum === null || edgesMm === 0 ? null : (thicknessSum / edgesMm) * sideCount,
  };
}

/** True for an edge that starts or ends on the fold, and so runs on over it. */
export function touchesFold(piece: Piece, edgeName: string): boolean {
  if (piece.foldEdge === null) return false;
  const count = piece.outline.edges.length;
  const fold = piece.outline.edges.findIndex((edge) => edge.name === piece.foldEdge);
  const edge = piece.outline.edges.findIndex((candidate) => candidate.name === edgeName);
  return edge === (fold + 1) % count || edge === (fold + count - 1) % count;
}
