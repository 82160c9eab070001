/**
 * How long the plan's seams are and how thick they are sewn, from the pieces' own edges.
 * plan/geometry/seam-walk.ts says which edges meet; here every ply that is sewn on its own is a sewing of its own.
 */
import { type CoatPlan, type Piece, pieceById, slotById } from '../../plan/model/coat-plan.ts';
import type { SeamReport, WalkedEdge } from '../../plan/geometry/seam-walk.ts';
import type { SlotItems } from '../need.ts';

/**
 * Mass per volume of batting pressed flat under the foot, g/cm3: its loft is gone and its fibres are left, so what
 * it weighs decides and not how high it stood. Common practice, no source.
 */
export const pressedGPerCm3 = { loosest: 0.15, usual: 0.175, tightest: 0.2 } as const;

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
  /** Thickness under the needle, mm, as a mean over the sewings; null where a weight is not known. */
  readonly thicknessMm: number | null;
  /** The same where it is thickest, mm: what must go under the foot. */
  readonly thickestMm: number | null;
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
      return item.facts.arealMassGPerM2 === null ? null : pressedMm(item.facts.arealMassGPerM2);
    default:
      return null;
  }
}

/** Thickness of batting under the foot, mm, by what it weighs, g/m2. */
export function pressedMm(arealMassGPerM2: number): number {
  return arealMassGPerM2 / 1000 / pressedGPerCm3.usual;
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

/**
 * Length and thickness of a seam in the whole batch. Edges that meet edges are stitched along the longer side;
 * an edge that meets its mirror image is stitched once for two; one that is sewn by itself, as a hem is, once.
 */
export function sewnSeam(plan: CoatPlan, walked: SeamReport, items: SlotItems): SewnSeam {
  const first = sideOf(plan, walked.first, items);
  const second = sideOf(plan, walked.second, items);
  const share = walked.sides === 'mirror' ? 0.5 : 1;
  const edgesMm = first.pliesMm + second.pliesMm;
  const weighted = added(first.thicknessTimesMm, second.thicknessTimesMm);
  return {
    seamId: walked.seamId,
    sewnMm: Math.max(first.pliesMm, second.pliesMm) * share * plan.coatCount,
    outerMm: Math.max(first.outerMm, second.outerMm) * share * plan.coatCount,
    edgesMm: edgesMm * plan.coatCount,
    // Two thicknesses lie on each other: both sides, or the edge turned on itself.
    thicknessMm: weighted === null || edgesMm === 0 ? null : (2 * weighted) / edgesMm,
    thickestMm: added(first.thickestMm, walked.second.length === 0 ? first.thickestMm : second.thickestMm),
  };
}

/** One side of a seam in one coat: its edges for every ply, for the outermost ply, thickness x length summed, and the thickest ply. */
function sideOf(plan: CoatPlan, edges: readonly WalkedEdge[], items: SlotItems) {
  let pliesMm = 0;
  let outerMm = 0;
  let thicknessTimesMm: number | null = 0;
  let thickestMm: number | null = 0;
  for (const edge of edges) {
    const plies = sewnPlies(plan, pieceById(plan, edge.pieceId), items);
    const edgeMm = edge.lengthMm * edge.count;
    pliesMm += edgeMm * plies.length;
    if (plies.length > 0) outerMm += edgeMm;
    for (const { thicknessMm } of plies) {
      thicknessTimesMm = added(thicknessTimesMm, thicknessMm === null ? null : thicknessMm * edgeMm);
      thickestMm = thickestMm === null || thicknessMm === null ? null : Math.max(thickestMm, thicknessMm);
    }
  }
  return { pliesMm, outerMm, thicknessTimesMm, thickestMm };
}
