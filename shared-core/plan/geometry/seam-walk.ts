/**
 * Walking the seams: how long the edges on both sides of each seam are, and whether they fit.
 * Lengths are for one coat, at the seam line.
 */
import { remembered } from '../../geometry/remembered.ts';
import { type CoatPlan, type Piece, pieceById } from '../model/coat-plan.ts';
import type { EdgePlace, Seam } from '../model/outline.ts';
import { edgeLengthMm } from './outline-ring.ts';

/** Sides that differ by less than this fit each other. */
export const seamToleranceMm = 1;

export interface WalkedEdge extends EdgePlace {
  readonly lengthMm: number;
  /** How often the edge comes in one coat. */
  readonly count: number;
}

export interface SeamReport {
  readonly seamId: string;
  readonly label: string;
  /** two: edges meet edges. mirror: one edge meets its mirror image. one: sewn by itself, as a hem is. none: no edges. */
  readonly sides: 'two' | 'mirror' | 'one' | 'none';
  readonly first: readonly WalkedEdge[];
  readonly second: readonly WalkedEdge[];
  /** Sums of length x count; for 'mirror' half of the sum each; the second is 0 for 'one'. */
  readonly firstMm: number;
  readonly secondMm: number;
  /** First less second; 0 unless two sides meet. */
  readonly differenceMm: number;
  /** The difference lies within the seam's ease, or within the tolerance where none is meant. */
  readonly fits: boolean;
  /** What is stitched: the longer side. */
  readonly stitchedMm: number;
}

/** One report for each seam of the plan, in its order. Edges that name no seam of the plan are left out. */
export const seamWalk = remembered((plan: CoatPlan): readonly SeamReport[] =>
  plan.seams.map((seam) => walk(plan, seam)),
);

function walk(plan: CoatPlan, seam: Seam): SeamReport {
  const edges = seamEdges(plan, seam.id);
  const parted = part(plan, seam, edges);
  const { sides, first, second } = parted;
  const firstMm = sides === 'mirror' ? total(first) / 2 : total(first);
  const secondMm = sides === 'mirror' ? firstMm : total(second);
  const differenceMm = sides === 'two' ? firstMm - secondMm : 0;
  const min = (seam.ease?.leastMm ?? 0) - (seam.ease ? 0 : seamToleranceMm);
  const max = (seam.ease?.maxMm ?? 0) + (seam.ease ? 0 : seamToleranceMm);
  return {
    seamId: seam.id,
    label: seam.label,
    sides,
    first,
    second,
    firstMm,
    secondMm,
    differenceMm,
    fits: sides !== 'two' || (differenceMm >= min && differenceMm <= max),
    stitchedMm: Math.max(firstMm, secondMm),
  };
}

/** How often the edges of a piece come in one coat: both halves of a piece on the fold count. */
export function edgeCount(piece: Piece): number {
  return piece.cutCount * (piece.foldEdge === null ? 1 : 2);
}

function seamEdges(plan: CoatPlan, seamId: string): WalkedEdge[] {
  return plan.pieces.flatMap((piece) =>
    piece.outline.edges
      .filter((edge) => edge.seam === seamId)
      .map((edge) => ({
        pieceId: piece.id,
        edge: edge.name,
        lengthMm: edgeLengthMm(piece.outline, edge.name),
        count: edgeCount(piece),
      })),
  );
}

function total(edges: readonly WalkedEdge[]): number {
  return edges.reduce((sum, edge) => sum + edge.lengthMm * edge.count, 0);
}

function part(
  plan: CoatPlan,
  seam: Seam,
  edges: readonly WalkedEdge[],
): Pick<SeamReport, 'sides' | 'first' | 'second'> {
  const [only] = edges;
  if (!only) return { sides: 'none', first: [], second: [] };
  const stated = seam.firstSide;
  if (stated) {
    const isFirst = (edge: WalkedEdge) =>
      stated.some((place) => place.pieceId === edge.pieceId && place.edge === edge.edge);
    const first = edges.filter(isFirst);
    const second = edges.filter((edge) => !isFirst(edge));
    return { sides: second.length === 0 || first.length === 0 ? 'one' : 'two', first, second };
  }
  if (edges.length === 1) {
    const meetsItself = pieceById(plan, only.pieceId).isMirrored || only.count % 2 === 0;
    return { sides: meetsItself ? 'mirror' : 'one', first: edges, second: [] };
  }
  return { sides: 'two', ...maxEven(edges) };
}

/** More edges than this are parted one by one, longest first, rather than in every way. */
const tryEveryWayUpTo = 14;

/** The first edge, and whichever others make its side come nearest to half of the sum. */
function maxEven(edges: readonly WalkedEdge[]): Pick<SeamReport, 'first' | 'second'> {
  const lengths = edges.map((edge) => edge.lengthMm * edge.count);
  const half = lengths.reduce((sum, lengthMm) => sum + lengthMm, 0) / 2;
  let isFirst: boolean[] = edges.map((_, index) => index === 0);
  if (edges.length <= tryEveryWayUpTo) {
    let nearest = Infinity;
    for (let choice = 0; choice < 2 ** (edges.length - 1) - 1; choice++) {
      const chosen = edges.map((_, index) => index === 0 || ((choice >> (index - 1)) & 1) === 1);
      const side = lengths.reduce((sum, lengthMm, index) => sum + (chosen[index] ? lengthMm : 0), 0);
      if (Math.abs(side - half) < nearest - 1e-9) {
        nearest = Math.abs(side - half);
        isFirst = chosen;
      }
    }
  } else {
    const order = lengths.map((_, index) => index).sort((a, b) => lengths[b]! - lengths[a]! || a - b);
    let firstMm = 0;
    let secondMm = 0;
    isFirst = edges.map(() => false);
    for (const index of order) {
      if (firstMm <= secondMm) {
        isFirst[index] = true;
        firstMm += lengths[index]!;
      } else {
        secondMm += lengths[index]!;
      }
    }
  }
  return {
    first: edges.filter((_, index) => isFirst[index]),
    second: edges.filter((_, index) => !isFirst[index]),
  };
}
